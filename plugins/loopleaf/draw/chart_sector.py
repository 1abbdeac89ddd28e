"""How wide an arc the rows of a piece fill that begins in one place.

A fan or a pineapple keeps to few stitches for some rows: laid around half a disc, the ends of these would lie
far aside from all that stands in their middle.
"""

from collections.abc import Sequence

from ..fabric import Made
from .chart_things import ROOM, Thing, tall_of, wide_of

TOO_WIDE = 0.6
"""Rows that fill less than this share of an arc are laid in a narrower one."""

MOST_LIFTED = 1.5
"""The fullest row lies so many times as far out as it would by its heights, at most, to have room there."""


def filled(rows: Sequence[Sequence[Thing]], arc: float) -> float:
    """The arc, in radians, that suits such rows where they would lie in that one: as wide as the emptiest of
    them fills, but for the first, which opens as far as it must.
    """
    out, narrowest, fullest = 0.0, arc, 0.0
    for at, things in enumerate(rows):
        talls = [tall_of(thing) for thing in things if isinstance(thing, Made)]
        if not talls:
            continue
        out += sum(talls) / len(talls) + ROOM
        if at:
            fills = sum(map(wide_of, things)) / out
            narrowest, fullest = min(narrowest, fills), max(fullest, fills)
    turn = max(narrowest, fullest / MOST_LIFTED)
    return turn if turn < TOO_WIDE * arc else arc
