"""The edge of a last row or round whose stitches differ in height: points, scallops, battlements."""

from collections.abc import Sequence

from ..fabric import WorkedRound
from ..measure.gauge import Scale
from .canvas import Point
from .items import Item, items_of_rows
from .subject import Subject
from .worked_back import CHAIN_SHARE, leaves_of

UNEVEN = 0.25
"""An edge whose stitches differ by so much of its height, at least, is drawn as it is."""

LOWEST = 0.2
"""Stitches beside points reach so much of their round's height at least."""


def edge_of(items: Sequence[Item], worked: WorkedRound, scale: Scale, rise_mm: float) -> list[Point]:
    """The edge over the tops of a row's or round's items, as (share of the way, share of its height); none
    where it is even. Points worked back on chains stand out to the full height.
    """
    points = {id(leaf.on): leaf.chain.chains * CHAIN_SHARE * scale.width_mm for leaf in leaves_of(worked)}
    beside = max(1 - max(points.values()) / rise_mm, LOWEST) if points and rise_mm else 1.0
    found: list[Point] = []
    for item in items:
        tops = [top * beside for top in item.tops]
        if id(item.thing) in points:
            found += [(item.start, tops[0]), (item.middle, 1.0), (item.end, tops[1])]
        else:
            found.append((item.middle, sum(tops) / 2))
    highs = [high for _, high in found]
    if not found or max(highs) - min(highs) < UNEVEN:
        return []
    return found


def top_of_rows(subject: Subject) -> list[Point]:
    """The edge of the last row from left to right, its right side to the viewer; none where it is even."""
    mirrored = [work.side != "WS" for work in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, mirrored, subject.scale, start)
    found = edge_of(rows[-1], subject.worked[-1], subject.scale, subject.sizes[-1].rise_mm)
    return [(0.0, found[0][1]), *found, (1.0, found[-1][1])] if found else []
