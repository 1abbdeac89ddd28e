"""A round isn't joined, though all the others of its piece are; or none is, in a piece in joined rounds.

What: In a piece in joined rounds, one round has no `join`, and doesn't say `do not join`, while every other
round is closed. Where no round is, that is told once, at `worked`.

Why it matters: Nothing in the counts shows it. The maker goes on in a spiral, and the next round begins one
step higher than the pattern thinks.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

When to ignore: Where the round is left open on purpose; then say `do not join`.
"""

from collections.abc import Iterator

from ...fabric import PieceWork, RoundWork
from ...notation.tree import FastenOff, Join, JoinYarn, Turn
from ...pattern import Finding, Suggestion
from ..lines import within
from ..rule import Words, rule, told
from ..subject import Subject

_ENOUGH = 2
"""So many other rounds, all of them joined, make a habit."""


def find(subject: Subject) -> Iterator[Finding]:
    for piece in subject.work.pieces:
        if subject.pattern.pieces[piece.name].worked != "joined rounds":
            continue
        open_ = [round for round in piece.rounds if not round.joined]
        if _never_joined(piece):
            yield _told_at_worked(subject, piece)
            continue
        entries = {round.plan.work_path for round in open_}
        if len(entries) != 1 or len(piece.rounds) - len(open_) < _ENOUGH or _says_so(open_[0]):
            continue
        first = open_[0]
        words = Words(
            message=f"Round {first.plan.label} isn't joined, and all the other rounds of “{piece.name}” are.",
            suggestion=Suggestion("Add “join” at its end, or say “do not join”.", None, "fill-in"),
        )
        at = subject.stretch(first)
        yield told(__name__, "warning", subject, at, words, piece.name, first.plan.label)


def _never_joined(piece: PieceWork) -> bool:
    """Whether no round is joined, and none ends in another way than by going on or turning."""
    lines = [round.line for round in piece.rounds]
    return (
        len(lines) > _ENOUGH
        and not any(round.joined for round in piece.rounds)
        and all(line is not None for line in lines)
        and not any(True for line in lines for kind in (Join, JoinYarn) for _ in within(line, kind))
        and not any(True for line in lines[:-1] for _ in within(line, FastenOff))
        and not any(map(_ends_on_a_slip, piece.rounds))
    )


def _told_at_worked(subject: Subject, piece: PieceWork) -> Finding:
    turns = any(True for round in piece.rounds for _ in within(round.line, Turn))
    other = "rows" if turns else "spiral rounds"
    words = Words(
        message=f"“{piece.name}” is said to be worked in joined rounds, and none of its rounds is joined.",
        working="They go back and forth." if turns else "They go on in a spiral.",
        suggestion=Suggestion(
            f"Add “join” at the end of each round, or write `worked: {other}`.",
            None,
            "fill-in",
        ),
    )
    at = subject.source.locate(("pieces", piece.name, "worked"))
    return told(__name__, "warning", subject, at, words, piece.name)


def _says_so(round: RoundWork) -> bool:
    """Whether the line says that it isn't joined, turns back before it comes round, or ends on a slip."""
    line = round.line
    if line is None or any(True for kind in (Join, Turn) for _ in within(line, kind)):
        return True
    return _ends_on_a_slip(round)


def _ends_on_a_slip(round: RoundWork) -> bool:
    worked = next((one for one in round.sizes if one is not None), None)
    return worked is not None and bool(worked.made) and getattr(worked.made[-1], "kind", "") == "slip"


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
