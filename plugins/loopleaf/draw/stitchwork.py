"""The look of one stitch on a patch of cloth: the cloth behind, and the strands on it.

A patch is given by a function from (across, up), both 0 to 1, to a point of the drawing.
"""

from collections.abc import Callable

from .canvas import Canvas, Point
from .colour import level, shaded
from .items import Item

Patch = Callable[[float, float], Point]

GROUND = 0.62
"""The cloth behind the strands, darker than the yarn."""


def draw_item(
    canvas: Canvas, layer: int, item: Item, patch: Patch, colour: str, light: float, top: float
) -> None:
    """One stitch or space. light: how brightly it is lit, 1 as the yarn's own colour. top: its height over
    the round's.
    """
    if item.form == "space":
        _space(canvas, layer, patch, colour, light)
        return
    ground = shaded(colour, level(GROUND * light * (0.88 if item.post == "back" else 1.0)))
    canvas.fill(layer, ground, [patch(0, 0), patch(1, 0), patch(1, top), patch(0, top)])
    strand = shaded(colour, level(light * {"front": 1.12, "back": 0.84}.get(item.post, 1.0)))
    left, right = patch(0.0, 0.0), patch(1.0, 0.0)
    width = max(abs(right[0] - left[0]), abs(right[1] - left[1]) * 0.8)
    thick = max(width * 0.27, 0.15)
    if item.post == "back":
        canvas.line(layer + 1, strand, thick * 0.9, [patch(0.14, 0.5 * top), patch(0.86, 0.5 * top)])
        return
    head = _head(item)
    foot = (1 - head) * top
    canvas.line(
        layer + 1, strand, thick, [patch(0.14, 0.93 * top), patch(0.5, foot + 0.1 * top), patch(0.86, 0.93 * top)]
    )  # fmt: skip
    if head < 0.8:
        canvas.line(layer + 1, strand, thick * 1.15, [patch(0.5, 0.04 * top), patch(0.5, foot)])


def _head(item: Item) -> float:
    """The share of a stitch's height that its V takes: all of a low one, the top of a tall one."""
    return {"single": 0.95, "slip": 0.95, "half": 0.62, "double": 0.42}.get(item.kind, 0.34)


def _space(canvas: Canvas, layer: int, patch: Patch, colour: str, light: float) -> None:
    left, right = patch(0.0, 0.9), patch(1.0, 0.9)
    width = ((right[0] - left[0]) ** 2 + (right[1] - left[1]) ** 2) ** 0.5
    thick = max(min(width * 0.3, 2.2), 0.15)
    points = [patch(0.0, 0.8), patch(0.3, 0.93), patch(0.7, 0.93), patch(1.0, 0.8)]
    canvas.line(layer, shaded(colour, level(GROUND * light)), thick * 1.7, points)
    canvas.line(layer + 1, shaded(colour, level(light)), thick, points)
