"""Rounds are turned, or posts stand to the front and the back, and nothing says which side faces.

What: In a piece in joined rounds that turn, or in rows with front and back post stitches, no round has a
`side`.

Why it matters: A turn forgotten, or one too many, changes no count. Stated sides contradict it at once, and
the maker sees which side is the right one before they have worked half of it.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join, turn", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, side: RS, work: "ch 1, 8 hdc in ring, join, turn", count: 8}
      - {round: 2, side: WS, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Where both sides look alike. It is said once a pattern.
"""

from collections.abc import Iterator

from ...fabric import PieceWork
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for piece in subject.work.pieces:
        worked = subject.pattern.pieces[piece.name].worked
        if any(round.plan.side for round in piece.rounds) or worked not in ("joined rounds", "rows"):
            continue
        turned = [round for round in piece.rounds if round.turned]
        if not turned or (worked == "rows" and not _has_posts(piece)):
            continue
        first = turned[0]
        words = Words(
            message=f"Nothing says which side faces in {first.plan.word} {first.plan.label}.",
            working="The work is turned before it; a turn too many or too few would change no count.",
            suggestion=Suggestion("Add `side: RS` or `side: WS` to the rounds.", None, "fill-in"),
        )
        at = subject.stretch(first)
        yield told(__name__, "note", subject, at, words, piece.name, first.plan.label)
        return


def _has_posts(piece: PieceWork) -> bool:
    """Whether front and back post stitches both occur: they change places when the work is turned."""
    posts = {
        post for round in piece.rounds for size in round.sizes if size for _, _, _, _, post, *_ in size.sorts
    }
    return {"front", "back"} <= posts


RULE = rule(__name__, __doc__, "note", find, of_sound_work=True)
