"""What rows are laid on: a straight sheet, an arc, an edge of another piece."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import accumulate, pairwise
from math import cos, hypot, inf, pi, sin

from ..measure.size import RoundSize
from .canvas import Point
from .section import Half

WIDEST_ARC = 1.6 * pi
NARROWEST_ARC = 0.25 * pi

GROWN_HALFWAY = 0.2
"""An arc has so much of its growth behind it halfway up; a straight cloth with a full edge hasn't."""

AT_ONCE = 0.75
"""Nor has a cloth that is gathered, where one row brings more than so much of its growth."""

FEWEST_IN_ARC = 4
"""Fewer rows than this are a band, however they grow."""


@dataclass(frozen=True, slots=True)
class Wave:
    """knots: how high a row lies above its lowest place, in mm, at shares of its width from the left."""

    knots: Sequence[tuple[float, float]] = ()

    def at(self, along: float) -> float:
        """The height at a share of the row's width."""
        if not self.knots:
            return 0.0
        after = bisect_right(self.knots, (along, inf))
        if not 0 < after < len(self.knots):
            return self.knots[min(after, len(self.knots) - 1)][1]
        (a, low), (b, high) = self.knots[after - 1], self.knots[after]
        return low + (high - low) * (along - a) / (b - a)


@dataclass(frozen=True, slots=True)
class Sheet:
    """A flat sheet of rows: an arc of that many radians about a point so far below the first row (0:
    straight). wave: of straight rows. sides: of an arc that is half a polygon of so many sides, 0 for round.
    corners: where those of a row lie that is 1 away from the point, where the stitches have told them; its
    sides are as long as their counts make them, which is rarely just half a polygon.
    """

    arc: float
    below: float
    wave: Wave = field(default_factory=Wave)
    sides: int = 0
    corners: Sequence[Point] = ()

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""
        if not self.arc:
            return ((along - 0.5) * width, high + self.wave.at(along))
        if self.corners:
            side = min(max(int(along * self.sides), 0), self.sides - 1)
            (x0, y0), (x1, y1) = self.corners[side], self.corners[side + 1]
            part = along * self.sides - side
            return (high * (x0 + (x1 - x0) * part), high * (y0 + (y1 - y0) * part))
        if self.sides:
            return Half(self.sides).at(high, along)
        angle = pi / 2 + (0.5 - along) * self.arc
        out = self.below + high
        return (out * cos(angle), out * sin(angle))


@dataclass(frozen=True, slots=True)
class Edging:
    """A straight edge between two points that rows are worked onto, their right side to the viewer; they
    grow to the left of the way from start to end.
    """

    start: Point
    end: Point

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: rows of any width are eased along the edge; `high` mm away from it."""
        dx, dy = self.end[0] - self.start[0], self.end[1] - self.start[1]
        length = hypot(dx, dy)
        return (
            self.start[0] + dx * along - dy / length * high,
            self.start[1] + dy * along + dx / length * high,
        )


@dataclass(frozen=True, slots=True)
class Cornered:
    """Straight edges from corner to corner that rows are worked over, their right side to the viewer; they
    grow to the left of the way, and their corners are mitred. many: the places along each edge.
    """

    corners: Sequence[Point]
    many: Sequence[int]

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: rows of any width are eased along the edges; `high` mm away from them."""
        begins = [*accumulate(self.many, initial=0)]
        way = along * begins[-1]
        at = min(max(bisect_right(begins, way) - 1, 0), len(self.many) - 1)
        share = (way - begins[at]) / self.many[at]
        start, end = (self._corner(number, high) for number in (at, at + 1))
        return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)

    def _corner(self, number: int, high: float) -> Point:
        """A corner so far away from the edges that meet there."""
        last = len(self.many) - 1
        ax, ay = self._aside(max(number - 1, 0))
        bx, by = self._aside(min(number, last))
        x, y = self.corners[number]
        by_both = high / (1 + ax * bx + ay * by)
        return (x + (ax + bx) * by_both, y + (ay + by) * by_both)

    def _aside(self, edge: int) -> Point:
        """The direction that rows grow in from an edge, of length 1."""
        (ax, ay), (bx, by) = self.corners[edge], self.corners[edge + 1]
        long = hypot(bx - ax, by - ay) or 1.0
        return (-(by - ay) / long, (bx - ax) / long)


def sheet_for(rows: Sequence[RoundSize], foot_mm: float = 0.0) -> Sheet:
    """Straight, or an arc, its inner edge as long as the first row; fuller rows are eased in.

    foot_mm: how long the inner edge is where the first row grows out of it.
    """
    if len(rows) < FEWEST_IN_ARC:
        return Sheet(0.0, 0.0)
    first, last = rows[0], rows[-1]
    deep = last.height_mm - first.rise_mm / 2
    arc = min((last.length_mm - first.length_mm) / deep if deep else 0.0, WIDEST_ARC)
    steady = all(b.length_mm >= a.length_mm * 0.97 for a, b in pairwise(rows))
    halfway = rows[len(rows) // 2].length_mm - first.length_mm
    soon = halfway >= GROWN_HALFWAY * (last.length_mm - first.length_mm)
    at_once = max(b.length_mm - a.length_mm for a, b in pairwise(rows))
    gathered = at_once > AT_ONCE * (last.length_mm - first.length_mm)
    if not steady or not soon or gathered or arc < NARROWEST_ARC:
        return Sheet(0.0, 0.0)
    if foot_mm and foot_mm < first.length_mm:
        arc = min((last.length_mm - foot_mm) / last.height_mm, WIDEST_ARC)
        return Sheet(arc, foot_mm / arc)
    return Sheet(arc, first.length_mm / arc)
