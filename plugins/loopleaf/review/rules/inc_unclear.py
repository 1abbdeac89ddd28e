"""`inc` or `dec` stands where no one stitch is meant.

What: `inc` and `dec` take the round's only kind of stitch, else the kind they are worked into. Here neither
gives just one.

Why it matters: Two makers would work two different stitches.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring, hdc in ring) x 4, join", count: 8}
      - {round: 2, work: "ch 1, (dec, sc in next st, hdc in next st) x 2, join", count: 6}

Right:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring, hdc in ring) x 4, join", count: 8}
      - {round: 2, work: "ch 1, (sc2tog, sc in next st, hdc in next st) x 2, join", count: 6}

When to ignore: Never; name the stitch: `2 sc in next st`, `sc2tog`.
"""

from ...pattern import Suggestion
from ..names import kind_name, listed
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    kinds = [kind_name(kind, met.subject) for kind in met.facts["kinds"]]
    named = [f"“2 {kind} in next st”" for kind in kinds[:4]]
    if "dec" in met.quoted.lower():
        named = [f"“{kind}2tog”" for kind in kinds[:4]]
    if met.facts["which"] == "even":
        named = [f"“{kind} in each st”" for kind in kinds[:4]]
    return Words(
        message=f"{met.quoted} in {met.where} could be worked in more than one stitch.",
        working=f"There {'are' if len(kinds) > 1 else 'is'} {listed(kinds)} to choose from." if kinds else "",
        suggestion=Suggestion(f"Name the stitch: {listed(named, 'or')}.", None, "fill-in") if named else None,
    )


RULE = fit_rule(__name__, __doc__, "error", words)
