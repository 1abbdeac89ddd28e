"""A chain by itself, as it is seen in a picture: its links one after the other."""

from collections.abc import Sequence
from math import hypot

from .canvas import Canvas, Point
from .colour import shaded

THICK, EDGE = 0.5, 0.3
"""It is so thick, in stitch widths: by itself, and as the edge of what is worked on it."""


def draw_chain(
    canvas: Canvas, layer: int, way: Sequence[Point], colour: str, thick: float, light: float = 1.0
) -> None:
    """A chain along its way, a point between each two of its links; on three layers, this one the lowest.

    thick: in mm. light: how brightly it is lit, 1 as the yarn's own colour.
    """
    canvas.line(layer, shaded(colour, 0.5 * light), thick * 1.3, way)
    canvas.line(layer + 1, shaded(colour, 0.92 * light), thick, way)
    for before, (x, y), after in zip(way, way[1:], way[2:], strict=False):
        dx, dy = after[0] - before[0], after[1] - before[1]
        long = hypot(dx, dy) or 1.0
        across, up = -dy / long * thick * 0.35, dx / long * thick * 0.35
        tick = [(x - across, y - up), (x + across, y + up)]
        canvas.line(layer + 2, shaded(colour, 0.62 * light), thick * 0.16, tick)
