"""The look of stitches around posts: those in front stand out as ribs, those behind lie in the shade of them.

A stitch around the front of a post lies on the cloth: its two strands come out from behind the post below,
side by side, so that one upon another makes a rib. Some around the back, side by side, push the tops of the
row below forwards: a ridge lies across them, and their own strands are seen behind that (from first
principles; common practice, no source).
"""

from collections.abc import Callable
from math import hypot

from .canvas import Canvas, Point
from .colour import level, shaded

POST_LIGHT = {"front": 1.1, "back": 0.8}
"""How brightly its yarn is lit, and the cloth behind it, of what lies level."""

BROAD, SHADED, SEAM = 2.4, 3.1, 0.22
"""A rib of two strands is so broad, so broad with the shadow beside it, and so much of it is the line between
them, in the yarn's thickness.
"""

FOOT, BROAD_AT = 0.05, 0.24
"""So high, of its height, a rib comes out from behind the post below, and so high it is broad."""

RIDGE, RIDGE_THICK = 0.82, 1.05
"""The ridge before a stitch around the back lies so high in its row, so thick in the yarn's thickness."""


def draw_front(
    canvas: Canvas, layer: int, colour: str, light: float, thick: float, foot: Point, top: Point
) -> None:
    """A rib from the post below to the top of its row. thick: of the yarn. light: on the cloth there."""
    dx, dy = top[0] - foot[0], top[1] - foot[1]
    long = hypot(dx, dy) or 1.0

    def at(up: float, aside: float = 0.0) -> Point:
        return (
            foot[0] + dx * up - dy / long * thick * aside,
            foot[1] + dy * up + dx / long * thick * aside,
        )

    half = BROAD / 2
    shade, yarn = (shaded(colour, level(light * by)) for by in (0.5, POST_LIGHT["front"]))
    ends = max(1 - SHADED / 2 * thick / long, 0.5)  # its end is round
    canvas.line(layer, shade, thick * SHADED, [at(BROAD_AT), at(ends)])
    canvas.fill(
        layer + 1, yarn, [at(FOOT), at(BROAD_AT, half), at(1.0, half), at(1.0, -half), at(BROAD_AT, -half)]
    )
    canvas.line(layer + 2, shade, thick * SEAM, [at(BROAD_AT), at(1.0)])


def draw_back(
    canvas: Canvas, layer: int, colour: str, light: float, thick: float,
    at: Callable[[float, float], Point], ridged: bool,
) -> None:  # fmt: skip
    """A stitch behind, and the ridge across its head. at: a point of its patch, (across, up). ridged: it has
    one, as it isn't alone between two ribs.
    """
    strand, ridge = (shaded(colour, level(light * by)) for by in (POST_LIGHT["back"], 1.0))
    canvas.line(layer, strand, thick, [at(0.5, 0.04), at(0.5, 0.6 if ridged else 0.9)])
    if ridged:
        canvas.line(layer + 1, ridge, thick * RIDGE_THICK, [at(0.06, RIDGE), at(0.94, RIDGE)])
