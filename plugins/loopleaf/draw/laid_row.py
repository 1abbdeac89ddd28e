"""A row laid on cloth, and the tops of that cloth."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from .canvas import Point
from .items import Item


class Corner(NamedTuple):
    """Of an item's patch: its two feet and its two tops, from left to right. cloth: where its feet are drawn
    out from, where they stand beside a step.
    """

    feet: tuple[Point, Point]
    tops: tuple[Point, Point]
    cloth: tuple[Point, Point] | None = None


@dataclass(frozen=True, slots=True)
class LaidRow:
    """A row laid on the cloth below. corners: of each item. left, right: its two ends, in mm. slanting: it
    ends on the straight lines that are the sides of the whole piece.
    """

    items: Sequence[Item]
    corners: Sequence[Corner]
    left: float
    right: float
    slanting: bool = False


@dataclass(slots=True)
class Tops:
    """The tops of the cloth from left to right; where they step up or down two points have the same x."""

    xs: list[float] = field(default_factory=list)
    ys: list[float] = field(default_factory=list)

    def at(self, x: float, from_left: bool) -> float:
        """The height there; at a step, of the side that one comes from; beyond the ends, of the end."""
        after = bisect_left(self.xs, x) if from_left else bisect_right(self.xs, x)
        if not self.xs:
            return 0.0
        if not 0 < after < len(self.xs):
            return self.ys[min(after, len(self.xs) - 1)]
        (a, b), (low, high) = self.xs[after - 1 : after + 1], self.ys[after - 1 : after + 1]
        return low + (high - low) * (x - a) / ((b - a) or 1.0)

    def cover(self, points: Sequence[Point]) -> None:
        """The tops of a row over what lies there."""
        left, right = points[0][0], points[-1][0]
        edges = [(left, self.at(left, True))] if self.xs and left > self.xs[0] else []
        after = [(right, self.at(right, False))] if self.xs and right < self.xs[-1] else []
        kept = [*zip(self.xs, self.ys, strict=True)]
        whole = [
            *(one for one in kept if one[0] < left), *edges, *points, *after,
            *(one for one in kept if one[0] > right),
        ]  # fmt: skip
        self.xs, self.ys = [x for x, _ in whole], [y for _, y in whole]
