"""Pieces in rounds that go on from all of another one's last round, as one with it, in the picture."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from ..fabric import Made, Space, WorkedRound
from ..measure import Measured
from .border import bordered
from .openings import places_of
from .subject import Subject, subject_of

LEFT = 0.2
"""What goes on all around leaves no gap in the last round that is longer than such a share of it."""


def went_on(subject: Subject, measured: Measured, shown: set[str]) -> Subject:
    """The piece with the rounds of those that go on from all of its last one, and so on. shown: their
    names are added.
    """
    whole, names = subject, {subject.piece.name}
    for piece in subject.work.pieces:
        start = subject.work.pattern.pieces[piece.name].start
        if piece.name in shown | names or start is None or start.edge not in names:
            continue
        part = subject_of(subject.work, piece, measured)
        if part is None or part.in_rows or bordered(part) is not None:
            continue
        if not _covers(whole, part):
            continue
        names.add(piece.name)
        shown.add(piece.name)
        below = whole.sizes[-1].height_mm
        whole = replace(
            whole,
            piece=replace(whole.piece, rounds=[*whole.piece.rounds, *part.piece.rounds]),
            worked=[*whole.worked, *part.worked],
            sizes=[*whole.sizes, *(replace(one, height_mm=one.height_mm + below) for one in part.sizes)],
            colours={**whole.colours, **part.colours},
        )
    return whole


def _covers(whole: Subject, part: Subject) -> bool:
    """Whether a piece begins on nothing but the last round of another, once around all its way."""
    last = [made for made in whole.worked[-1].made if isinstance(made, Space) or made.number]
    order = {id(thing): at for at, thing in enumerate(last)}
    wanted = places_of(part.worked[0].made)
    if not wanted or not wanted.keys() <= order.keys():
        return False
    used = sorted(order[key] for key in wanted)
    gaps = [*(b - a for a, b in pairwise(used)), used[0] + len(last) - used[-1]]
    steps = [(b - a) % len(last) for a, b in pairwise(_way(part.worked[0], order))]
    once = min(sum(steps), sum(-step % len(last) for step in steps)) <= len(last)
    return once and max(gaps) <= max(LEFT * len(last), 1)


def _way(first: WorkedRound, order: Mapping[int, int]) -> list[int]:
    """The places that a round goes into, in its order, as their numbers in the round below."""
    stitches = [made for made in first.made if isinstance(made, Made) and made.number]
    return [order[key] for made in stitches for key in places_of([made])]
