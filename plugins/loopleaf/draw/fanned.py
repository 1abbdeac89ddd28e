"""The schematic of a piece whose rows fan out from a point: its outline, from tip to tip and how deep."""

from ..measure import Measured
from ..measure.fan import Fan
from .form import said
from .lettered import Lettered
from .measuring import DRAWN, GAP, measured_across, measured_up
from .sketch import Sketch


def fanned(sketch: Sketch, letters: Lettered, fan: Fan, name: str, measured: Measured) -> list[str]:
    """Draws it, its first row's point at the top, and gives its measures in words."""
    corners = [(0.0, 0.0), *fan.outline]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, foot = min(y for _, y in corners), max(y for _, y in corners)
    scale = DRAWN / max(right - left, foot - top)
    sketch.line([(x * scale, y * scale) for x, y in corners], closed=True)
    wide, deep = ("wide", "high") if fan.diagonal else ("from tip to tip", "deep")
    width = said(measured, name, "width")
    measured_across(
        sketch, left * scale, right * scale, top * scale - GAP, letters.short(width, wide), top * scale
    )
    length = said(measured, name, "length")
    measured_up(sketch, right * scale + GAP, foot * scale, 0.0, letters.short(length, deep), right * scale)
    sketch.dot((0.0, 0.0), 0.6)
    return [f"{width} {wide}", f"{length} {deep}"]
