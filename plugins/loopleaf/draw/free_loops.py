"""What a stitch worked into one loop leaves to be seen at its foot: a ridge, a groove, a braid.

The loops that it passes by lie free on the other face of the round below. Into the back loop: the front one,
on the side that it is worked from; into the front loop: the back one, on the other side. In the third loop,
behind a half double: both, as a braid, on the side away from the worker where the work is turned, towards
her where it isn't (from first principles; common practice, no source).
"""

from collections.abc import Callable
from typing import Literal

from ..fabric import Made
from .canvas import Canvas, Point
from .colour import level, shaded

Foot = Literal["", "ridge", "groove", "braid"]

DARK, LIT = 0.45, 1.1
"""How brightly grooves and shadows, and what stands out, are lit, of what lies level."""

SHADOW, RIDGE, GROOVE, BRAID = 1.5, 0.9, 0.5, 0.62
"""How thick they are drawn, in the yarn's thickness."""


def foot_of(made: Made, reverse: bool, turned: bool) -> Foot:
    """What shows at a stitch's foot. reverse: its wrong side shows. turned: the work was, before its row."""
    if made.loop == "third":
        return "braid" if reverse or not turned else "groove"
    if made.loop not in ("back", "front"):
        return ""
    return "ridge" if (made.loop == "back") != reverse else "groove"


def draw_foot(
    canvas: Canvas, layer: int, foot: Foot, colour: str, light: float, thick: float,
    at: Callable[[float, float], Point],
) -> None:  # fmt: skip
    """Draws it. thick: of the yarn. at: a point of the stitch's patch, (across, up)."""
    dark, lit = (shaded(colour, level(light * by)) for by in (DARK, LIT))
    whole = [at(0.13, 0.0), at(0.87, 0.0)]  # their ends are round
    if foot == "groove":
        canvas.line(layer + 1, dark, thick * GROOVE, whole)
    elif foot:
        canvas.line(layer, dark, thick * SHADOW, whole)
    if foot == "ridge":
        canvas.line(layer + 1, lit, thick * RIDGE, whole)
    if foot == "braid":
        for up in (0.09, -0.09):
            canvas.line(layer + 1, lit, thick * BRAID, [at(0.84, up), at(0.16, 0.0)])
