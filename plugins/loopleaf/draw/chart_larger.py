"""The corner that a long border begins in, once more and larger, in the middle of what it goes around: its
signs are printed small.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from .canvas import Box, Point, number
from .chart_lines import Layout
from .chart_print import printed_scale
from .pen import Mark, Pen
from .signing import down
from .signs import CHAIN_LONG, UNIT, Sign

READ_AT_EASE = 0.25
"""Signs of a chart printed at fewer millimetres a unit are shown larger: a cross is then 2.5 mm wide."""

LARGER, LEAST = 3.0, 1.6
"""The corner is drawn so many times as large, or as there is room for, but not less."""

ALONG = 7 * UNIT
"""It shows so much of either side: seven stitches."""

ROOM = 10.0
"""Between its frame and the edge or seam beside it, in units."""


@dataclass(slots=True)
class Larger(Pen):
    """Draws only what stands in a part of the chart, without saying what it is: it is said once already.
    within: left, top, right, bottom, y down.
    """

    within: Box = (0.0, 0.0, 0.0, 0.0)

    def _holds(self, *points: Point) -> bool:
        left, top, right, bottom = self.within
        return all(left <= x <= right and top <= y <= bottom for x, y in points)

    def _data(self, mark: Mark | None) -> str:
        return ""

    def stitch(self, sign: Sign, foot: Point, top: Point, mark: Mark) -> None:
        """A sign that stands there."""
        if self._holds(foot, top):
            Pen.stitch(self, sign, foot, top, mark)

    def gathered(self, sign: Sign, feet: Sequence[Point], top: Point, up: Point, mark: Mark) -> None:
        """A stitch whose legs all stand there."""
        if self._holds(top, *feet):
            Pen.gathered(self, sign, feet, top, up, mark)

    def chain(self, middle: Point, along: Point, mark: Mark | None, long: float = CHAIN_LONG) -> None:
        """A chain that lies there."""
        if self._holds(middle):
            Pen.chain(self, middle, along, mark, long)

    def form(self, way: str, at: Point, foot: Point, top: Point, mark: Mark | None = None) -> None:
        """A path that lies there."""
        if self._holds(at, foot):
            Pen.form(self, way, at, foot, top, mark)

    def picot(self, foot: Point, up: Point, chains: int, mark: Mark) -> None:
        """A picot that stands there."""
        if self._holds(foot):
            Pen.picot(self, foot, up, chains, mark)

    def dot(self, middle: Point, mark: Mark | None) -> None:
        """A slip stitch that lies there."""
        if self._holds(middle):
            Pen.dot(self, middle, mark)

    def line(self, start: Point, end: Point) -> None:
        """As much of a level or upright line as lies there."""
        left, top, right, bottom = self.within
        xs, ys = sorted((start[0], end[0])), sorted((start[1], end[1]))
        if xs[1] < left or xs[0] > right or ys[1] < top or ys[0] > bottom:
            return
        ends = [(min(max(x, left), right), min(max(y, top), bottom)) for x, y in (start, end)]
        Pen.line(self, ends[0], ends[1])


@dataclass(frozen=True, slots=True)
class Place:
    """part: what is shown larger; frame: where (both left, top, right, bottom, y down). times: how much."""

    part: Box
    frame: Box
    times: float

    @property
    def transform(self) -> str:
        """What puts the one into the other."""
        x, y = (self.frame[at] - self.times * self.part[at] for at in (0, 1))
        return f"translate({number(x)} {number(y)}) scale({number(self.times)})"


def place_of(layout: Layout, box: Box) -> Place | None:
    """Where a border's first corner is shown larger; None where its signs are read at ease, or where there is
    no room. box: how far the chart reaches.
    """
    if not layout.outline or printed_scale(box[2] - box[0], box[3] - box[1]) >= READ_AT_EASE:
        return None
    xs = sorted({x for line in layout.outline for x, _ in line})
    ys = sorted({-y for line in layout.outline for _, y in line})
    start = down(layout.lines[0].before(0.0, 0.5))
    x, y = min(((x, y) for x in (xs[0], xs[-1]) for y in (ys[0], ys[-1])), key=lambda at: dist(at, start))
    right, below = x == xs[0], y == ys[0]  # the way from there into the room
    reach = max(abs(box[0] - xs[0]), abs(box[1] - ys[0]), abs(box[2] - xs[-1]), abs(box[3] - ys[-1]))
    cell = min(b - a for side in (xs, ys) for a, b in pairwise(side))
    side = ALONG + reach
    times = min(LARGER, (cell - 2 * ROOM) / side)
    if times < LEAST:
        return None

    out_x, out_y = (-reach if right else reach), (-reach if below else reach)
    left, top = (x + out_x if right else x + out_x - side), (y + out_y if below else y + out_y - side)
    (a, b), (c, d) = (_middle_stretch(ends) for ends in (xs, ys))
    half, (across, up) = times * side / 2, ((a + b) / 2, (c + d) / 2)
    return Place(
        (left, top, left + side, top + side), (across - half, up - half, across + half, up + half), times
    )


def _middle_stretch(ends: Sequence[float]) -> tuple[float, float]:
    """The one in the middle of those that the edge and its seams make."""
    at = (len(ends) - 1) // 2
    return (ends[at], ends[at + 1]) if len(ends) > 2 else (ends[0], ends[-1])


def framed(pen: Pen, box: Box) -> None:
    """A frame around a part of a chart."""
    left, top, right, bottom = box
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    for start, end in pairwise(corners):
        pen.line(start, end)
