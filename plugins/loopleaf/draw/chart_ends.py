"""The ends of a foundation chain that rounds go about: stitches low at an end stand on a short way there."""

from collections.abc import Sequence
from itertools import pairwise
from math import dist, hypot

from ..fabric import Space
from .canvas import Point
from .chart_ground import outward
from .chart_lines import Line
from .chart_things import Thing, tall_of, wide_of
from .section import Oval
from .signs import CHAIN_LONG, CHAIN_THICK, UNIT, is_cross

APART = 0.95
"""Crosses at an end stand at least so far apart, of their widths."""

CLEAR = 4.6
"""From a cross's middle to the chain at the end that it stands on, at least, beside the chain's own size."""

STEP, MOST_STEPS = 0.8, 40
"""What stands too close moves out so far at a time, in units, and so often at most."""


def spread(line: Line, xs: Sequence[float], outs: Sequence[float]) -> list[float]:
    """How far out heads lie once the crosses and chains at a chain's ends have gone out to where they have
    room; the same on any other ground, and of a round whose heads are level.
    """
    found = list(outs)
    if not isinstance(line.ground, Oval) or not line.ground.spine or max(outs) - min(outs) < UNIT:
        return found
    for _ in range(MOST_STEPS):
        close: set[int] = set()
        for one, other in pairwise([*range(len(found)), 0]):
            pair = (line.things[one], line.things[other])
            if one != other and all(_low(thing) for thing in pair):
                apart = dist(_middle(line, xs, found, one), _middle(line, xs, found, other))
                if apart < APART * (wide_of(pair[0]) + wide_of(pair[1])) / 2:
                    close |= {one, other}
        close |= {
            at
            for at, thing in enumerate(line.things)
            if not isinstance(thing, Space) and _low(thing) and _on_an_end(line, _middle(line, xs, found, at))
        }
        if not close:
            break
        for at in close:
            found[at] += STEP
    return found


def _on_an_end(line: Line, middle: Point) -> bool:
    """Whether a cross there would lie on the chain at either end."""
    half = line.ground.spine / 2 if isinstance(line.ground, Oval) else 0.0
    x, y = abs(middle[0]) - half, middle[1]
    return hypot(x / (CHAIN_LONG / 2 + CLEAR), y / (CHAIN_THICK / 2 + CLEAR)) < 1


def _low(thing: Thing) -> bool:
    return isinstance(thing, Space) or is_cross(thing.kind)


def _middle(line: Line, xs: Sequence[float], outs: Sequence[float], at: int) -> Point:
    """The middle of a sign, below its head."""
    head, thing = line.point(xs[at], outs[at]), line.things[at]
    (across, up), half = outward(line.ground, head), 0.0 if isinstance(thing, Space) else tall_of(thing) / 2
    return (head[0] - across * half, head[1] - up * half)
