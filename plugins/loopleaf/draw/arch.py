"""Chains that hang between two stitches: an arch of a circle as long as its chains, or with straight sides
where a circle has no room.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import acos, atan, atan2, copysign, cos, hypot, pi, sin, sqrt

from .canvas import Point

FLATTEST = 0.1
"""A chain that is stretched rises by so much of its width; it is never quite straight."""

ROUNDEST = 0.86 * 2 * pi
"""So much of a whole circle, and no more, is an arch whose ends are close together."""


@dataclass(frozen=True, slots=True)
class Bead:
    """One chain of an arch: its middle, and the direction it lies in."""

    middle: Point
    along: Point


@dataclass(frozen=True, slots=True)
class Arch:
    """beads: from the first end to the second. rise: how far its highest point is above the straight way
    between its ends; wide: how long that is; middle: of it; ahead, away: the directions along it and up.
    """

    beads: Sequence[Bead]
    rise: float
    wide: float
    middle: Point
    ahead: Point
    away: Point
    radius: float

    def at(self, aside: float, above: float = 0.0) -> Point:
        """A point so far along the arch from its highest one, and so far above it."""
        angle = aside / self.radius
        reach = self.radius + above
        across, up = reach * sin(angle), self.rise - self.radius + reach * cos(angle)
        return (
            self.middle[0] + self.ahead[0] * across + self.away[0] * up,
            self.middle[1] + self.ahead[1] * across + self.away[1] * up,
        )

    def turned(self, angle: float) -> Point:
        """The direction of its chains at such an angle from its highest point."""
        return (
            self.ahead[0] * cos(angle) - self.away[0] * sin(angle),
            self.ahead[1] * cos(angle) - self.away[1] * sin(angle),
        )

    def above(self, bead: int, out: float) -> Point:
        """A point so far outside of a bead's middle."""
        x, y = self.beads[bead].middle
        centre = self.at(0.0, -self.radius)
        return (x + (x - centre[0]) / self.radius * out, y + (y - centre[1]) / self.radius * out)


def arch(start: Point, end: Point, away: Point, chains: int, long: float) -> Arch:
    """So many chains of a length `long` between two points, bent to the side that `away` points to."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    wide = hypot(dx, dy) or 1e-6
    ahead = (dx / wide, dy / wide)
    left = (-ahead[1], ahead[0])
    up = left if away[0] * left[0] + away[1] * left[1] >= 0 else (-left[0], -left[1])
    turn = _turn(wide, chains * long)
    # Ends too close together for so long a chain are drawn a little further apart.
    radius = max(wide / 2 / sin(turn / 2), chains * long / turn if turn > ROUNDEST - 1e-6 else 0.0)
    middle = (start[0] + dx / 2, start[1] + dy / 2)
    bare = Arch((), radius * (1 - cos(turn / 2)), wide, middle, ahead, up, radius)
    beads: list[Bead] = []
    for one in range(chains):
        angle = turn * ((one + 0.5) / chains - 0.5)
        beads.append(Bead(bare.at(angle * radius), bare.turned(angle)))
    return replace(bare, beads=beads)


def slimmer(whole: Arch, widest: float, long: float) -> Arch:
    """The same chains, each so long, where they may be no wider than that, or than their ends are apart: with
    straight sides below a round top. The arch itself where it is as slim.
    """
    half, radius = whole.wide / 2, max(widest, whole.wide) / 2
    if whole.rise <= whole.radius or whole.radius <= radius:
        return whole
    long_all = len(whole.beads) * long
    low, high = sqrt(max(radius**2 - half**2, 0.0)), long_all
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if _length(half, radius, middle) < long_all else (low, middle)
    side, lean = _side(half, radius, high)
    bare = replace(whole, beads=(), rise=high + radius, radius=radius)
    beads: list[Bead] = []
    for one in range(len(whole.beads)):
        way = (one + 0.5) * long
        past = side - min(way, long_all - way)  # how far below the round top
        angle = (way - long_all / 2) / radius if past <= 0 else copysign(pi / 2 - lean, way - long_all / 2)
        (x, y), along = bare.at(angle * radius), bare.turned(angle)
        back = max(past, 0.0) * (1 if way < long_all / 2 else -1)
        beads.append(Bead((x - along[0] * back, y - along[1] * back), along))
    return replace(bare, beads=beads)


def _side(half: float, radius: float, high: float) -> tuple[float, float]:
    """How long a side is from an end, so far from the middle, up to a round top whose middle lies so high;
    and the angle at which it meets that, above the level of the middle.
    """
    far = hypot(half, high)
    return sqrt(max(far**2 - radius**2, 0.0)), acos(min(radius / far, 1.0)) - atan2(high, half)


def _length(half: float, radius: float, high: float) -> float:
    side, lean = _side(half, radius, high)
    return 2 * side + radius * (pi - 2 * lean)


def _turn(wide: float, long: float) -> float:
    """The angle of an arch so long over a straight way so wide: 2 sin(turn / 2) / turn is wide / long."""
    low, high = 4 * atan(2 * FLATTEST), ROUNDEST
    for _ in range(30):
        turn = (low + high) / 2
        low, high = (turn, high) if 2 * sin(turn / 2) / turn > wide / long else (low, turn)
    return (low + high) / 2
