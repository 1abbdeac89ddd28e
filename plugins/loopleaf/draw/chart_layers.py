"""Layers of a chart: a round that is worked behind the one before it, into the stitches of an earlier one.

In the hand it lies behind what was made between. In the chart it stands outside of that, where it can be
read, and a dotted line leads from each of its stitches to its place.
"""

from collections.abc import Sequence
from math import hypot

from ..fabric import Space
from .canvas import Point
from .chart_ground import is_closed
from .chart_lines import Layout, Line, Top

ASIDE = 0.12
"""A leading line is bowed by so much of its length: beside what stands straight between."""


def lifted(layout: Layout, line: Line, below: Sequence[Sequence[Top]]) -> list[list[Top]]:
    """The places of a layer as if they lay outside of all that was made since; as they are where the chart
    isn't drawn about a middle.
    """
    if not is_closed(line.ground) or not any(below):
        return [list(tops) for tops in below]
    out = max(top.out for top in layout.tops.values() if top.ground is line.ground)
    return [[top._replace(out=out, arch=None) for top in tops] for tops in below]


def lead(line: Line, below: Sequence[Sequence[Top]]) -> None:
    """Fills in where dotted lines lead from a layer's stitches: to their places."""
    for thing, tops in zip(line.things, below, strict=True):
        if not isinstance(thing, Space) and tops:
            line.leads[id(thing)] = [
                top.arch.at(0.0) if top.arch is not None else top.point(top.out) for top in tops
            ]


def bow(start: Point, end: Point) -> Point:
    """The point that a leading line is bowed towards."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    by = 2 * ASIDE if hypot(dx, dy) else 0.0
    return ((start[0] + end[0]) / 2 - dy * by, (start[1] + end[1]) / 2 + dx * by)
