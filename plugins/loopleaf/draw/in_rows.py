"""A piece worked in rows, laid flat: straight, or as an arc where its rows grow steadily."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from ..fabric import RoundWork, WorkedRound
from ..measure.gauge import Scale
from ..measure.size import RoundSize
from .canvas import Canvas, Point
from .items import Item, items_of
from .stitchwork import draw_item

WIDEST_ARC = 1.6 * pi
NARROWEST_ARC = 0.25 * pi


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


def sheet_for(rows: Sequence[RoundSize]) -> Sheet:
    """Straight, or an arc, its inner edge as long as the first row; fuller rows are eased in."""
    if len(rows) < 2:
        return Sheet(0.0, 0.0)
    first, last = rows[0], rows[-1]
    deep = last.height_mm - first.rise_mm / 2
    arc = min((last.length_mm - first.length_mm) / deep if deep else 0.0, WIDEST_ARC)
    steady = all(b.length_mm >= a.length_mm * 0.97 for a, b in pairwise(rows))
    if not steady or arc < NARROWEST_ARC:
        return Sheet(0.0, 0.0)
    return Sheet(arc, first.length_mm / arc)


def draw_rows(
    canvas: Canvas,
    rounds: Sequence[RoundWork],
    worked: Sequence[WorkedRound],
    sizes: Sequence[RoundSize],
    scale: Scale,
    colours: Mapping[str, str],
) -> None:
    """The rows from the first up; rows of the wrong side run the other way."""
    sheet = sheet_for(sizes)
    low = 0.0
    for at, (work, one, size) in enumerate(zip(rounds, worked, sizes, strict=True)):
        items = items_of(one, scale, one is worked[-1])
        tallest = max((item.height for item in items), default=1.0) or 1.0
        for item in items:
            _draw(canvas, sheet, item, work.side == "WS", (low, size), tallest, colours[item.yarn], 2 * at)
        low += size.rise_mm


def _draw(
    canvas: Canvas, sheet: Sheet, item: Item, wrong_side: bool, row: tuple[float, RoundSize], tallest: float,
    colour: str, layer: int,
) -> None:  # fmt: skip
    low, size = row
    start, end = (item.start, item.end) if wrong_side else (1 - item.end, 1 - item.start)

    def patch(across: float, up: float) -> Point:
        return sheet.point(size.length_mm, start + (end - start) * across, low + size.rise_mm * up)

    top = item.height / tallest * item.crown if item.form == "stitch" else 1.0

    turned = {"front": "back", "back": "front"}.get(item.post, "") if wrong_side else item.post
    shown = Item(
        item.start, item.end, item.height, item.yarn, item.kind, item.form, turned, item.loop, item.number, item.corner,
        item.crown,
    )  # fmt: skip
    draw_item(canvas, layer, shown, patch, colour, 1.0, top)
