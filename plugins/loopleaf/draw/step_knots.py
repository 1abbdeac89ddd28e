"""The grounds of what ends in a knot: the slip knot that a chain begins with, the knot stitch."""

from collections.abc import Iterator
from dataclasses import replace

from .loops import YARN, lying
from .step_fabric import COVERING
from .step_moves import Ground, Loop, Place, State
from .step_scene import DEEP
from .step_setting import Setting
from .strands import Knot, Solid, Strand

_TIED = (0.0, 3.0)
"""Where a slip knot is drawn tight."""


def slip_knot(laid: Setting) -> Setting:
    """Yarn laid in a ring; once its loop is tied, a small knot with the end hanging from it."""
    x, y = _TIED

    def fabric(state: State) -> Iterator[Strand | Solid]:
        if not state.lain:
            yield from laid.fabric(state)
            return
        knots = [(x + 2.0, y + 1.0), (x + 3.2, y + 6.0), (x + 1.0, y + 12.0), (x + 2.6, y + 19.0)]
        yield Strand([Knot(*at, DEEP) for at in knots], YARN, "tint")

    ground = replace(laid.ground, places={**laid.ground.places, "tied": Place("tied", _TIED, _TIED)})
    return replace(laid, ground=ground, fabric=fabric)


_LONG = (-5.0, -19.0)
"""From the top of the last stitch to the end of a chain that is drawn up long."""


def knot(plain: Setting) -> Setting:
    """As on stitches; and behind the long loop that is made first its single strand is a place."""
    (root,) = (one.root for one in plain.start.on if isinstance(one, Loop))
    tip = (root[0] + _LONG[0], root[1] + _LONG[1])
    middle = (root[0] + _LONG[0] * 0.8, root[1] + _LONG[1] * 0.72)
    place = Place("strand", (tip[0] - 1.6, tip[1] + 4.6), middle, 0.05, 14.0)

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from plain.fabric(state)
        if not state.lain:
            return
        (x, y), (to_x, to_y) = root, tip
        yield Strand(
            [
                Knot(x - 0.4, y + 1.0, DEEP),
                Knot(x - 5.0, y - 4.0, DEEP),
                Knot(to_x - 5.5, to_y + 7.0, DEEP),
                Knot(to_x - 0.4, to_y + 0.4, DEEP),
            ],
            YARN,
            "tint",
        )
        if state.inside is not None:
            yield lying(root, tip, COVERING, half=2.4)

    ground = Ground({"strand": place}, plain.ground.height, (_LONG, (-6.5, -1.0)))
    return Setting(ground, plain.start, fabric, plain.foot)
