"""The outline of rows that don't all go from edge to edge, for a schematic: leaning, or in parts."""

from collections.abc import Sequence
from typing import NamedTuple

from .canvas import Point
from .laid_row import LaidRow
from .turned_rows import feet_of_all, tops_of


class Outline(NamedTuple):
    """points: around the piece, in mm, y up. first: the ends of the first row. top: the two upper corners of
    the last one, from left to right.
    """

    points: Sequence[Point]
    first: tuple[float, float]
    top: tuple[Point, Point]


def uneven_outline(laid: Sequence[LaidRow]) -> Outline:
    """The outline of such rows, none of which is empty."""
    first, last = laid[0].corners, laid[-1].corners
    points = _sides(laid) if laid[0].slanting else _tops(laid)
    return Outline(points, (first[0].feet[0][0], first[-1].feet[1][0]), (last[0].tops[0], last[-1].tops[1]))


def _sides(laid: Sequence[LaidRow]) -> list[Point]:
    """Up the right end of each row and down the left one."""
    right = [laid[0].corners[-1].feet[1], *(row.corners[-1].tops[1] for row in laid)]
    left = [laid[0].corners[0].feet[0], *(row.corners[0].tops[0] for row in laid)]
    return [*right, *reversed(left)]


def _tops(laid: Sequence[LaidRow]) -> list[Point]:
    """Over the tops of what lies uppermost, and under the feet of what lies lowermost."""
    tops, feet = tops_of(laid), feet_of_all(laid)
    over = [*zip(reversed(tops.xs), reversed(tops.ys), strict=True)]
    return [*over, *zip(feet.xs, feet.ys, strict=True)]
