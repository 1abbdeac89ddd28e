"""Rows that leave stitches unsaid, where a later row says that it takes them up: the two sides of a neck."""

from collections.abc import Iterator

from ..notation.tree import Evenly, Group, JoinYarn, Line, RowEnds, Skip, Target, Work
from .survey import leads_in, part_turning_chain, turns_at_its_end, walk
from .worked import PieceWork

WAY_BACK = 2
"""The next row that goes the same way is the second from here."""


def left_to_later_rows(work: PieceWork) -> frozenset[int]:
    """Indexes of the rows that leave stitches, unsaid, to which a line further down goes back: `join yarn in
    next unworked st of row 10`, `sk 8 sts of row 10`; or to which the next row the same way must go on,
    having too few stitches otherwise: the short rows of a heel."""
    found: set[int] = set()
    for at, row in enumerate(work.rounds):
        if at and any(trouble.rule == "stitches-left-over" for trouble in row.troubles):
            below = work.rounds[at - 1].plan.number
            later = [one.line for one in work.rounds[at + 1 :] if one.line is not None]
            if any(_goes_back(line, below) for line in later) or _runs_short(work, at + WAY_BACK):
                found.add(at)
            elif row.plan.word == "round" and row.line is not None and turns_at_its_end(row.line.steps):
                found.update({at} if any(map(_goes_along_a_side, later)) else ())
    return frozenset(found)


def led_in_otherwise(work: PieceWork) -> frozenset[int]:
    """Indexes of the rows with slip stitches that may only lead to where they begin, and above which the next
    row doesn't fit; of several, one above the other, all that state no count."""
    parted = [part_turning_chain(row.line) if row.line is not None else ((), ()) for row in work.rounds]
    found: set[int] = set()
    for at in range(len(work.rounds) - 2, -1, -1):
        row, above = work.rounds[at : at + 2]
        before = parted[at - 1][1] if at else ()
        wrong = above.troubles or (at + 1 in found and above.stated is None)
        if wrong and not row.troubles and leads_in((*before, *parted[at][0])):
            found.add(at)
    return frozenset(found)


def _runs_short(work: PieceWork, at: int) -> bool:
    """Whether a row asks for more stitches than there are."""
    row = work.rounds[at] if at < len(work.rounds) else None
    return row is not None and any(trouble.rule == "works-past-the-end" for trouble in row.troubles)


def comes_out_better(work: PieceWork, before: PieceWork) -> bool:
    """Whether a piece comes out with fewer mistakes than it did."""
    return _mistakes(work) < _mistakes(before)


def _mistakes(work: PieceWork) -> int:
    return sum(len(row.troubles) for row in work.rounds)


def _goes_along_a_side(line: Line) -> bool:
    """Whether a line of a piece in rounds goes into row ends: it has a flap, which another round left."""
    places = (one for step in walk(line.steps) if isinstance(step, Work | Group) for one in step.places)
    return any(isinstance(one, RowEnds | Evenly) for one in places)


def _goes_back(line: Line, number: int) -> bool:
    return any(target.unworked or target.round == number for target in targets_of(line))


def targets_of(line: Line) -> Iterator[Target]:
    """What kinds of places a line names, where it says more of them than `next st`."""
    for step in walk(line.steps):
        if isinstance(step, Skip):
            yield step.target
        places = step.places if isinstance(step, Work | Group) else ()
        for place in (*places, step.place) if isinstance(step, JoinYarn) else places:
            target = getattr(place, "target", None)
            if isinstance(target, Target):
                yield target
            yield from getattr(place, "targets", ())
