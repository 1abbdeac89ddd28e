"""Work goes on after the yarn was fastened off, and no yarn is joined.

What: After `fasten off` the next stitch needs a yarn: `join A with sl st in any st`, or `with B`.

Why it matters: The maker has cut the yarn and is told to crochet.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}
      - {round: 2, work: "ch 1, 2 sc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}
      - {round: 2, work: "with A, ch 1, 2 sc in each st around, join", count: 16}

When to ignore: Never.
"""

from ...pattern import Suggestion
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    yarn = met.facts["yarn"]
    cut = f"Yarn {yarn}" if yarn else "The yarn"
    return Words(
        message=f"{met.where.capitalize()} goes on after the yarn was fastened off.",
        working=f"{cut} was fastened off before it, and no yarn is joined.",
        suggestion=Suggestion(
            f"Say which yarn is joined and where: “join {yarn or 'A'} with sl st in any st”, or “with "
            f"{yarn or 'A'}”; or "
            "leave out the fasten off.",
            None,
            "fill-in",
        ),
    )


RULE = fit_rule(__name__, __doc__, "error", words)
