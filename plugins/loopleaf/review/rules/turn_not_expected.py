"""The work is turned where it goes on in the same direction.

What: A round is turned although the piece is worked in rounds that are all seen from the right side, or a
row is turned under `worked: rows, right side only`.

Why it matters: After the turn the next round runs the other way and shows the back of its stitches.

Wrong:

    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring, turn", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}

Right:

    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}

When to ignore: Never. Rounds that are turned on purpose are `worked: joined rounds`; say there which are RS
and which are WS.
"""

from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    return Words(
        message=f"{met.where.capitalize()} says to turn, and the next goes on in the same direction.",
        working="After a turn it would go the other way, into other places.",
    )


RULE = fit_rule(__name__, __doc__, "error", words, by_size=False)
