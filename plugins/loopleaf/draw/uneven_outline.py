"""The outline of rows that don't all go from edge to edge, for a schematic: leaning, or in parts."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from .canvas import Point
from .subject import Subject
from .uneven_rows import LaidRow, Tops, laid_unevenly

STEADY = 4.0
"""Where every row ends within so many stitch widths of the one below, the sides are lines from row to row."""


class Outline(NamedTuple):
    """points: around the piece, in mm, y up. first, last: the ends of these rows. top: of the last one."""

    points: Sequence[Point]
    first: tuple[float, float]
    last: tuple[float, float]
    top: float


def uneven_outline(subject: Subject) -> Outline | None:
    """Its outline; None for rows all from edge to edge that grow alike at both, or with some along a side."""
    laid = laid_unevenly(subject) if len(subject.sizes) == len(subject.worked) else None
    if laid is None or not all(row.corners for row in laid):
        return None
    points = _sides(laid) if _is_steady(laid, subject.scale.width_mm) else _tops(laid)
    first, last = laid[0], laid[-1]
    top = max(y for corner in last.corners for _, y in corner.tops)
    return Outline(points, (first.left, first.right), (last.left, last.right), top)


def _is_steady(laid: Sequence[LaidRow], wide: float) -> bool:
    steps = [max(abs(b.left - a.left), abs(b.right - a.right)) for a, b in pairwise(laid)]
    return max(steps) <= STEADY * wide


def _sides(laid: Sequence[LaidRow]) -> list[Point]:
    """Up the right end of each row and down the left one: steps from row to row as slopes."""
    right, left = [(laid[0].right, 0.0)], [(laid[0].left, 0.0)]
    for row in laid:
        right.append((row.right, (row.corners[-1].feet[1][1] + row.corners[-1].tops[1][1]) / 2))
        left.append((row.left, (row.corners[0].feet[0][1] + row.corners[0].tops[0][1]) / 2))
    right.append(laid[-1].corners[-1].tops[1])
    left.append(laid[-1].corners[0].tops[0])
    return [*right, *reversed(left)]


def _tops(laid: Sequence[LaidRow]) -> list[Point]:
    """Over the tops of what lies uppermost, from the right to the left."""
    tops = Tops()
    for row in laid:
        tops.cover([top for corner in row.corners for top in corner.tops])
    over = [*zip(reversed(tops.xs), reversed(tops.ys), strict=True)]
    return [(over[0][0], 0.0), *over, (over[-1][0], 0.0)]
