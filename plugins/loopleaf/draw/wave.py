"""The waves of a cloth in rows, where every row grows at some places and shrinks at others."""

from dataclasses import replace
from itertools import pairwise

from ..fabric import Made, WorkedRound
from .chart_layout import lay_out
from .sheet import Wave
from .signs import UNIT
from .subject import Subject

AFTER = 10
"""So many rows from the first the waves are as high as they get."""

SHARE = 0.5
"""A cloth waves where at least this share of its rows does."""


def wave_of(subject: Subject) -> Wave:
    """The wave of a piece in rows; flat where it doesn't wave. As high as its first rows come to rest."""
    waving = sum(_waves(one) for one in subject.worked)
    if not subject.in_rows or waving < max(SHARE * len(subject.worked), 2):
        return Wave()
    shown = replace(subject.piece, rounds=subject.piece.rounds[:AFTER])
    first = replace(subject, piece=shown, worked=subject.worked[:AFTER], sizes=subject.sizes[:AFTER])
    line = lay_out(first).lines[-1]
    heads = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
    left, right = heads[0][0], heads[-1][0]
    low = min(y for _, y in heads)
    mm = subject.scale.width_mm / UNIT
    return Wave([((x - left) / (right - left), (y - low) * mm) for x, y in heads])


def _waves(one: WorkedRound) -> bool:
    stitches = [made for made in one.made if isinstance(made, Made) and made.number]
    gathers = any(made.form == "tog" and len(made.into) > 1 for made in stitches)
    return gathers and any(a.into == b.into for a, b in pairwise(stitches))
