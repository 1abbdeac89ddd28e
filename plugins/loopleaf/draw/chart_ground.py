"""What a chart is laid out on: rounds about a centre, straight rows, rows in an arc.

A ground gives a point (x to the right, y up) for a distance `out` from its middle or lower edge and a share
`along` of its way there, all in units of a tenth of a stitch's width.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, copysign, cos, dist, hypot, pi, sin, tau
from typing import Protocol

from .canvas import Point
from .chart_frame import Framed
from .chart_mitred import Mitred
from .section import Half, Oval, Polygon

MOST_MOVED = 0.7
"""A gap takes so much, at most, of the part of a round that moves together for it."""


class Ground(Protocol):
    """What the stitches of a chart stand on."""

    def at(self, out: float, along: float) -> Point:
        """The point so far along the way so far out."""

    def way(self, out: float) -> float:
        """How long the way is so far out."""

    def out_for(self, way: float) -> float:
        """How far out the way is so long; 0 where it is as long everywhere."""

    def carried(self, along: float, out: float, to: float) -> float:
        """The share at `to` that lies straight above a share at `out`."""


@dataclass(frozen=True, slots=True)
class Straight:
    """Rows one above the other. Their way has no end: a share is a unit."""

    def at(self, out: float, along: float) -> Point:
        """The point itself."""
        return (along, out)

    def way(self, out: float) -> float:
        """A unit."""
        return 1.0

    def out_for(self, way: float) -> float:
        """Anywhere."""
        return 0.0

    def carried(self, along: float, out: float, to: float) -> float:
        """The same."""
        return along


@dataclass(frozen=True, slots=True)
class Sideways(Straight):
    """Rows one to the right of the other, from below upwards."""

    def at(self, out: float, along: float) -> Point:
        """The point with its two numbers changed over."""
        return (out, along)


@dataclass(frozen=True, slots=True)
class Sided(Straight):
    """Rows along the side of rows: down it from its upper corner, on to the left of the way or to the right.

    level: how far out they begin there. down: the side's direction, of length 1. over: the rows go over the
    piece's top too, as on straight ground.
    """

    corner: Point
    level: float
    left: bool
    down: Point
    over: bool

    def at(self, out: float, along: float) -> Point:
        """The point itself over the top, else so far down the side and so far away from it."""
        past = self.corner[0] - along if self.left else along - self.corner[0]
        if self.over and past <= 0:
            return (along, out)
        (x, y), (across, up) = self.corner, self.outward_there
        away = out - self.level
        return (x + self.down[0] * past + across * away, y + self.down[1] * past + up * away)

    @property
    def outward_there(self) -> Point:
        """The direction away from the side."""
        x, y = self.down
        return (y, -x) if self.left else (-y, x)

    def beside(self, point: Point) -> float:
        """The share of the way that lies beside a point."""
        past = (point[0] - self.corner[0]) * self.down[0] + (point[1] - self.corner[1]) * self.down[1]
        return self.corner[0] - past if self.left else self.corner[0] + past

    def away(self, point: Point) -> float:
        """How far out of the side a point lies."""
        (x, y), (across, up) = self.corner, self.outward_there
        return (point[0] - x) * across + (point[1] - y) * up

    def outward(self, point: Point) -> Point:
        """The direction that stitches grow in: up over the top, else away from the side."""
        past = (point[0] - self.corner[0]) * (-1 if self.left else 1)
        return (0.0, 1.0) if self.over and past <= 0 else self.outward_there


@dataclass(frozen=True, slots=True)
class Hung(Straight):
    """Rows that hang from a level line so high, one below the other. way_to: 1 if their way goes to the
    right, -1 to the left.
    """

    high: float
    way_to: float

    def at(self, out: float, along: float) -> Point:
        """The point so far below the line."""
        return (along * self.way_to, self.high - out)

    def outward(self, point: Point) -> Point:
        """Down."""
        return (0.0, -1.0)


@dataclass(frozen=True, slots=True)
class Edge(Straight):
    """A row along straight stretches from corner to corner. left: it grows to the left of the way there."""

    corners: Sequence[Point]
    left: bool

    def outward(self, point: Point) -> Point:
        """The direction in which stitches grow on the stretch nearest to a point: straight up or aside, also
        on a slanting one, else a cross would be drawn as another sign.
        """
        start, end = min(pairwise(self.corners), key=lambda side: _off(side[0], side[1], point))
        side = -1.0 if self.left else 1.0
        x, y = side * (end[1] - start[1]), side * (start[0] - end[0])
        return (copysign(1.0, x), 0.0) if abs(x) > 1.01 * abs(y) else (0.0, copysign(1.0, y))


def _off(start: Point, end: Point, point: Point) -> float:
    """How far a point lies from the straight stretch between two others."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    share = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / ((dx * dx + dy * dy) or 1.0)
    share = max(min(share, 1.0), 0.0)
    return dist(point, (start[0] + dx * share, start[1] + dy * share))


@dataclass(frozen=True, slots=True)
class Bends:
    """A band of a few long rows, laid in bends: lanes so long, one above the other, a half circle of that
    radius after each. inset: so far inside of a right one the way is as long as it is counted.
    """

    lane: float
    radius: float
    inset: float

    def at(self, out: float, along: float) -> Point:
        """Along the lanes from the lower left, beside them to the left."""
        lane = self.lane
        if along < 0:
            return (along, out)
        right, left = pi * (self.radius - self.inset), pi * self.radius
        pairs, part = divmod(along, 2 * lane + right + left)
        back = part > lane + right
        part -= (lane + right) * back
        low = 2 * self.radius * (2 * pairs + back)
        if part <= lane:
            return (lane - part, low - out) if back else (part, low + out)
        angle = (part - lane) / (left if back else right) * pi
        reach = self.radius + out if back else self.radius - out
        across = -reach * sin(angle) if back else lane + reach * sin(angle)
        return (across, low + self.radius - reach * cos(angle))

    def way(self, out: float) -> float:
        """A unit."""
        return 1.0

    def out_for(self, way: float) -> float:
        """Anywhere."""
        return 0.0

    def carried(self, along: float, out: float, to: float) -> float:
        """The same."""
        return along

    def outward(self, point: Point) -> Point:
        """The direction away from the band's lower edge at a point beside it."""
        x, y = point
        if 0 <= x <= self.lane:
            return (0.0, 1.0 if round(y / self.radius / 2) % 2 == 0 else -1.0)
        right = x > self.lane
        step = 2 if right else 0
        middle = (
            self.lane if right else 0.0,
            self.radius * (4 * round((y / self.radius - step + 1) / 4) + step - 1),
        )
        dx, dy = x - middle[0], y - middle[1]
        length = (hypot(dx, dy) or 1.0) * (-1 if right else 1)
        return (dx / length, dy / length)


@dataclass(frozen=True, slots=True)
class Fan:
    """Rows in an arc of so many radians about the middle, as a piece lies whose rows grow steadily."""

    turn: float

    def at(self, out: float, along: float) -> Point:
        """From left to right, the arc open below."""
        angle = (along - 0.5) * self.turn
        return (out * sin(angle), out * cos(angle))

    def way(self, out: float) -> float:
        """The length of the arc."""
        return self.turn * out

    def out_for(self, way: float) -> float:
        """The radius of an arc so long."""
        return way / self.turn

    def carried(self, along: float, out: float, to: float) -> float:
        """The same."""
        return along


@dataclass(frozen=True, slots=True)
class Sector(Fan):
    """The same about the one place that a piece begins in, no wider than its rows fill."""


@dataclass(frozen=True, slots=True)
class Inward:
    """Rounds that close towards a middle: the far side of a ball, seen from there. So its rounds run the
    other way round. reach: how far from the middle it begins; centre: where that lies; swing: of the near
    side, in radians.
    """

    reach: float
    centre: Point
    swing: float = 0.0

    def at(self, out: float, along: float) -> Point:
        """Nearer to the middle the further out."""
        left, angle = max(self.reach - out, 0.1), self.swing - tau * along
        return (self.centre[0] + left * cos(angle), self.centre[1] + left * sin(angle))

    def way(self, out: float) -> float:
        """The way around, shorter the further out."""
        return tau * max(self.reach - out, 0.1)

    def out_for(self, way: float) -> float:
        """From the beginning on there is room."""
        return 0.0

    def carried(self, along: float, out: float, to: float) -> float:
        """The same."""
        return along


@dataclass(frozen=True)
class Circles(Oval):
    """Circles within a polygon of so many sides. by: their way begins such a share of it behind a corner."""

    sides: int = 1
    by: float = 0.0


_CLOSED = (Oval, Polygon, Inward)
_OPEN = Half


def is_closed(ground: Ground) -> bool:
    """Whether the last stitch of a round stands beside the first."""
    return isinstance(ground, _CLOSED) and not isinstance(ground, _OPEN)


def outward(ground: Ground, point: Point, upright: bool = False) -> Point:
    """The direction that stitches grow in at a point of the chart, of length 1. upright: on a polygon
    and around a piece in rows, square to its side.
    """
    if isinstance(ground, Framed | Mitred):
        return ground.outward(point, upright)
    if isinstance(ground, Bends | Edge | Hung | Sided):
        return ground.outward(point)
    if isinstance(ground, Straight):
        return (1.0, 0.0) if isinstance(ground, Sideways) else (0.0, 1.0)
    x, y = point
    if upright and isinstance(ground, Half):
        angle = ground.facing(atan2(y, x))
        return (cos(angle), sin(angle))
    if upright and isinstance(ground, Polygon):
        side = tau / ground.corners
        angle = round((atan2(y, x) + pi / 2) / side) * side - pi / 2
        return (cos(angle), sin(angle))
    if isinstance(ground, Inward):
        x, y = ground.centre[0] - x, ground.centre[1] - y
    if isinstance(ground, Oval):
        x -= max(min(x, ground.spine / 2), -ground.spine / 2)
    length = hypot(x, y)
    return (x / length, y / length) if length else (0.0, 1.0)


def opened(ground: Ground, level: float, seam: float, along: float, gap: float) -> float:
    """A share of a round's way, `level` out, once a gap is opened at its seam: the stitches move together a
    little, those between the same two corners, or on the same end of an oval.
    """
    if not is_closed(ground):
        return along
    less = gap / ground.way(level)
    turns, share = divmod(along - seam, 1.0)
    behind, ahead = _run(ground, level, seam)
    if isinstance(ground, Circles):
        while less > MOST_MOVED * (ahead + behind) and ahead + behind + 2 / ground.sides <= 1:
            behind, ahead = behind + 1 / ground.sides, ahead + 1 / ground.sides
    if less > MOST_MOVED * (ahead + behind):
        behind, ahead = 0.5, 0.5
    kept = 1 - less / (ahead + behind)
    if share < ahead:
        share = ahead - (ahead - share) * kept
    elif share > 1 - behind:
        share = 1 - behind + (share - 1 + behind) * kept
    return seam + turns + share


def _run(ground: Ground, level: float, along: float) -> tuple[float, float]:
    """How far back and ahead of a share a round's way goes on as it does there."""
    if isinstance(ground, Polygon | Circles):
        side, by = (1 / ground.corners, 0.0) if isinstance(ground, Polygon) else (1 / ground.sides, ground.by)
        behind = (along + by) % side
        return behind, side - behind
    if isinstance(ground, Oval) and ground.spine:
        straight = ground.spine / ground.way(level)
        part = along % 0.5
        return (part, straight - part) if part < straight else (part - straight, 0.5 - part)
    return 0.5, 0.5
