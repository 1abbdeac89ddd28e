"""The level stated is lower than the techniques ask for.

What: Each technique has a lowest level (basic, easy, intermediate, complex); the highest of those that the
pattern uses is set beside its `level`.

Why it matters: A beginner chooses by the level, and gets stuck.

Wrong:

    level: basic
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, FPdc around each st around, join, fasten off", count: 8}

Right:

    level: intermediate
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, FPdc around each st around, join, fasten off", count: 8}

When to ignore: When the technique is taught step by step in the pattern itself.
"""

from collections.abc import Iterator

from ... import trade
from ...measure import because
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    pattern, level = subject.pattern, subject.measured.level
    order = [row.key for row in trade.levels()]
    if pattern.level is None or order.index(pattern.level) >= order.index(level.level):
        return
    words = Words(
        message=f"The level says {pattern.level}, and the techniques ask for {level.level}.",
        working=f"It is {because(level, pattern, pattern.terms)}.",
        suggestion=Suggestion(f"Write “{level.level}”.", level.level, "likely"),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("level",)), words)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
