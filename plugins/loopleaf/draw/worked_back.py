"""Leaves, points and fringe: chains made inside a round or row and worked back on.

They stand out from the cloth where it ends. Each stitch stands beside the chain that it went into, on the
side that the chart shows it on, so that tall stitches give a leaf its belly and a low one its tip.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import groupby, pairwise
from math import tau
from typing import NamedTuple

from ..fabric import Made, Space, WorkedRound
from ..measure.gauge import Scale
from .canvas import Canvas, Point
from .chain_line import EDGE, draw_chain
from .items import Item
from .signs import CHAIN_LONG, UNIT
from .stitchwork import Patch, Placed, draw_row

Surface = Callable[[float, float], Point]
"""A point of the drawing: so far out (mm) from the cloth's edge, and so far along the way of the work."""

CHAIN_SHARE = CHAIN_LONG / UNIT
"""A chain is so long, in stitch widths."""

CORNERS = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))

TIP = 0.35
"""At a leaf's tip its edge stands so much of its outermost stitch's height beside the chain."""

AROUND = 3
"""So many leaves in a last round, each longer than that lies from the middle, lie around it as petals do."""


class Leaf(NamedTuple):
    """A chain with its stitches, from the tip down. on: the counted stitch that it rises from."""

    chain: Space
    stitches: Sequence[Made]
    on: Made


def leaves_of(worked: WorkedRound) -> Iterator[Leaf]:
    """The chains that a round works back on, in the order made; without those that rise from no stitch."""
    backs = [made for made in worked.made if isinstance(made, Made) and made.role == "back" and made.into]
    stitches = {key: [*run] for key, run in groupby(backs, key=lambda made: id(_chain(made)))}
    on: Made | None = None
    for made in worked.made:
        if isinstance(made, Made):
            on = made if made.number else on
        elif made.back and on is not None and id(made) in stitches:
            yield Leaf(made, stitches[id(made)], on)


def standing_out(x: float, y: float) -> Surface:
    """Where a leaf lies that rises from a point of a row's edge."""
    return lambda out, aside: (x - aside, y + out)


def in_line(x: float, y: float, way: int) -> Surface:
    """Where a leaf lies that goes on from a row's end. way: 1 to the right, -1 to the left."""
    return lambda out, aside: (x + way * out, y + aside)


def goes_on(worked: WorkedRound) -> bool:
    """Whether a row ends in its one leaf, which lies in line with it; several stand out, as a fringe."""
    leaves = [*leaves_of(worked)]
    last = next((one for one in reversed(worked.made) if isinstance(one, Made) and one.number), None)
    return len(leaves) == 1 and leaves[0].on is last


def _chain(made: Made) -> object:
    """The chain that a stitch went back on."""
    under = made.into[0]
    return under.into[0] if isinstance(under, Made) and under.role == "loop" else under


def lie_around(worked: Sequence[WorkedRound], way_mm: float, scale: Scale) -> bool:
    """Whether the last round's leaves lie around it. way_mm: its length."""
    leaves = [*leaves_of(worked[-1])] if worked else []
    reach = min((leaf.chain.chains * CHAIN_SHARE * scale.width_mm for leaf in leaves), default=0.0)
    return len(leaves) >= AROUND and reach > way_mm / tau


def draw_leaf_on(
    canvas: Canvas, layer: int, leaf: Leaf, surface: Surface, scale: Scale, colours: Mapping[str, str],
    light: float = 1.0,
) -> None:  # fmt: skip
    """One leaf where the surface lays it, over what lies below the layer. light: as of `Placed`."""
    link = CHAIN_SHARE * scale.width_mm
    row = [
        Placed(Item(made, at, at + 1.0, foot=(at, at + 1.0)), patch, light, False, True)
        for at, (made, patch) in enumerate(_patches(leaf, surface, link, scale))
    ]
    for one in row:
        canvas.outline([one.patch(across, up) for across, up in CORNERS])
    draw_row(canvas, layer, row, colours)
    way = [surface(link * at, 0.0) for at in range(leaf.chain.chains + 1)]
    draw_chain(canvas, layer + 2, way, colours[leaf.chain.yarn], EDGE * scale.width_mm, light)


def _patches(leaf: Leaf, surface: Surface, link: float, scale: Scale) -> Iterator[tuple[Made, Patch]]:
    """Each stitch with its patch, from the tip down: its edge runs halfway between its neighbours' heads."""
    numbers = [made.into[0].number or 1 for made in leaf.stitches if isinstance(made.into[0], Made)]
    talls = [scale.height_of(made.kind, made.post) for made in leaf.stitches]
    middles = [(number - 0.5) * link for number in numbers]
    ends = [middles[0] + link / 2, *((a + b) / 2 for a, b in pairwise(middles))]
    ends.append(max(middles[-1] - link / 2, 0.0))
    highs = [TIP * talls[0], *((a + b) / 2 for a, b in pairwise(talls)), talls[-1]]
    for at, made in enumerate(leaf.stitches):
        yield made, _patch(surface, ends[at : at + 2], highs[at : at + 2])


def _patch(surface: Surface, ends: Sequence[float], highs: Sequence[float]) -> Patch:
    (upper, lower), (one, other) = ends, highs

    def patch(across: float, up: float) -> Point:
        return surface(upper + (lower - upper) * across, (one + (other - one) * across) * up)

    return patch
