"""A crochet hook in line: a rounded head, a throat with its lip, a stem."""

from dataclasses import dataclass
from math import cos, sin

from .canvas import Point, number
from .strands import Solid

STEM = 2.3
"""Half the stem's width, in units."""

_BACK: tuple[tuple[str, tuple[Point, ...]], ...] = (
    ("M", ((0.0, 0.3),)),
    ("C", ((0.2, -1.5), (1.9, -2.35), (4.2, -2.35))),
)
"""From the point along the back of the head."""

_THROAT: tuple[tuple[str, tuple[Point, ...]], ...] = (
    ("L", ((15.5, 2.3),)),
    ("C", ((13.0, 2.3), (11.6, 1.7), (10.0, 0.7))),
    ("C", ((9.0, 0.05), (8.1, -0.5), (7.5, -0.35))),
    ("C", ((6.9, -0.2), (7.3, 1.3), (6.7, 1.95))),
    ("C", ((6.0, 2.6), (4.6, 2.5), (3.3, 2.35))),
    ("C", ((1.4, 2.1), (0.1, 1.4), (0.0, 0.3))),
)
"""From the stem along the throat, around the lip, back to the point."""


@dataclass(frozen=True, slots=True)
class Hook:
    """tip: where its point is. lean: the direction from its point along the stem, in radians (0: to the
    right, greater: down). long: how much of it is drawn.
    """

    tip: Point
    lean: float
    long: float = 46.0

    def at(self, along: float, aside: float = 0.0) -> Point:
        """A point so far from the tip along the hook, and so far aside, towards the throat's side."""
        dx, dy = cos(self.lean), sin(self.lean)
        return (self.tip[0] + dx * along - dy * aside, self.tip[1] + dy * along + dx * aside)

    def along(self, x: float) -> float:
        """How far from its tip the middle of the hook has that x."""
        return (x - self.tip[0]) / cos(self.lean)

    def solid(self, near: float) -> Solid:
        """The hook as a shape at that depth."""
        far: tuple[tuple[str, tuple[Point, ...]], ...] = (
            ("L", ((self.long, -STEM),)),
            ("L", ((self.long, STEM),)),
        )
        parts: list[str] = []
        reach: list[Point] = []
        for letter, points in (*_BACK, *far, *_THROAT):
            placed = [self.at(*point) for point in points]
            reach += placed
            parts.append(letter + " ".join(f"{number(x)} {number(y)}" for x, y in placed))
        return Solid("".join(parts) + "Z", reach, near)
