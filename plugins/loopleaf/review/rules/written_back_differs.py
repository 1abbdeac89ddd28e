"""A line as it would be published doesn't say the same as the line that was written.

What: Every line is written in US and in UK terms, each is read back in its own terms, and must tell the
hook the same as the author's line.

Why it matters: A page in the other terms must be the same pattern. A line that isn't is never published.

Wrong:

    # A defect of Loopleaf's own; no pattern file is written wrongly to get it.
    title: Any pattern

Right:

    title: Any pattern

When to ignore: Never; it is our mistake, not yours. Please report it with the line, and write the line in
another way until it is mended.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from ...notation import parse, write
from ...notation.once_a_line import Same
from ...notation.tree import Line
from ...pattern import Finding
from ..rule import Words, rule, told
from ..subject import Subject

_TERMS: tuple[Literal["US", "UK"], ...] = ("US", "UK")


def find(subject: Subject) -> Iterator[Finding]:
    looked_at: set[Same[Line]] = set()
    seen: set[Line] = set()
    for piece, round in subject.rounds():
        line = round.settled or round.line
        if line is None or Same(line) in looked_at:
            continue
        looked_at.add(Same(line))
        if line in seen:
            continue
        seen.add(line)
        for terms in _TERMS:
            vocabulary = replace(subject.work.vocabulary, terms=terms)
            written = write(line, terms, vocabulary=vocabulary)
            if parse(written, vocabulary).line != line:
                words = Words(
                    message=f"In {terms} terms this line would be published as “{written}”, which reads "
                    "otherwise.",
                    working="Written and read back it gives other instructions. It is our defect.",
                )
                at = subject.stretch(round)
                yield told(__name__, "error", subject, at, words, piece.name, round.plan.label)


RULE = rule(__name__, __doc__, "error", find)
