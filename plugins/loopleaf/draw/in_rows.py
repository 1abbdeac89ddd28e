"""A piece worked in rows, laid flat: straight, or as an arc where its rows grow steadily."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, hypot, pi, sin

from ..measure.size import RoundSize
from .canvas import Canvas, Point
from .items import Item, items_of_rows
from .stitchwork import Patch, Placed, between, draw_row, straight
from .subject import Subject

WIDEST_ARC = 1.6 * pi
NARROWEST_ARC = 0.25 * pi

FEWEST_IN_ARC = 4
"""Fewer rows than this are a band, however they grow."""

ROW_LAYERS = 4


@dataclass(frozen=True, slots=True)
class Sheet:
    """A flat sheet of rows: an arc of that many radians about a point so far below the first row (0:
    straight).
    """

    arc: float
    below: float

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""
        if not self.arc:
            return ((along - 0.5) * width, high)
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


def sheet_for(rows: Sequence[RoundSize]) -> Sheet:
    """Straight, or an arc, its inner edge as long as the first row; fuller rows are eased in."""
    if len(rows) < FEWEST_IN_ARC:
        return Sheet(0.0, 0.0)
    first, last = rows[0], rows[-1]
    deep = last.height_mm - first.rise_mm / 2
    arc = min((last.length_mm - first.length_mm) / deep if deep else 0.0, WIDEST_ARC)
    steady = all(b.length_mm >= a.length_mm * 0.97 for a, b in pairwise(rows))
    if not steady or arc < NARROWEST_ARC:
        return Sheet(0.0, 0.0)
    return Sheet(arc, first.length_mm / arc)


def draw_rows(canvas: Canvas, subject: Subject, sheet: Sheet | Edging, layer: int = 0) -> None:
    """The rows from the first up, their right side to the viewer."""
    mirrored = [work.side != "WS" for work in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, mirrored, subject.scale, start)
    low = 0.0
    below: RoundSize | None = None
    for at, (items, back, size) in enumerate(zip(rows, mirrored, subject.sizes, strict=True)):
        placed = [Placed(item, _patch(sheet, item, low, size, below), 1.0, not back, True) for item in items]
        draw_row(canvas, layer + ROW_LAYERS * at, placed, subject.colours)
        low += size.rise_mm
        below = size
    _outline(canvas, sheet, subject.sizes, rows[-1])


def _patch(sheet: Sheet | Edging, item: Item, low: float, size: RoundSize, below: RoundSize | None) -> Patch:
    wide = below.length_mm if below is not None else size.length_mm
    sunk = low - (1 - item.floor) * below.rise_mm if below is not None else low
    foot = [sheet.point(wide, along, sunk) for along in item.foot]
    top = [
        sheet.point(size.length_mm, along, low + size.rise_mm * up)
        for along, up in zip((item.start, item.end), item.tops, strict=True)
    ]
    return between(straight(*foot), straight(*top))


def _outline(canvas: Canvas, sheet: Sheet | Edging, sizes: Sequence[RoundSize], last: Sequence[Item]) -> None:
    """Around the sheet: along the first row, up the ends, over the tops of the last row."""
    steps = 48 if isinstance(sheet, Sheet) and sheet.arc else 1
    bottom = [sheet.point(sizes[0].length_mm, at / steps, 0.0) for at in range(steps + 1)]
    right: list[Point] = []
    left: list[Point] = []
    low = 0.0
    for size in sizes[:-1]:
        low += size.rise_mm
        right.append(sheet.point(size.length_mm, 1.0, low))
        left.append(sheet.point(size.length_mm, 0.0, low))
    tops: list[Point] = []
    for item in last:
        for along, up in zip((item.start, item.end), item.tops, strict=True):
            tops.append(sheet.point(sizes[-1].length_mm, along, low + sizes[-1].rise_mm * up))
    canvas.outline([*bottom, *right, *reversed(tops), *reversed(left)])
