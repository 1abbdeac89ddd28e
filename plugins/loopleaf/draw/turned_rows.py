"""Wedges of short rows one after the other turn the rows: the cloth is part of a ring, its rows spokes."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, sin

from .canvas import Point
from .laid_row import Corner, LaidRow, Tops
from .subject import Subject

STEEP = 0.5
"""A top edge that rises by more than this for its length is drawn turned; others as a slope."""

MOST = 1.9 * pi
"""More of a ring isn't drawn: its two ends would meet."""

ENDS = 1.0
"""A last row goes from edge to edge that ends within so many stitch widths of the first one's ends."""


@dataclass(frozen=True, slots=True)
class Turned:
    """arc: so many radians about a point. left, right: the two edges of the cloth. tops: its last row's.
    inner, outer: the heights at its lower and its higher edge, in mm. rising: the right one is the higher.
    """

    arc: float
    left: float
    right: float
    tops: Tops
    inner: float
    outer: float
    rising: bool

    def point(self, point: Point) -> Point:
        """Where a point of the rows lies, as they lie one upon the other."""
        x, y = point
        share = y / (self.tops.at(min(max(x, self.left), self.right), True) or 1.0)
        out = self.inner / self.arc + (x - self.left if self.rising else self.right - x)
        angle = pi / 2 + self.arc * ((share - 0.5) if self.rising else (0.5 - share))
        return (out * cos(angle), out * sin(angle))

    def corner(self, corner: Corner) -> Corner:
        """The same of an item's patch."""
        (a, b), (c, d), cloth = corner
        under = (self.point(cloth[0]), self.point(cloth[1])) if cloth is not None else None
        return Corner((self.point(a), self.point(b)), (self.point(c), self.point(d)), under)


def tops_of(rows: Sequence[LaidRow]) -> Tops:
    """The tops of what lies uppermost; an end that leans inwards is a slope from its foot."""
    tops = Tops()
    for row in rows:
        first, last = row.corners[0], row.corners[-1]
        left, right = first.feet[0][0], last.feet[1][0]
        tops.cover(
            [
                *([(left, tops.at(left, True))] if left < first.tops[0][0] else []),
                *(top for corner in row.corners for top in corner.tops),
                *([(right, tops.at(right, False))] if right > last.tops[1][0] else []),
            ]
        )
    return tops


def edges_of(rows: Sequence[LaidRow]) -> tuple[float, float]:
    """How high the left and the right edge are, in mm."""
    tops = tops_of(rows)
    return tops.ys[0], tops.ys[-1]


def turned(rows: Sequence[LaidRow], subject: Subject) -> Turned | None:
    """How uneven rows lie when they turn; None for those that don't, or little."""
    first, last = rows[0], rows[-1]
    off = ENDS * subject.scale.width_mm
    whole = abs(first.left - last.left) < off and abs(first.right - last.right) < off
    if first.slanting or subject.parts or not whole or not all(row.corners for row in rows):
        return None
    tops = tops_of(rows)
    inner, outer = sorted((tops.ys[0], tops.ys[-1]))
    steep = (outer - inner) / (first.right - first.left)
    if steep < STEEP or max(tops.ys) > outer + off or not inner:
        return None
    arc = min(steep, MOST)
    return Turned(arc, first.left, first.right, tops, inner, outer, tops.ys[-1] > tops.ys[0])
