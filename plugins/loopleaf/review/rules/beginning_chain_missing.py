"""A joined round begins with a tall stitch and no chain before it.

What: Joined rounds begin with a chain as high as their stitches, or with a standing stitch.

Why it matters: Without it the round's first stitch is pulled down and slants.

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

from ...notation import parse
from ...notation.tree import Chain, FromHook, Group, JoinYarn, Repeat, Step, Work, Yarn
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject

_BEGINS_WITH_CHAIN = re.compile(r"\W*(?:ch(?:ain)? ?\d|\d+ ?ch)", re.IGNORECASE)
"""`Ch 3, 4 dc in same st, …`, where a stitch of the author's own is told in words alone."""

_LOW = ("slip", "single", "reverse-single", "inc", "dec")


def find(subject: Subject) -> Iterator[Finding]:
    told_entries: set[tuple[str, int]] = set()
    for piece in subject.work.pieces:
        if subject.pattern.pieces[piece.name].worked != "joined rounds":
            continue
        for round in piece.rounds:
            first = _first(round.line.steps) if round.line else None
            if (
                first is None
                or _has_its_chain(subject, first)
                or (piece.name, round.plan.entry) in told_entries
            ):
                continue
            told_entries.add((piece.name, round.plan.entry))
            words = Words(
                message=f"Round {round.plan.label} begins with a tall stitch and no chain before it.",
                suggestion=Suggestion("Begin with “ch 1” or as many as the stitch is tall.", None, "fill-in"),
            )
            at = subject.stretch(round, first.span)
            yield told(__name__, "note", subject, at, words, piece.name, round.plan.label)


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
