"""A number is larger than any pattern needs.

What: So many stitches, passes, rounds or chains can't be worked by hand, and aren't worked here either.

Why it matters: It is nearly always a slip, two numbers run together; else a file made to do harm.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring) x 1000000000, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring) x 10, join"}

When to ignore: Never.
"""

from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    limit = met.facts["limit"]
    if met.round is None:
        return Words(
            message=f"“{met.piece_name}” grows past {limit:,} stitches before round {met.facts['round']}.",
            working="No piece that is made by hand has so many; it isn't worked any further.",
        )
    return Words(
        message=f"{met.where.capitalize()} comes to more than {limit:,} stitches.",
        working="No round that is made by hand has so many; the piece isn't worked any further.",
    )


RULE = fit_rule(__name__, __doc__, "error", words)
