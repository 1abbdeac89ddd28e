"""Things on a line that pull at each other: where they come to rest.

Every thing is drawn to a place of its own and kept at a distance from the next one. What settles is the
least sum of squares, found exactly, so the same things always come to rest at the same places.
"""

from collections.abc import Sequence
from itertools import accumulate


def settle(
    places: Sequence[float], pulls: Sequence[float], rests: Sequence[float], springs: Sequence[float]
) -> list[float]:
    """Where the things come to rest: the least of pull * (x - place)^2, summed over them, and of
    spring * (next - x - rest)^2, summed over neighbours.

    places, pulls: one a thing; at least one pull is above 0. rests, springs: one between each two; one more
    where the last thing and the first are neighbours too, its rest what the first lies beyond the last.
    """
    n = len(places)
    diagonal = list(pulls)
    right = [pull * place for pull, place in zip(pulls, places, strict=True)]
    beside = [0.0] * n
    for at, (rest, spring) in enumerate(zip(rests, springs, strict=True)):
        other = (at + 1) % n
        diagonal[at] += spring
        diagonal[other] += spring
        right[at] -= spring * rest
        right[other] += spring * rest
        beside[at] -= spring
    if n == 1:
        return [places[0]]
    corner = beside[-1] if len(springs) == n else 0.0
    if n == 2:
        beside[0] += corner
        corner = 0.0
    if not corner:
        return _solved(diagonal, beside, right)
    # Closed: the corners of the matrix are taken out and put back (Sherman and Morrison, 1950).
    lent = -diagonal[0]
    diagonal[0] -= lent
    diagonal[-1] -= corner * corner / lent
    found = _solved(diagonal, beside, right)
    lending = _solved(diagonal, beside, [lent, *[0.0] * (n - 2), corner])
    share = (found[0] + corner * found[-1] / lent) / (1 + lending[0] + corner * lending[-1] / lent)
    return [value - share * by for value, by in zip(found, lending, strict=True)]


def _solved(diagonal: Sequence[float], beside: Sequence[float], right: Sequence[float]) -> list[float]:
    """A symmetric system with two neighbours a row, by elimination."""
    n = len(diagonal)
    pivots, values = [diagonal[0]], [right[0]]
    for at in range(1, n):
        share = beside[at - 1] / pivots[-1]
        pivots.append(diagonal[at] - share * beside[at - 1])
        values.append(right[at] - share * values[-1])
    found = [values[-1] / pivots[-1]]
    for at in range(n - 2, -1, -1):
        found.append((values[at] - beside[at] * found[-1]) / pivots[at])
    return found[::-1]


def kept_apart(at: Sequence[float], least: Sequence[float], room: float | None = None) -> list[float]:
    """The same things in their order, each at least so far from the one before it, moved as little as can
    be (pooling what is too close, as Ayer and others did in 1955).

    least: one between each two. room: from the first to the last, where that is limited.
    """
    own = [0.0, *accumulate(least)]
    pools: list[tuple[float, int]] = []
    for value in (x - low for x, low in zip(at, own, strict=True)):
        mean, size = value, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean = (before * many + mean * size) / (many + size)
            size += many
        pools.append((mean, size))
    found = [mean for mean, size in pools for _ in range(size)]
    if room is not None and found and found[-1] - found[0] > room - own[-1]:
        middle, half = (found[0] + found[-1]) / 2, max(room - own[-1], 0.0) / 2
        found = [min(max(value, middle - half), middle + half) for value in found]
    return [value + low for value, low in zip(found, own, strict=True)]
