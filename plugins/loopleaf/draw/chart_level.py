"""Rows of flat work stay level: a shorter or a taller stitch here and there doesn't make them bow.

Stitches of several heights side by side slope a row, and shells, chains, and what is passed over shape it:
those rows settle by their own heights.
"""

from collections import Counter
from collections.abc import Sequence, Set
from itertools import groupby, pairwise

from ..fabric import Made
from .chart_lines import Top
from .chart_things import Thing, tall_of

HERE_AND_THERE = 2
"""So many stitches side by side may be of other heights than most: more of them slope their row."""

MOST = 0.5
"""A row is of one height where at least this share of its stitches is."""

HARDLY = 0.5
"""Places that lie within this, in units, are level."""


def levelled(
    things: Sequence[Thing], below: Sequence[Sequence[Top]], deep: Set[int],
    wanted: Sequence[float], outs: Sequence[float], straight: bool = False,
) -> list[float]:  # fmt: skip
    """How far out the heads of a row lie: all alike where it is level, else where they come to rest. below:
    the places of each, along its way. deep: the ids of spikes. wanted: how far out each would be by itself.
    straight: the row stands straight above the one below, its ends shaped or not.
    """
    if not (_one_height(things) and _lies_on_level(things, below, deep, straight)):
        return list(outs)
    return [sum(wanted) / len(wanted)] * len(outs)


def _lies_on_level(
    things: Sequence[Thing], below: Sequence[Sequence[Top]], deep: Set[int], straight: bool
) -> bool:
    """Whether a row goes from stitch to stitch of a level one. straight: its ends may be shaped."""
    on = [tops for thing, tops in zip(things, below, strict=True) if id(thing) not in deep]
    if not on or not all(isinstance(thing, Made) for thing in things):
        return False
    if not straight and any(len(tops) != 1 for tops in below):
        return False
    outs = [top.out for tops in on for top in tops]
    if not outs or max(outs) - min(outs) > HARDLY:
        return False
    return straight or bool(deep) or all(b[0].order - a[0].order == 1 for a, b in pairwise(on))


def _one_height(things: Sequence[Thing]) -> bool:
    """Whether a row is of one height for the most part."""
    talls = [tall_of(thing) for thing in things]
    usual, many = max(Counter(talls).items(), key=lambda one: (one[1], one[0]))
    runs = [len([*run]) for other, run in groupby(tall != usual for tall in talls) if other]
    return many >= MOST * len(talls) and max(runs, default=0) <= HERE_AND_THERE
