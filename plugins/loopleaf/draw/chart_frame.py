"""The ground of rows that go around their piece: straight stretches, with a corner where two of them meet."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate, pairwise
from math import copysign, dist, hypot

from .canvas import Point

INSIDE = 0.01
"""A point so little within a stretch still counts as outside of it."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A straight piece of the edge, in the order that it is worked."""

    start: Point
    end: Point

    @property
    def way(self) -> Point:
        """Its direction, of length 1."""
        x, y = self.end[0] - self.start[0], self.end[1] - self.start[1]
        long = hypot(x, y) or 1.0
        return (x / long, y / long)

    @property
    def long(self) -> float:
        """How long it is."""
        return dist(self.start, self.end)

    def outward(self, left: bool) -> Point:
        """The direction away from the piece. left: the way goes down its left side, up its right one."""
        x, y = self.way
        return (y, -x) if left else (-y, x)

    def moved(self, by: float, left: bool) -> "Stretch":
        """The same so far out."""
        x, y = self.outward(left)
        return Stretch(
            (self.start[0] + x * by, self.start[1] + y * by), (self.end[0] + x * by, self.end[1] + y * by)
        )

    def along(self, point: Point) -> float:
        """How far along it a point lies, from its start."""
        (x, y), (dx, dy) = self.start, self.way
        return (point[0] - x) * dx + (point[1] - y) * dy

    def at(self, along: float) -> Point:
        """The point so far along it."""
        (x, y), (dx, dy) = self.start, self.way
        return (x + dx * along, y + dy * along)

    def at_height(self, y: float) -> Point:
        """The point of it, gone on with, so high up."""
        (x, low), (end_x, high) = self.start, self.end
        return (x + (end_x - x) * (y - low) / ((high - low) or 1.0), y)

    def off(self, point: Point) -> float:
        """How far a point lies from it."""
        return dist(point, self.at(max(min(self.along(point), self.long), 0.0)))


def meeting(one: Stretch, other: Stretch) -> Point:
    """Where two stretches, gone on with, meet."""
    (ax, ay), (bx, by) = one.way, other.way
    cross = ax * by - ay * bx
    if abs(cross) < 1e-9:
        return one.end
    dx, dy = other.start[0] - one.start[0], other.start[1] - one.start[1]
    return one.at((dx * by - dy * bx) / cross)


@dataclass(frozen=True, slots=True)
class Framed:
    """Rows around a piece. stretches: of its edge, in the order worked; where one ends where the next begins
    is a corner. left: the way goes down the left side. middle: so far outside of the edge the way is
    measured, in units.
    """

    stretches: tuple[Stretch, ...]
    left: bool
    middle: float

    def at(self, out: float, along: float) -> Point:
        """The point so far along the way, so far out of the edge; in a corner, of the corner."""
        at, leg, before = self._leg(along)
        x, y = leg.at(along - before)
        across, up = self._outward(at, (x, y))
        return (x + across * (out - self.middle), y + up * (out - self.middle))

    def straight(self, along: float, aside: float, out: float) -> Point:
        """The point so far out, so far aside of a spot of the way, on the straight stretch of that."""
        at, leg, before = self._leg(along)
        x, y = leg.at(along - before + aside)
        across, up = self.stretches[at].outward(self.left)
        return (x + across * (out - self.middle), y + up * (out - self.middle))

    def way(self, out: float) -> float:
        """A unit."""
        return 1.0

    def out_for(self, way: float) -> float:
        """Anywhere."""
        return 0.0

    def carried(self, along: float, out: float, to: float) -> float:
        """The same."""
        return along

    def outward(self, point: Point, upright: bool = False) -> Point:
        """The direction in which stitches grow at a point outside. upright: straight up or aside, else a
        cross would be drawn as another sign.
        """
        at = self.nearest(point)
        if not upright:
            return self._outward(at, point)
        x, y = self.stretches[at].outward(self.left)
        return (copysign(1.0, x), 0.0) if abs(x) > 1.01 * abs(y) else (0.0, copysign(1.0, y))

    def nearest(self, point: Point, least: int = 0) -> int:
        """The stretch nearest to a point that lies outside of it; least: the first that counts."""
        places = range(least, len(self.stretches))
        outside = [at for at in places if self._off(at, point) >= -INSIDE]
        return min(outside or places, key=lambda at: round(self.stretches[at].off(point), 3))

    def beside(self, at: int, spot: Point) -> float:
        """How far along the way a spot lies that is straight inside of a stretch."""
        legs = self._legs()
        return sum(leg.long for leg in legs[:at]) + legs[at].along(spot)

    def corners(self) -> Iterator[float]:
        """How far along the way its corners lie."""
        reached = accumulate(leg.long for leg in self._legs())
        for (one, other), along in zip(pairwise(self.stretches), reached, strict=False):
            if one.end == other.start:
                yield along

    def moved(self, by: float) -> "Framed":
        """The same so far out: now it has a corner everywhere."""
        moved = [one.moved(by, self.left) for one in self.stretches]
        meet = [meeting(one, other) for one, other in pairwise(moved)]
        starts, ends = [moved[0].start, *meet], [*meet, moved[-1].end]
        return Framed(tuple(map(Stretch, starts, ends)), self.left, self.middle)

    def widened(self, aside: float, low: float) -> "Framed":
        """The same with its two sides so far out and the foundation so far down."""
        top, *lower, again = self.stretches
        near, bottom, far = (
            one.moved(by, self.left) for one, by in zip(lower, (aside, low, aside), strict=True)
        )
        right, left = meeting(near, bottom), meeting(bottom, far)
        moved = (
            top, Stretch(near.start, right), Stretch(right, left), Stretch(left, far.end),
            Stretch(far.end, again.end),
        )  # fmt: skip
        return Framed(moved, self.left, self.middle) if aside or low else self

    def longs(self) -> list[float]:
        """How long the way is outside of each stretch."""
        return [leg.long for leg in self._legs()]

    def _off(self, at: int, point: Point) -> float:
        """How far outside of a stretch, gone on with, a point lies."""
        (x, y), (across, up) = self.stretches[at].start, self.stretches[at].outward(self.left)
        return (point[0] - x) * across + (point[1] - y) * up

    def _legs(self) -> list[Stretch]:
        """The way itself, outside of the stretches and on to where they meet in corners."""
        legs = [one.moved(self.middle, self.left) for one in self.stretches]
        for at, (one, other) in enumerate(pairwise(self.stretches)):
            if one.end == other.start:
                corner = meeting(legs[at], legs[at + 1])
                legs[at] = Stretch(legs[at].start, corner)
                legs[at + 1] = Stretch(corner, legs[at + 1].end)
        return legs

    def _leg(self, along: float) -> tuple[int, Stretch, float]:
        """The part of the way that a spot lies on: its index, itself, and how long the way is up to it."""
        legs = self._legs()
        before = [0.0, *accumulate(leg.long for leg in legs[:-1])]
        at = max((at for at, reached in enumerate(before) if reached <= along), default=0)
        return at, legs[at], before[at]

    def _outward(self, at: int, point: Point) -> Point:
        """Away from a stretch, or from the corner at its end that the point lies beyond."""
        one, along = self.stretches[at], self.stretches[at].along(point)
        corner = None
        if along < 0 and at and self.stretches[at - 1].end == one.start:
            corner = one.start
        elif along > one.long and at + 1 < len(self.stretches) and self.stretches[at + 1].start == one.end:
            corner = one.end
        if corner is None:
            return one.outward(self.left)
        x, y = point[0] - corner[0], point[1] - corner[1]
        long = hypot(x, y) or 1.0
        return (x / long, y / long)
