"""The waves of a cloth in rows, where every row grows at some places and shrinks at others."""

from collections.abc import Sequence
from dataclasses import replace

from ..fabric import Made, WorkedRound
from ..fabric.worked import Place
from .chart_layout import lay_out
from .chart_things import place_key, things_of
from .sheet import Wave
from .signs import UNIT
from .subject import Subject
from .valleys import passed_over, waves

AFTER = 10
"""So many rows from the first the waves are as high as they get."""

SHARE = 0.5
"""A cloth waves where at least this share of its rows does."""


def wave_of(subject: Subject) -> Wave:
    """The wave of a piece in rows; flat where it doesn't wave. As high as its first rows come to rest."""
    if not subject.in_rows:
        return Wave()
    start = subject.piece.starts[0] if subject.piece.starts else []
    edges = [start, *(one.edge for one in subject.worked)]
    waving = sum(_waves(one, below) for one, below in zip(subject.worked, edges, strict=False))
    if waving < max(SHARE * len(subject.worked), 2):
        return Wave()
    shown = replace(subject.piece, rounds=subject.piece.rounds[:AFTER])
    first = replace(subject, piece=shown, worked=subject.worked[:AFTER], sizes=subject.sizes[:AFTER])
    line = lay_out(first, signs=False).lines[-1]
    heads = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
    left, right = heads[0][0], heads[-1][0]
    low = min(y for _, y in heads)
    ups = [y for _, y in heads]
    if ups in (sorted(ups), sorted(ups, reverse=True)):  # more at one edge and less at the other: it leans
        return Wave()
    mm = subject.scale.width_mm / UNIT
    return Wave([((x - left) / (right - left), (y - low) * mm) for x, y in heads])


def _waves(one: WorkedRound, below: Sequence[Place]) -> bool:
    """Whether a row both grows and shrinks. below: the places that it was worked into, in their order."""
    orders = {place_key(place): at for at, place in enumerate(below)}
    things = things_of(one, backward=False)
    into = [thing.into if isinstance(thing, Made) else () for thing in things]
    found = [[orders[key] for place in places if (key := place_key(place)) in orders] for places in into]
    return waves(things, passed_over(found))
