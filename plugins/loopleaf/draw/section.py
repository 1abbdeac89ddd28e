"""Cross-sections of work in the round, seen from above: circle, oval, polygon.

Each gives a point for a distance `out` from the middle line (mm) and a share `along` of the way around (0 to
1). x runs to the right, y away from the viewer; the way around runs counter-clockwise, as a right-hander
works it with the right side up.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from math import cos, hypot, pi, sin, tan, tau

Point = tuple[float, float]

NEAREST = 0.75
"""Where along the way around a circle seen from above it is nearest to the reader, begun at the right."""


@dataclass(frozen=True)
class Oval:
    """A circle (spine 0) or an oval about a straight spine of that length in mm.

    The way around an oval begins where its far straight side does, on the right. swing: the whole is turned
    about its middle by so many radians.
    """

    spine: float = 0.0
    swing: float = 0.0

    @cached_property
    def _swung(self) -> tuple[float, float]:
        return (cos(self.swing), sin(self.swing))

    def at(self, out: float, along: float) -> Point:
        """The point so far along the way around."""
        if not self.spine:
            angle = tau * along + self.swing
            return (out * cos(angle), out * sin(angle))
        x, y = self._unswung(out, along)
        across, away = self._swung
        return (x * across - y * away, x * away + y * across)

    def _unswung(self, out: float, along: float) -> Point:
        half = self.spine / 2
        s = along % 1.0 * (2 * self.spine + tau * out)
        if s < self.spine:
            return (half - s, out)
        s -= self.spine
        if s < pi * out:
            angle = pi / 2 + s / out
            return (-half + out * cos(angle), out * sin(angle))
        s -= pi * out
        if s < self.spine:
            return (-half + s, -out)
        angle = -pi / 2 + (s - self.spine) / out if out else 0.0
        return (half + out * cos(angle), out * sin(angle))

    def out_for(self, way: float) -> float:
        """The distance out whose way around is `way`."""
        return max((way - 2 * self.spine) / tau, 0.0)

    def way(self, out: float) -> float:
        """The way around so far out."""
        return 2 * self.spine + tau * out

    def carried(self, along: float, out: float, to: float) -> float:
        """The share of the way around at `to` that lies straight outside (or inside) of a share at `out`."""
        if not self.spine:
            return along
        turns, part = divmod(along, 1.0)
        half, part = divmod(part * 2, 1.0)
        straight, further = (self.spine / (self.spine + pi * far) for far in (out, to))
        if part <= straight:
            part *= further / straight
        else:
            part = further + (part - straight) / (1 - straight) * (1 - further) if straight < 1 else further
        return turns + (half + part) / 2


@dataclass(frozen=True, slots=True)
class Polygon:
    """A polygon of so many corners; `out` is the distance to a side. A corner stands where `along` is 0, at
    the left of the lower side or so many (`first`) further on.
    """

    corners: int
    first: int = 0

    def at(self, out: float, along: float) -> Point:
        """The point so far along the way around, the way along each side counted evenly."""
        share = along % 1.0 * self.corners
        side = int(share)
        reach = out / cos(pi / self.corners)
        start, end = (self._corner(self.first + one, reach) for one in (side, side + 1))
        part = share - side
        return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)

    def _corner(self, number: int, reach: float) -> Point:
        angle = -pi / 2 - pi / self.corners + tau * number / self.corners
        return (reach * cos(angle), reach * sin(angle))

    def out_for(self, way: float) -> float:
        """The distance out whose way around is `way`."""
        return way / (2 * self.corners * tan(pi / self.corners))

    def way(self, out: float) -> float:
        """The way around so far out."""
        return 2 * self.corners * tan(pi / self.corners) * out

    def carried(self, along: float, out: float, to: float) -> float:
        """The share of the way around at `to` that lies straight outside (or inside) of a share at `out`.

        What lies beyond the ends of a shorter side comes to its corner.
        """
        side, part = divmod(along * self.corners, 1.0)
        aside = (part - 0.5) * out / to
        return (side + 0.5 + min(max(aside, -0.5), 0.5)) / self.corners


@dataclass(frozen=True, slots=True)
class Rectangle(Polygon):
    """A rectangle about another one, `wide` by `high` mm, which lies where `out` is 0. A quarter of `along`
    goes along each of its sides, the lower one first, or so many (`first`) further on.
    """

    corners: int = 4
    wide: float = 0.0
    high: float = 0.0

    def _corner(self, number: int, reach: float) -> Point:
        out = reach * cos(pi / self.corners)
        x, y = self.wide / 2 + out, self.high / 2 + out
        return ((-x, -y), (x, -y), (x, y), (-x, y))[number % 4]

    def out_for(self, way: float) -> float:
        """The distance out whose way around is `way`."""
        return max(way - 2 * (self.wide + self.high), 0.0) / 8

    def way(self, out: float) -> float:
        """The way around so far out."""
        return 2 * (self.wide + self.high) + 8 * out

    def carried(self, along: float, out: float, to: float) -> float:
        """The share of the way around at `to` that lies straight outside (or inside) of a share at `out`."""
        side, part = divmod(along * self.corners, 1.0)
        long = self.high if (int(side) + self.first) % 2 else self.wide
        aside = (part - 0.5) * (long + 2 * out) / ((long + 2 * to) or 1.0)
        return (side + 0.5 + min(max(aside, -0.5), 0.5)) / self.corners

    def by_length(self, out: float, along: float) -> float:
        """The share of the way's length so far out that lies before `along`."""
        turns, share = divmod(along, 1.0)
        side, part = divmod(share * self.corners, 1.0)
        corners = self._corners_by_length(out)
        return turns + corners[int(side)] + part * (corners[int(side) + 1] - corners[int(side)])

    def evenly(self, out: float, share: float) -> float:
        """The `along` of a share of the way's length so far out."""
        turns, share = divmod(share, 1.0)
        corners = self._corners_by_length(out)
        side = max(at for at in range(self.corners) if corners[at] <= share)
        part = (share - corners[side]) / ((corners[side + 1] - corners[side]) or 1.0)
        return turns + (side + part) / self.corners

    def _corners_by_length(self, out: float) -> tuple[float, ...]:
        half = (self.wide + 2 * out) / (self.way(out) or 1.0)
        return (0.0, half, 0.5, 0.5 + half, 1.0)


@dataclass(frozen=True, slots=True)
class Oblong(Rectangle):
    """The rectangle of a piece that has corners of its own, about the opening that it begins at."""


@dataclass(frozen=True, slots=True)
class Half(Polygon):
    """The upper half of a polygon, open below: from its left corner over its spines to its right one, so that
    two sides make a triangle. corners: of how many sides; `along` 0 and 1 are its ends.
    """

    def at(self, out: float, along: float) -> Point:
        """The point so far along; beyond its ends straight on."""
        side = min(max(int(along * self.corners), 0), self.corners - 1)
        reach = out / cos(pi / (2 * self.corners))
        start, end = self._corner(side, reach), self._corner(side + 1, reach)
        part = along * self.corners - side
        return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)

    def _corner(self, number: int, reach: float) -> Point:
        angle = pi * (1 - number / self.corners)
        return (reach * cos(angle), reach * sin(angle))

    def out_for(self, way: float) -> float:
        """The distance out whose way is so long."""
        return way / self.way(1.0)

    def way(self, out: float) -> float:
        """The way from end to end so far out."""
        return 2 * self.corners * tan(pi / (2 * self.corners)) * out

    def carried(self, along: float, out: float, to: float) -> float:
        """The share of the way at `to` that lies straight outside (or inside) of a share at `out`; at a spine
        no further along than the side reaches.
        """
        side = min(max(int(along * self.corners), 0), self.corners - 1)
        aside = (along * self.corners - side - 0.5) * out / to
        aside = aside if not side else max(aside, -0.5)
        aside = aside if side == self.corners - 1 else min(aside, 0.5)
        return (side + 0.5 + aside) / self.corners

    def facing(self, angle: float) -> float:
        """The angle that the side faces which lies in a direction, both from the right, in radians."""
        side = pi / self.corners
        return (min(max(int(angle / side), 0), self.corners - 1) + 0.5) * side


Section = Oval | Polygon


def turned_to_the_reader(section: Section, along: float) -> Section:
    """The section of a piece that lies, turned so that what is so far along it comes to lie as near to the
    reader as its outline lets it: a polygon keeps a side there, an oval a long one.
    """
    if isinstance(section, Rectangle):
        return section
    ways: list[Section]
    if isinstance(section, Polygon):
        ways = [replace(section, first=corner) for corner in range(section.corners)]
    elif section.spine:
        ways = [replace(section, swing=swing) for swing in (0.0, pi)]
    else:
        ways = [replace(section, swing=tau * (NEAREST - along))]
    return min(ways, key=lambda way: way.at(1.0, along)[1])


def outward(section: Section, out: float, along: float) -> Point:
    """The direction that the outside faces at a point, of length 1."""
    a, b = section.at(max(out, 0.01), along - 0.002), section.at(max(out, 0.01), along + 0.002)
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = hypot(dx, dy) or 1.0
    return (dy / length, -dx / length)
