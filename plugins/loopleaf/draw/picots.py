"""Picots of a picture: small rings of chains that stand out from the tops of their stitches."""

from collections.abc import Callable, Mapping
from math import cos, hypot, pi, sin, tau

from ..fabric import Made, Space, WorkedRound
from .canvas import Canvas, Point

CHAIN_LONG = 0.8
"""A chain of a picot is about so long, in stitch widths."""

THICK = 0.24
"""The strand of a picot, in stitch widths."""

FAN = 0.9
"""Picots that share a top lean so far apart, in radians."""

STEPS = 16


def picots_of(worked: WorkedRound) -> Mapping[int, tuple[int, ...]]:
    """How many chains each of the picots has that follow a stitch or a space, by its id."""
    found: dict[int, tuple[int, ...]] = {}
    last: Made | Space | None = None
    for made in worked.made:
        if isinstance(made, Made) and made.role == "picot":
            if last is not None:
                found[id(last)] = (*found.get(id(last), ()), made.chains or 3)
        elif isinstance(made, Space) or made.number:
            last = made
    return found


def draw_picots(
    canvas: Canvas,
    layer: int,
    colours: tuple[str, str],
    patch: Callable[[float, float], Point],
    picots: tuple[int, ...],
    side: float,
) -> None:
    """The picots at the one or the other upper corner of a stitch. colours: of the ground and the strand.

    patch: from (across, up), both 0 to 1, to a point of the drawing. side: 0 at the left corner, 1 at the
    right one.
    """
    (ax, ay), (bx, by) = patch(0.0, 0.9), patch(1.0, 0.9)
    wide = hypot(bx - ax, by - ay)
    (fx, fy), (x, y) = patch(side, 0.8), patch(side, 1.0)
    tall = hypot(x - fx, y - fy) or 1.0
    out = ((x - fx) / tall, (y - fy) / tall)
    for at, chains in enumerate(picots):
        lean = (at - (len(picots) - 1) / 2) * -FAN
        up = (out[0] * cos(lean) - out[1] * sin(lean), out[0] * sin(lean) + out[1] * cos(lean))
        ring = _ring((x, y), up, chains * CHAIN_LONG * wide / tau)
        canvas.line(layer, colours[0], max(THICK * wide * 1.7, 0.15), ring)
        canvas.line(layer + 1, colours[1], max(THICK * wide, 0.15), ring)


def _ring(foot: Point, up: Point, radius: float) -> list[Point]:
    """A closed round that begins at its foot."""
    right = (up[1], -up[0])
    turns = [tau * at / STEPS - pi / 2 for at in range(STEPS + 1)]
    return [
        (
            foot[0] + radius * (right[0] * cos(turn) + up[0] * (1 + sin(turn))),
            foot[1] + radius * (right[1] * cos(turn) + up[1] * (1 + sin(turn))),
        )
        for turn in turns
    ]
