"""Squares, hexagons and the like: how far they are across, from side to side and from corner to corner.

Of a regular polygon with c sides of length a (textbook geometry): from the middle to a side a ÷ 2·tan(π/c),
to a corner a ÷ 2·sin(π/c). Where c is even, across is twice the first and the diagonal twice the second;
where it is odd, a corner lies opposite each side.
"""

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .size import RoundSize

POLYGONS = range(3, 9)
"""How many corners a polygon may have: with nine and more it is within 5 % of a circle, its edge is
2c·tan(π/c) for each length from its middle against 2π (chosen here: less than a gauge tells).
"""
_SAME = 0.15
"""A round so much longer than the last one with corners is worked around them all (chosen here)."""


def corners_of(rounds: "Sequence[RoundSize]") -> int:
    """How many corners a piece in the round has; 0 for a circle.

    Two rounds at least have them, and what follows keeps to their sides.
    """
    found = [at for at, one in enumerate(rounds) if one.corners]
    if len(found) < 2:
        return 0
    last = rounds[found[-1]]
    rounded = any(one.length_mm > last.length_mm * (1 + _SAME) for one in rounds[found[-1] + 1 :])
    return last.corners if last.corners in POLYGONS and not rounded else 0


def across_a_side(corners: int) -> float:
    """How far a regular polygon is across for each length of its side."""
    to_side, to_corner = 0.5 / math.tan(math.pi / corners), 0.5 / math.sin(math.pi / corners)
    return to_side + (to_corner if corners % 2 else to_side)


def diagonal_across(corners: int) -> float:
    """How far it is from corner to corner, for each length that it is across; of a triangle its side."""
    return _widest(corners) / across_a_side(corners)


def across_a_height(corners: int) -> float:
    """How far it is across for each length from its middle to a side."""
    return across_a_side(corners) * 2 * math.tan(math.pi / corners)


def _widest(corners: int) -> float:
    """The longest way from corner to corner of a polygon of side 1."""
    steps = corners // 2
    return math.sin(math.pi * steps / corners) / math.sin(math.pi / corners)
