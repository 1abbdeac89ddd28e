"""Wedges of short rows one after the other turn the rows: the cloth is part of a ring, its rows spokes; or it
is drawn in at one end.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, pi, sin

from .canvas import Point
from .laid_row import Corner, LaidRow, Tops
from .stitchwork import straight
from .subject import Subject

STEEP = 0.5
"""A top edge that rises by more than this for its length is drawn turned; others as a slope."""

MOST = 1.9 * pi
"""More of a ring isn't drawn: its two ends would meet."""

UNBENT = 0.5
"""Where the top edge keeps no nearer to a straight line than this, of what it rises by, most of the cloth is
straight; its narrow part is drawn in from both sides.
"""

ENDS = 1.0
"""A last row goes from edge to edge that ends within so many stitch widths of the first one's ends."""


@dataclass(frozen=True, slots=True)
class Turned:
    """arc: so many radians about a point; 0 where the cloth is straight, with a narrower end. left, right:
    its two edges. tops: its last row's. inner, outer: the heights at its lower and its higher edge, in mm.
    rising: the right one is the higher.
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
        if not self.arc:
            return (x, y + (self.outer - self.tops.at(min(max(x, self.left), self.right), True)) / 2)
        share = y / (self.tops.at(min(max(x, self.left), self.right), True) or 1.0)
        out = self.inner / self.arc + (x - self.left if self.rising else self.right - x)
        angle = pi / 2 + self.arc * ((share - 0.5) if self.rising else (0.5 - share))
        return (out * cos(angle), out * sin(angle))

    def corner(self, corner: Corner) -> Corner:
        """The same of an item's patch."""
        (a, b), (c, d), cloth = corner
        under = (self.point(cloth[0]), self.point(cloth[1])) if cloth is not None else None
        return Corner((self.point(a), self.point(b)), (self.point(c), self.point(d)), under)

    def row(self, row: LaidRow) -> LaidRow:
        """The same of a whole row."""
        return replace(row, corners=[self.corner(one) for one in row.corners])


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


def feet_of_all(rows: Sequence[LaidRow]) -> Tops:
    """The feet of what lies lowermost."""
    feet = Tops()
    for row in reversed(rows):
        under = [foot for corner in row.corners for foot in (corner.cloth or corner.feet)]
        if all(b >= a for (a, _), (b, _) in pairwise(under)):
            feet.cover(under)
    return feet


def edges_of(rows: Sequence[LaidRow]) -> tuple[tuple[float, float], tuple[float, float]]:
    """From where to where the left and the right edge go up, in mm."""
    feet, tops = feet_of_all(rows).ys, tops_of(rows).ys
    return (feet[0], tops[0]), (feet[-1], tops[-1])


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
    slope = straight((tops.xs[0], tops.ys[0]), (tops.xs[-1], tops.ys[-1]))
    off = max(abs(y - slope((x - tops.xs[0]) / (tops.xs[-1] - tops.xs[0]))[1]) for x, y in _points(tops))
    arc = min(steep, MOST) if off < UNBENT * (outer - inner) else 0.0
    return Turned(arc, first.left, first.right, tops, inner, outer, tops.ys[-1] > tops.ys[0])


def _points(tops: Tops) -> list[Point]:
    return [*zip(tops.xs, tops.ys, strict=True)]
