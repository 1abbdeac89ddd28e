"""Rows that are worked alike come to lie alike.

Left alone, each row of a long cloth settles a hair's breadth further than the one that it repeats.
"""

from collections.abc import Hashable, Sequence

from ..fabric import Made
from .chart_ground import Straight
from .chart_lines import Layout, Line
from .chart_things import Thing

FURTHEST_BACK = 12
"""A row repeats one that lies so many rows below it, at most."""

MOSTLY, HARDLY_WIDER = 0.5, 1.03
"""A cloth waves where so many of its rows do; a last row only so much wider than the first is let be."""

ALIKE = 0.8
"""No stitch of a row is moved by more than this, in units, to lie as its like does."""


def as_before(
    lines: Sequence[Line], line: Line, xs: Sequence[float], outs: Sequence[float]
) -> tuple[list[float], list[float]]:
    """Where the heads of a row lie: exactly as those of the nearest row below that it looks like, where they
    nearly do so of themselves. lines: those before it.
    """
    looks = _looks(line)
    for before in reversed(lines[-FURTHEST_BACK:] if isinstance(line.ground, Straight) else ()):
        if before.ground is not line.ground or before.backward != line.backward or _looks(before) != looks:
            continue
        ups = [out - was for out, was in zip(outs, before.outs, strict=True)]
        up = sum(ups) / len(ups)
        asides = [abs(x - was) for x, was in zip(xs, before.xs, strict=True)]
        if max(*asides, *(abs(one - up) for one in ups)) <= ALIKE:
            return list(before.xs), [was + up for was in before.outs]
    return list(xs), list(outs)


def widened(layout: Layout) -> float:
    """How much wider a waving cloth comes to lie than it begins, with as many stitches a row; 0 where that
    is hardly seen.
    """
    waving = [line for line in layout.lines if line.things and line.waves]
    if len(waving) < max(len(layout.lines) * MOSTLY, 2) or len(waving[0].things) != len(waving[-1].things):
        return 0.0
    first, last = (line.xs[-1] - line.xs[0] for line in (waving[0], waving[-1]))
    return last / first if last > HARDLY_WIDER * first else 0.0


def _looks(line: Line) -> list[Hashable]:
    return [_look(thing) for thing in line.things]


def _look(thing: Thing) -> Hashable:
    if isinstance(thing, Made):
        return (thing.kind, thing.form, thing.loop, thing.post, thing.role, thing.chains, len(thing.into))
    return thing.chains
