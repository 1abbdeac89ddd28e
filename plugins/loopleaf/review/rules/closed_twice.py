"""A round is joined twice, a row turned twice, or stitches follow the join.

What: A line says `join` or `turn` more than once in its last steps, or goes on with stitches behind its join.
Slip stitches that move on from there, and a chain for the next round, are no stitches in this sense.

Why it matters: No count shows it. Turned twice, the work faces the old way; joined twice, there is a bump
that nobody can place; and stitches behind the join belong to no round.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join, join", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

When to ignore: Where it is meant; a note can then say why.
"""

from collections.abc import Iterator

from ...notation.tree import Group, Join, JoinYarn, Line, Repeat, Span, Step, Turn, Work
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    said: set[object] = set()
    for piece, round in subject.rounds():
        fault = _fault(round.line) if round.line is not None and round.sound else None
        if fault is None or round.plan.work_path in said:
            continue
        said.add(round.plan.work_path)
        what, span = fault
        words = Words(
            message=f"{round.plan.word.capitalize()} {round.plan.label} {what}.",
            suggestion=Suggestion(
                "Leave out what was written twice, or move it to the end.", None, "fill-in"
            ),
        )
        at = subject.stretch(round, span)
        yield told(__name__, "warning", subject, at, words, piece.name, round.plan.label)


def _fault(line: Line) -> tuple[str, Span | None] | None:
    """What follows a closing step that can't, and where it stands."""
    closed: Step | None = None
    for step in line.steps:
        if isinstance(step, Join) and step.how != "not":
            if isinstance(closed, Join):
                return "is joined twice", step.span
            closed = step
        elif isinstance(step, Turn) and step.turns:
            if isinstance(closed, Turn):
                return "is turned twice", step.span
            closed = step
        elif isinstance(step, JoinYarn):
            closed = None
        elif isinstance(closed, Join) and _makes_stitches(step):
            return "goes on with stitches behind its join", step.span
        elif _makes_stitches(step):
            closed = None
    return None


def _makes_stitches(step: Step) -> bool:
    return isinstance(step, Group | Repeat) or (isinstance(step, Work) and step.stitch.kind != "slip")


RULE = rule(__name__, __doc__, "warning", find)
