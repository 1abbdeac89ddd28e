"""Stitches drawn together over several places: legs that rise from them and bend to one head.

A leg that leans far is bent like the rib of an umbrella, so that it leaves its place more upright than a
straight line would; one that hardly leans is straight, and so are those of single crochets, which their bar
crosses: bent, they would look like a hoop. Bars cross the legs halfway, where they are apart, and
are as short as they must be not to touch each other.
"""

from collections.abc import Sequence
from math import atan2, cos, hypot, sin, tan
from typing import NamedTuple

from .canvas import Point, number
from .signs import HEAD, bars, head

BENT, FLATTEST = 0.26, 1.35
"""A leg is bent at each end by so much of its lean (in radians); at its head it leans no further."""

BARS_AT, BARS_APART = 0.52, 4.0
"""The middle of a leg's bars, from its head down, as a share of the leg; and how far one is from the next."""

LONGEST_BAR, SHORTEST_BAR, CLEAR = 4.8, 1.8, 0.62
"""Bars are so long where there is room; else this share of what lies between a leg and the next."""

RISING = 0.43
"""A bar rises to the right by so much (in radians), as on a stitch by itself."""

HEADS_APART, ALONG_THE_HEAD = 0.9, 0.6
"""Three legs and more end side by side along the bar of their head, and all of them within so much of it."""

CROSSED_AT, CROSSED_FROM, HALFWAY, BEYOND, NARROWEST = 2.6, 0.42, 0.5, 0.9, 5.2
"""A head of single crochets has its bar across the legs, so far below it, or such a share of the lower leg
where that is more, and no lower than halfway; it reaches so far beyond them, and is at least so long.
"""

STEPS = 16
"""A place on a leg is found by halving so often."""

HARDLY = 0.5
"""A leg whose bow lies closer to it is written as a straight line."""


class Leg(NamedTuple):
    """From foot to end along a simple curve."""

    foot: Point
    bow: Point
    end: Point

    def at(self, share: float) -> Point:
        """A point so far up from the foot (0 to 1)."""
        a, b, c = (1 - share) ** 2, 2 * share * (1 - share), share * share
        return (
            a * self.foot[0] + b * self.bow[0] + c * self.end[0],
            a * self.foot[1] + b * self.bow[1] + c * self.end[1],
        )

    def ahead(self, share: float) -> Point:
        """The direction upwards there, of length 1."""
        (fx, fy), (bx, by), (ex, ey) = self
        dx = (1 - share) * (bx - fx) + share * (ex - bx)
        dy = (1 - share) * (by - fy) + share * (ey - by)
        length = hypot(dx, dy) or 1.0
        return (dx / length, dy / length)

    def below(self, up: Point, share: float) -> float:
        """How far below (0, 0) that point lies."""
        x, y = self.at(share)
        return -x * up[0] - y * up[1]

    def share_below(self, up: Point, low: float) -> float:
        """How far up from the foot it is so far below (0, 0)."""
        foot, head = 0.0, 1.0
        for _ in range(STEPS):
            middle = (foot + head) / 2
            foot, head = (middle, head) if self.below(up, middle) > low else (foot, middle)
        return (foot + head) / 2

    @property
    def long(self) -> float:
        """Its length, nearly."""
        return hypot(self.end[0] - self.foot[0], self.end[1] - self.foot[1])


def legs_of(kind: str, feet: Sequence[Point], up: Point) -> list[Leg]:
    """The legs of a stitch with its head at (0, 0), y down, from left to right. up: the way that it grows."""
    right = (-up[1], up[0])
    aside = [x * right[0] + y * right[1] for x, y in feet]
    across = sorted(range(len(feet)), key=aside.__getitem__)
    many = len(feet)
    room = min(HEADS_APART, 2 * HEAD * ALONG_THE_HEAD / max(many - 1, 1)) if head(kind) and many > 2 else 0.0
    found: list[Leg] = []
    for order, at in enumerate(across):
        out = (order - (many - 1) / 2) * room
        end = (right[0] * out, right[1] * out)
        found.append(_bent(feet[at], end, up, right) if head(kind) else _unbent(feet[at], end))
    return found


def _unbent(foot: Point, end: Point) -> Leg:
    return Leg(foot, ((foot[0] + end[0]) / 2, (foot[1] + end[1]) / 2), end)


def _bent(foot: Point, end: Point, up: Point, right: Point) -> Leg:
    """A leg that bends the more the further it leans."""
    dx, dy = foot[0] - end[0], foot[1] - end[1]
    aside, deep = dx * right[0] + dy * right[1], -(dx * up[0] + dy * up[1])
    lean = atan2(abs(aside), deep)
    bow = tan(max(min(BENT * lean, FLATTEST - lean), 0.0)) / 2
    if dy * up[0] - dx * up[1] < 0:
        bow = -bow
    return Leg(foot, ((foot[0] + end[0]) / 2 + dy * bow, (foot[1] + end[1]) / 2 - dx * bow), end)


def drawn_together(kind: str, feet: Sequence[Point], up: Point = (0.0, -1.0)) -> str:
    """The path of such a stitch with its head at (0, 0), y down. up: the way that it grows, of length 1."""
    legs = legs_of(kind, feet, up)
    ways = [_curve(leg) for leg in legs]
    for bar in bars_of(kind, legs):
        ways.append(_straight(*bar))
    ways.append(_straight(*head_of(kind, legs, up)))
    return "".join(ways)


def bars_of(kind: str, legs: Sequence[Leg]) -> list[tuple[Point, Point]]:
    """The bars across the legs, from end to end."""
    many = len(bars(kind))
    found: list[tuple[Point, Point]] = []
    for one, leg in enumerate(legs):
        for at in range(many):
            share = 1 - BARS_AT + ((many - 1) / 2 - at) * BARS_APART / max(leg.long, 1.0)
            x, y = leg.at(share)
            near = [
                hypot(x - other[0], y - other[1])
                for beside in (one - 1, one + 1)
                if 0 <= beside < len(legs)
                for other in (legs[beside].at(share),)
            ]
            half = max(min([LONGEST_BAR, *(CLEAR * apart for apart in near)]), SHORTEST_BAR) / 2
            ux, uy = leg.ahead(share)
            # Across the leg to its right, and then turned up a little.
            ax = -uy * cos(RISING) + ux * sin(RISING)
            ay = ux * cos(RISING) + uy * sin(RISING)
            found.append(((x - ax * half, y - ay * half), (x + ax * half, y + ay * half)))
    return found


def head_of(kind: str, legs: Sequence[Leg], up: Point) -> tuple[Point, Point]:
    """The bar of the head, from end to end: a T's at the top, that of single crochets across their legs."""
    up = up if head(kind) else _between_them(legs, up)
    right = (-up[1], up[0])
    low, left, far = 0.0, -HEAD, HEAD
    if not head(kind):
        deep = min(leg.below(up, 0.0) for leg in legs)
        low = min(max(CROSSED_AT, CROSSED_FROM * deep), HALFWAY * deep)
        crossed = [leg.at(leg.share_below(up, low)) for leg in legs]
        sides = [x * right[0] + y * right[1] for x, y in crossed]
        beyond = max(BEYOND, (NARROWEST - max(sides) + min(sides)) / 2)
        left, far = min(sides) - beyond, max(sides) + beyond
    x, y = -up[0] * low, -up[1] * low
    return (x + right[0] * left, y + right[1] * left), (x + right[0] * far, y + right[1] * far)


def _between_them(legs: Sequence[Leg], up: Point) -> Point:
    """The way up halfway between the outer legs: a bar square to it crosses both of them alike."""
    sides = [leg.ahead(0.5) for leg in (legs[0], legs[-1])]
    x, y = (sum(side[axis] for side in sides) for axis in (0, 1))
    length = hypot(x, y)
    return (x / length, y / length) if length > HARDLY else up


def _curve(leg: Leg) -> str:
    """From its foot, as a curve where it is bent."""
    (x, y), bow, end = leg
    ahead = (end[0] - x, end[1] - y)
    bent = abs((bow[0] - x) * ahead[1] - (bow[1] - y) * ahead[0]) / max(leg.long, 0.1)
    if bent < HARDLY:
        return f"M{_two(x, y)}L{_two(*end)}"
    return f"M{_two(x, y)}Q{_two(*bow)} {_two(*end)}"


def _straight(start: Point, end: Point) -> str:
    """Its ends are rounded first, so that it leads where it is said to lead."""
    return f"M{_two(*start)}L{_two(*end)}"


def _two(x: float, y: float) -> str:
    """A hundredth of a stitch's width: finer is not seen."""
    return f"{number(round(x, 1))} {number(round(y, 1))}"
