"""Where a round is moved along so that its corners lie where a polygon has them: sides are stretched evenly
between them.
"""

from bisect import bisect_right
from collections.abc import Callable, Sequence
from itertools import pairwise

Moved = Callable[[float], float]
"""From a share of the round's way to another."""


def knots_of(middles: Sequence[float], corners: int) -> list[float]:
    """Where the round's own corners are, begun at its first; none where it hasn't as many as the polygon."""
    return [*middles] if len(middles) == corners else []


def knots_below(stood: Sequence[tuple[float, float]], corners: int) -> list[float]:
    """Where the round has what stands on the polygon's corners.

    stood: for each stitch in order the middle of its top, and of what it stands on, as shares of either way.
    None where they don't go around in order.
    """
    if not stood:
        return []
    tops, feet = [stood[0][0]], [stood[0][1] - round(stood[0][1])]
    for top, foot in stood[1:]:
        tops.append(top)
        feet.append(foot + round(feet[-1] - foot))
    tops.append(tops[0] + 1)
    feet.append(feet[0] + 1)
    if any(later <= earlier for earlier, later in pairwise(feet)):
        return []
    found: list[float] = []
    for corner in range(corners):
        at = corner / corners
        at += at < feet[0]
        before = min(bisect_right(feet, at), len(feet) - 1) - 1
        part = (at - feet[before]) / (feet[before + 1] - feet[before])
        found.append(tops[before] + part * (tops[before + 1] - tops[before]))
    return found


def moved_to(knots: Sequence[float]) -> Moved:
    """The way along which those lie at the polygon's corners, the first of them at its first."""
    first, corners = knots[0], len(knots)
    shares = [(knot - first) % 1.0 for knot in knots] + [1.0]

    def moved(at: float) -> float:
        turns, part = divmod(at - first, 1.0)
        side = max(s for s in range(corners) if shares[s] <= part)
        return turns + (side + (part - shares[side]) / (shares[side + 1] - shares[side])) / corners

    return moved
