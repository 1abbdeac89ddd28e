"""A row called RS falls on the wrong side, or the other way round.

What: Each turn changes the face. From the first row whose side is known, the side of every later one
follows.

Why it matters: Post stitches, loops and colour changes show on one face only.

Wrong:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}
      - {row: 2, side: RS, work: "ch 1, sc in each st across, turn", count: 10}

Right:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}
      - {row: 2, side: WS, work: "ch 1, sc in each st across, turn", count: 10}

When to ignore: Never.
"""

from ...pattern import Suggestion
from ..rule import Words, fit_rule
from ..subject import Met

_FACES = {"RS": "right side (RS)", "WS": "wrong side (WS)"}


def words(met: Met) -> Words:
    said, worked = met.facts["said"], met.facts["worked"]
    at = met.location
    replacement = None
    if met.round:
        side_at = met.subject.source.locate((*met.round.plan.entry_path, "side"))
        if met.subject.text_at(side_at) == said:
            at, replacement = side_at, worked
    return Words(
        message=f"{met.where.capitalize()} is called {said}, and falls on the {_FACES[worked]}.",
        working="Counting the turns from the first row or round whose side is known.",
        suggestion=Suggestion(
            f"Write “{worked}”, or look for a turn too many or too few before it.", replacement, "likely"
        ),
        location=at,
    )


RULE = fit_rule(__name__, __doc__, "error", words, by_size=False)
