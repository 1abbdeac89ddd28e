"""A piece ends without a word about the yarn.

What: The last round or row of a piece says `fasten off`, or a step after it does.

Why it matters: Most makers know; a beginner stands there with a live loop.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8}

When to ignore: When another piece goes on with the same loop.
"""

import re
from collections.abc import Iterator

from ...notation.tree import FastenOff
from ...pattern import Finding, Pattern, Suggestion
from ..lines import within
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for piece in subject.work.pieces:
        last = piece.rounds[-1] if piece.rounds else None
        if last is None or last.line is None or next(within(last.line, FastenOff), None):
            continue
        if re.search(r"\bfasten(?:ing|ed)? off\b", _texts(subject.pattern, piece.name), re.I):
            continue
        words = Words(
            message=f"“{piece.name}” ends with {last.plan.word} {last.plan.label} and no word to fasten off.",
            suggestion=Suggestion("Add “fasten off” at the end.", None, "likely"),
        )
        yield told(__name__, "note", subject, subject.stretch(last), words, piece.name, last.plan.label)


def _texts(pattern: Pattern, name: str) -> str:
    """The steps in words of the piece and of the finishing."""
    entries = [f"{entry.text or ''} {entry.note}" for entry in pattern.pieces[name].entries]
    steps = [f"{step.text or ''} {step.note}" for step in pattern.finishing]
    return " ".join([*entries, *steps, *pattern.notes])


RULE = rule(__name__, __doc__, "note", find)
