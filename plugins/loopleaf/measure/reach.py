"""How far from its middle work in the round can lie: no farther than its cloth reaches.

An edge that is longer than the circle of its cloth's length waves; it makes the work no wider. A round lies
at most its own height farther out than the one that it stands on, and the first one so much beyond its ring
(textbook geometry: a circle of radius r is 2πr around). Lace draws in and waves by turns; where its edge is
as long as its whole cloth lets it lie, and no round before fell far behind, it lies flat all the way.
"""

from collections.abc import Sequence

from .shape import CUPS_BELOW, edge_a_height, way_out
from .size import RoundSize


def reaches(rounds: Sequence[RoundSize], start_mm: float | None, corners: int = 0) -> list[float]:
    """How far each round lies from the middle, in mm; of a polygon to a side.

    start_mm: length of the edge below the first of them; None on a chain or another edge, which the first
    round is as far out as. corners: of the whole piece, 0 for a circle.
    """
    around_a_reach = edge_a_height(corners)
    found: dict[str, float] = {}
    below = None if start_mm is None else start_mm / around_a_reach
    for one in rounds:
        below = found[one.on] if one.on else below
        own = one.length_mm / around_a_reach
        below = own if below is None else min(own, below + one.rise_mm)
        found[one.label] = below
    return [found[one.label] for one in rounds]


def spreads_flat(rounds: Sequence[RoundSize], start_mm: float | None) -> bool:
    """Whether the edge is long enough for the whole cloth to lie flat, so that what drew in spreads out.

    Of work out of a middle; on a chain or another edge that isn't known. start_mm: as in `reaches`.
    """
    outward = way_out(rounds)
    if start_mm is None or not outward:
        return False
    shares = [one.length_mm / (start_mm + edge_a_height(one.corners) * one.height_mm) for one in outward]
    return shares[-1] >= 1 and min(shares) >= CUPS_BELOW
