"""A round or row begins with a tall stitch and no chain before it.

What: Joined rounds begin with a chain as high as their stitches, or with a standing stitch; so do rows, where
all the others of the piece that begin with a tall stitch have their chain.

Why it matters: Without it the first stitch is pulled down and slants, and where the chain counts the maker
doesn't know whether the row has one stitch less.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "2 hdc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: When a stretched loop or another start without chains is meant; say so in a note.
"""

import re
from collections.abc import Iterator
from itertools import pairwise

from ...fabric import PieceWork, RoundWork
from ...notation import parse
from ...notation.tree import Chain, FastenOff, FromHook, Group, JoinYarn, Line, Repeat, Step, Turn, Work, Yarn
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject

_BEGINS_WITH_CHAIN = re.compile(r"\W*(?:ch(?:ain)? ?\d|\d+ ?ch)", re.IGNORECASE)
"""`Ch 3, 4 dc in same st, …`, where a stitch of the author's own is told in words alone."""

_ENOUGH = 2
"""So many other rows with their chain make a habit."""

_LOW = ("slip", "single", "reverse-single", "loop-single", "inc", "dec")


def find(subject: Subject) -> Iterator[Finding]:
    for piece in subject.work.pieces:
        worked = subject.pattern.pieces[piece.name].worked
        if worked == "joined rounds":
            chainless = [one for one in map(_begun, piece.rounds) if _lacks_its_chain(subject, one)]
        else:
            chainless = _alone_among_rows(piece) if worked == "rows" else []
        told_entries: set[int] = set()
        for round, first in chainless:
            if first is None or round.plan.entry in told_entries:
                continue
            told_entries.add(round.plan.entry)
            words = Words(
                message=f"{round.plan.word.capitalize()} {round.plan.label} begins with a tall stitch and no "
                "chain before it.",
                suggestion=Suggestion("Begin with “ch 1” or as many as the stitch is tall.", None, "fill-in"),
            )
            at = subject.stretch(round, first.span)
            yield told(__name__, "note", subject, at, words, piece.name, round.plan.label)


Begun = tuple[RoundWork, Work | None]
"""A round, and the tall stitch that it begins with, with no chain before it."""


def _begun(round: RoundWork) -> Begun:
    return round, _first(round.line.steps) if round.line else None


def _lacks_its_chain(subject: Subject, begun: Begun) -> bool:
    return begun[1] is not None and not _has_its_chain(subject, begun[1])


def _alone_among_rows(piece: PieceWork) -> list[Begun]:
    """The rows of one entry that begin with a plain tall stitch behind a turn, where all others that do so
    have their chain, or the row below makes it for them."""
    chained, chainless = 0, []
    for below, round in pairwise(piece.rounds):
        if below.line is None or round.line is None or not round.turned:
            continue
        if any(isinstance(step, FastenOff) for step in below.line.steps):
            continue
        if isinstance(next(iter(round.line.steps), None), Chain) or _makes_the_next_one_s(below.line):
            chained += _is_tall(_first(tuple(one for one in round.line.steps if not isinstance(one, Chain))))
        elif _is_tall(_first(round.line.steps)):
            chainless.append(_begun(round))
    entries = {round.plan.work_path for round, _ in chainless}
    return chainless if len(entries) == 1 and chained >= _ENOUGH else []


def _makes_the_next_one_s(line: Line) -> bool:
    """`… ch 3, turn`, `… turn, ch 3`."""
    ends = [step for step in line.steps[-2:] if isinstance(step, Chain | Turn)]
    return len(ends) == len(line.steps[-2:]) and any(isinstance(step, Chain) for step in ends)


def _is_tall(first: Work | None) -> bool:
    """Whether it is a stitch by its plain name: one of the author's own may bring what it needs."""
    return first is not None and first.stitch.kind != "special" and not first.stitch.form


def _first(steps: tuple[Step, ...]) -> Work | None:
    """The tall stitch that a round begins with; None where a chain, a yarn or a low stitch comes first."""
    for step in steps:
        if isinstance(step, Chain | JoinYarn):
            return None
        if isinstance(step, Yarn):
            continue
        if isinstance(step, Repeat | Group):
            return _first(step.steps)
        if isinstance(step, Work):
            low = step.stitch.kind in _LOW or step.stitch.kind.startswith("foundation")
            return None if low or any(isinstance(place, FromHook) for place in step.places) else step
        return None
    return None


def _has_its_chain(subject: Subject, first: Work) -> bool:
    """Whether it is a stitch of the author's own that brings its chain along."""
    own = subject.pattern.special_stitches.get(first.stitch.name)
    if own is not None and _BEGINS_WITH_CHAIN.match(own.text):
        return True
    line = parse(own.work, subject.work.vocabulary).line if own is not None and own.work else None
    return line is not None and isinstance(next(iter(line.steps), None), Chain)


RULE = rule(__name__, __doc__, "note", find)
