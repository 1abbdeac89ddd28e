"""The schematic of a piece whose rows fan out from a point: its outline, from tip to tip and how deep."""

from collections.abc import Sequence

from ..measure import Measured
from ..measure.fan import Fan
from .canvas import Point
from .form import said
from .lettered import Lettered
from .measuring import DRAWN, GAP, measured_across, measured_up
from .sheet import Sheet
from .sketch import Sketch

STEPS = 48
"""An outer edge is drawn in so many steps."""


def fanned(
    sketch: Sketch, letters: Lettered, fan: Fan, sheet: Sheet, name: str, measured: Measured
) -> list[str]:
    """Draws it as its picture lies, its first row's point below, and gives its measures in words."""
    corners = [(0.0, 0.0), *_edge(fan, sheet)]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    low, top = min(y for _, y in corners), max(y for _, y in corners)
    scale = DRAWN / max(right - left, top - low)
    sketch.line([(x * scale, -y * scale) for x, y in corners], closed=True)
    wide, deep = ("wide", "high") if fan.diagonal else ("from tip to tip", "deep")
    width = said(measured, name, "width")
    measured_across(
        sketch, left * scale, right * scale, GAP - low * scale, letters.short(width, wide), -low * scale
    )
    length = said(measured, name, "length")
    measured_up(sketch, right * scale + GAP, 0.0, -top * scale, letters.short(length, deep), right * scale)
    sketch.dot((0.0, 0.0), 0.6)
    return [f"{width} {wide}", f"{length} {deep}"]


def _edge(fan: Fan, sheet: Sheet) -> Sequence[Point]:
    """The last row from tip to tip, y up: of many small bends a part of a circle."""
    if fan.diagonal or sheet.sides or not sheet.arc or sheet.below:
        return fan.outline
    high = fan.depth.middle
    return [sheet.point(0.0, at / STEPS, high) for at in range(STEPS + 1)]
