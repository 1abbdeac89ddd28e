"""A piece worked in the round, drawn as it stands or lies."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import cos, pi, sin

from ..fabric import WorkedRound
from ..measure.gauge import Scale
from .canvas import Canvas, Point
from .colour import shaded
from .items import Item, items_of, with_corners_at
from .profile import Ring
from .section import Polygon, Section, outward
from .stitchwork import draw_item

LOOKING_DOWN = 20 * pi / 180
"""The viewer looks down at a standing piece by so much."""


@dataclass(frozen=True, slots=True)
class Stand:
    """How a piece stands before the viewer: its cross-section, rounds and slant (pi / 2: seen from above)."""

    section: Section
    rings: Sequence[Ring]
    slant: float

    def point(self, out: float, high: float, along: float) -> Point:
        """Where a point of the fabric lies in the drawing."""
        x, y = self.section.at(max(out, 0.0), along)
        return (x, high * cos(self.slant) + y * sin(self.slant))

    def facing(self, ring: Ring, along: float) -> float:
        """How squarely the outside faces the viewer there: 1 wholly, below 0 it is turned away."""
        if self.slant >= pi / 2:
            return 1.0
        _, ny = outward(self.section, (ring.out0 + ring.out1) / 2, along)
        length = ring.rise or 1.0
        outside, up = (ring.high1 - ring.high0) / length, (ring.out0 - ring.out1) / length
        return outside * -ny * cos(self.slant) + up * sin(self.slant)

    def light(self, ring: Ring, along: float) -> float:
        """Light from the upper left, so that the round shape shows."""
        if self.slant >= pi / 2:
            return 1.0
        nx, ny = outward(self.section, (ring.out0 + ring.out1) / 2, along)
        length = ring.rise or 1.0
        outside, up = (ring.high1 - ring.high0) / length, (ring.out0 - ring.out1) / length
        lit = outside * (-0.45 * nx - 0.7 * ny) + 0.55 * up
        return 0.72 + 0.4 * max(lit, -0.2)


def draw_rounds(
    canvas: Canvas, stand: Stand, worked: Sequence[WorkedRound], scale: Scale, colours: Mapping[str, str]
) -> None:
    """All rounds of a piece: first what is seen of the inside, over the rim, then the outside."""
    rounds = [_items(one, scale, stand.section, one is worked[-1]) for one in worked]
    rim = stand.rings[-1] if stand.rings else None
    for inside in (True, False):
        for at, (ring, items) in enumerate(zip(stand.rings, rounds, strict=False)):
            if inside and (rim is None or stand.slant >= pi / 2 or not _over_the_rim(stand, ring, rim)):
                continue
            tallest = max((item.height for item in items), default=1.0) or 1.0
            for item in items:
                _draw(canvas, stand, ring, item, tallest, colours, inside, 4 * at)


def _items(worked: WorkedRound, scale: Scale, section: Section, last: bool) -> list[Item]:
    items = items_of(worked, scale, last)
    return with_corners_at(items, section.corners) if isinstance(section, Polygon) else items


def _over_the_rim(stand: Stand, ring: Ring, rim: Ring) -> bool:
    back = stand.point(ring.out1, ring.high1, _back(stand))[1]
    front = stand.point(rim.out1, rim.high1, _back(stand) + 0.5)[1]
    return rim.out1 > 1.0 and back > front


def _back(stand: Stand) -> float:
    """Where along the way around the far side lies."""
    return max((i / 48 for i in range(48)), key=lambda along: stand.section.at(10.0, along)[1])


def _draw(
    canvas: Canvas, stand: Stand, ring: Ring, item: Item, tallest: float, colours: Mapping[str, str], inside: bool,
    layer: int,
) -> None:  # fmt: skip
    middle = (item.start + item.end) / 2
    facing = stand.facing(ring, middle)
    if (facing < 0.02) != inside:
        return

    def patch(across: float, up: float) -> Point:
        along = item.start + (item.end - item.start) * across
        return stand.point(
            ring.out0 + (ring.out1 - ring.out0) * up, ring.high0 + (ring.high1 - ring.high0) * up, along
        )  # fmt: skip

    light = 0.5 if inside else stand.light(ring, middle)
    top = item.height / tallest * item.crown if item.form == "stitch" else 1.0
    colour = colours[item.yarn]
    if item.form == "space" and stand.slant < pi / 2 and not inside:
        canvas.fill(layer + 1000, shaded(colour, 0.24), [patch(0, 0), patch(1, 0), patch(1, 1), patch(0, 1)])
    draw_item(canvas, layer if inside else 1000 + layer, item, patch, colour, light, top)
