"""Rounds are missing, told twice, or refer to one that isn't there.

What: Round numbers go up one by one through a piece; `repeat: 2-3` and `as: 7` name rounds that come
earlier, and `lies flat` and a gauge's `rounds` name rounds that the piece has.

Why it matters: A maker who can't find round 5 doesn't know whether it was forgotten or is the same as round
4.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 3, work: "ch 1, 2 hdc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Never.
"""

from collections.abc import Iterator

from ...pattern import Finding, Path, Run
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for path, run, name in _named(subject):
        work = subject.work.piece(name)
        if work is None or not work.rounds:
            continue
        word, there = work.rounds[-1].plan.word, max(round.plan.number for round in work.rounds)
        asked = run.first if run.last is None else run.last
        if asked > there:
            words = Words(
                message=f"“{name}” has no {word} {asked}.",
                working=f"Its last {word} is {work.rounds[-1].plan.label}.",
            )
            yield told(__name__, "error", subject, subject.source.locate(path), words, name)


def _named(subject: Subject) -> Iterator[tuple[Path, Run, str]]:
    """Rounds named outside the piece's own list, and whose they are."""
    pieces = subject.pattern.pieces
    for name, piece in pieces.items():
        for run in piece.lies_flat:
            yield ("pieces", name, "lies flat"), run, name
    for number, gauge in enumerate(subject.pattern.gauge):
        if gauge.rounds:
            yield ("gauge", number, "rounds"), gauge.rounds, gauge.piece or next(iter(pieces))


RULE = rule(__name__, __doc__, "error", find)
