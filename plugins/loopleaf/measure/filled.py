"""The form that a stuffed piece takes, and how tall it stands.

Filling pushes every round out as far as its stitches let it, and bends the cloth as little as they allow.
Cloth over filling gives up to a tenth (chosen here, no source), along as well as around. Measures and
drawings read this one form, so what is printed beside a drawing is what it shows.
"""

from collections.abc import Sequence
from functools import lru_cache
from itertools import accumulate, pairwise
from math import acos, sqrt, tau

from .size import RoundSize
from .units import Band

CLOTH_GIVES = 0.1
PRESSED = 1 + CLOTH_GIVES / 2
"""Filling stretches cloth along by half of what it gives, where a step out needs it (chosen here)."""

CLOSED_BELOW = 0.6
"""An end of less than this share of the widest round is drawn in (chosen here)."""

GIVES = 0.12
"""Cloth over filling gives about so much either way around (from memory)."""

CLOSED = 0.45
"""A last round that reaches less far out than this share of the widest is drawn closed over its filling."""

DRAWN_IN = 0.85
"""An opening that reaches less far out than this share of the widest is drawn in."""

_PASSES = 800
_STILL = 1e-4
"""The curve has come to rest where no round moves further in one pass, as a share of the widest."""
_HAIR = 1e-6
"""Of the longest: sums of the same stitches may differ by less, and are as long."""


@lru_cache(maxsize=256)
def filled_side(
    counted: tuple[float, ...], rises: tuple[float, ...], first_out: float, longest: float = PRESSED
) -> tuple[tuple[float, float], ...]:
    """Rounds pressed outwards by filling: the curve of least bending that the counts allow, from where the
    first round begins to where the last one ends, each edge so far out and so high (mm).

    counted: how far out each round lies by its count, in mm. rises: along the cloth. first_out: how far out
    the first round begins, 0 for a ring drawn closed. longest: how far the cloth may be stretched along, all
    rounds alike, where a step out needs it or the piece is lower than the ball that filling makes of it.

    The middle of each round lies as far out as its count says; from there the distances are moved, again and
    again, a little against their bending (the fourth difference along the profile), never further from
    the counts than the cloth gives and half a step to the next round (a count holds somewhere between a
    round's lower and upper edge), and never further from the round before than its cloth reaches. Where the
    piece is closed the profile goes on smoothly through the pole: beyond it the distances count as negative.
    The edge of an opening that is drawn in, which nothing fills, stays as its count says, and the middle of
    its round lies half a step before it. The piece stays as far around as its widest count. A ball whose
    counts follow 2πR·sin(s/R) comes out round.
    """
    widest = max(counted)
    steps = [abs(b - a) for a, b in pairwise(counted)] or [0.0]
    give = [
        GIVES * out + max(below, above) / 2
        for out, below, above in zip(counted, [steps[0], *steps], [*steps, steps[-1]], strict=False)
    ]
    closed = not first_out, counted[-1] < CLOSED * widest
    low, high = ([c + side * g for c, g in zip(counted, give, strict=True)] for side in (-1, 1))
    drawn_in = [
        not shut and counted[end] < DRAWN_IN * widest for end, shut in zip((0, -1), closed, strict=True)
    ]
    for end, beside in ((0, 1), (-1, -2)):
        if drawn_in[end]:
            low[end] = high[end] = (counted[end] + counted[beside]) / 2
    reach = [rise * longest for rise in rises]
    between = [(a + b) / 2 for a, b in pairwise(reach)]
    outs = list(counted)
    for _ in range(_PASSES):
        far = [*_beyond(outs, closed[0]), *outs, *reversed(_beyond(outs[::-1], closed[1]))]
        eased = [
            b - (far[i] - 4 * far[i + 1] + 6 * b - 4 * far[i + 3] + far[i + 4]) / 16
            for i, b in enumerate(outs)
        ]
        kept = widest / (max(eased) or 1.0)
        moved = [min(max(b * kept, least), most) for b, least, most in zip(eased, low, high, strict=True)]
        for end, shut in zip((0, -1), closed, strict=True):
            if shut:
                moved[end] = min(moved[end], reach[end] / 2)
        moved = _within(moved, between)
        still = max(abs(a - b) for a, b in zip(moved, outs, strict=True)) < _STILL * widest
        outs = moved
        if still:
            break
    first, last = (counted[end] if drawn_in[end] else outs[end] for end in (0, -1))
    edges = _within(
        [
            first_out if closed[0] else first,
            *((a + b) / 2 for a, b in pairwise(outs)),
            0.0 if closed[1] else last,
        ],
        reach,
    )
    moves = [b - a for a, b in pairwise(edges)]
    rounder = _way_on_a_ball(widest, edges[0], edges[-1]) / (sum(rises) or 1.0)
    needed = (abs(move) / rise for move, rise in zip(moves, rises, strict=True) if rise)
    stretch = max(1.0, min(rounder, longest), *needed)
    ups = (sqrt(max((rise * stretch) ** 2 - move**2, 0.0)) for move, rise in zip(moves, rises, strict=True))
    return tuple(zip(edges, accumulate(ups, initial=0.0), strict=True))


def _way_on_a_ball(radius: float, *ends: float) -> float:
    """How long the cloth of a ball is from end to end, each end so far out from its axis."""
    return radius * sum(acos(min(end / radius, 1.0)) for end in ends) if radius else 0.0


def _within(outs: Sequence[float], reach: Sequence[float]) -> list[float]:
    """Distances, none further out than the cloth to its neighbours reaches. reach: from each to the next."""
    found = list(outs)
    for at, far in enumerate(reach, 1):
        found[at] = min(found[at], found[at - 1] + far)
    for at in range(len(reach) - 1, -1, -1):
        found[at] = min(found[at], found[at + 1] + reach[at])
    return found


def _beyond(outs: Sequence[float], closed: bool) -> tuple[float, float]:
    """Two rounds before the first one: through the pole, or going on as straight as the first two."""
    second = outs[min(1, len(outs) - 1)]
    if closed:
        return (-second, -outs[0])
    step = second - outs[0]
    return (outs[0] - 2 * step, outs[0] - step)


def filled_height(rounds: Sequence[RoundSize], start_mm: float | None, spine_mm: float = 0.0) -> Band | None:
    """The standing height in mm of a stuffed piece in the round: of its form, good to what cloth gives.

    rounds: those that stand, in their order. start_mm: length of the edge below them, None where they begin
    on an edge as long as their first round. spine_mm: between the two ends of an oval, which begins on it.
    None where there are no rounds, or where the piece has a waist: how it stands then is open.
    """
    if not rounds:
        return None
    begins_mm = 2 * spine_mm or (rounds[0].length_mm if start_mm is None else start_mm)
    lengths = [begins_mm, *(one.length_mm for one in rounds)]
    if not max(lengths) or has_waist(lengths):
        return None
    counted = tuple(_out(one.length_mm, spine_mm) for one in rounds)
    side = filled_side(counted, tuple(one.rise_mm for one in rounds), _out(begins_mm, spine_mm))
    return Band.about(side[-1][1], CLOTH_GIVES)


def _out(length_mm: float, spine_mm: float) -> float:
    """How far out a round of that length lies: straight along the spine on both sides, round at its ends."""
    return max((length_mm - 2 * spine_mm) / tau, 0.0)


def has_waist(lengths: Sequence[float]) -> bool:
    """Whether the lengths grow again after they have become smaller."""
    smaller = False
    hair = _HAIR * max(lengths, default=0.0)
    for below, above in pairwise(lengths):
        if above < below - hair:
            smaller = True
        elif above > below + hair and smaller:
            return True
    return False
