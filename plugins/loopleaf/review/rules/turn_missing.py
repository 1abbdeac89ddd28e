"""The work has to be turned here, and the pattern doesn't say so.

What: Rows go back and forth. A row that begins where the last one ended, without `turn` between them, would
go on in the same direction where nothing is left to work into.

Why it matters: A maker who doesn't turn can't begin the row; one who turns unasked works its right side as
its wrong side.

Wrong:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in next 4 chs, hdc in next 5 chs", count: 10}
      - {row: 2, work: "ch 1, sc in each st across, turn", count: 10}

Right:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in next 4 chs, hdc in next 5 chs, turn", count: 10}
      - {row: 2, work: "ch 1, sc in each st across, turn", count: 10}

When to ignore: Never; rows that are broken off and begun again at the right say `worked: rows, right side
only`.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..joins import joined_throughout
from ..names import listed
from ..rule import Words, finding, rule
from ..subject import Met, Subject


def words(met: Met) -> Words:
    changes = met.facts["matters"]
    reason = "Without a turn there is nothing left to work into." if changes else ""
    return Words(
        message=f"{met.where.capitalize()} ends without a turn, and the next begins at its end.",
        working=" ".join(text for text in (reason, _others(met)) if text),
        suggestion=Suggestion("Add “turn” at the end.", _with_turn(met), "likely"),
        severity="error" if changes else "warning",
    )


def _others(met: Met) -> str:
    """The further rows that lack their turn; the piece says it once."""
    others = met.facts.get("others", [])
    if not others:
        return ""
    return f"So {'does row' if len(others) == 1 else 'do rows'} {listed(others)}."


def _with_turn(met: Met) -> str | None:
    """The line with the turn at its end, as it would stand in the file."""
    if met.round is None:
        return None
    work = met.round.plan.work
    return met.subject.replacement(met.location, work, f"{work}, turn")


def find(subject: Subject) -> Iterator[Finding]:
    for met in subject.met("turn-missing"):
        if met.piece is None or not joined_throughout(subject, met.piece):  # told as rounds, not rows
            yield finding("turn-missing", "error", met, words(met), by_size=False)


RULE = rule(__name__, __doc__, "error", find)
