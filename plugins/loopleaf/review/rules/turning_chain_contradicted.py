"""The count works out only if the chain at the start is read the other way than the pattern says.

What: The round is one stitch out, and reading its first chain the other way (as a stitch, or as none) would
mend just that.

Why it matters: The maker follows the convention as stated and ends one stitch out, round after round.

Wrong:

    turning chains: {dc: does not count}
    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join", count: 12}

Right:

    turning chains: {dc: counts}
    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join", count: 12}

When to ignore: Never.
"""

from ...pattern import Related, Suggestion
from ..names import kind_name
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    facts = met.facts
    stitch = kind_name(facts["stitch"], met.subject)
    chain = f"ch {facts['chains']}"
    said = "counts as a stitch" if facts["said"] else "doesn't count"
    other = f"{chain} (does not count)" if facts["said"] else f"{chain} (counts as {stitch})"
    at = met.stated_at
    return Words(
        message=f"The {chain} at the start of {met.where} {said} by this pattern, and the count works out "
        "only the other way.",
        working=f"Read as said the {met.round.plan.word if met.round else 'round'} makes "
        f"{facts['count_said']}, "
        f"the other way {facts['count_other']}.",
        suggestion=Suggestion(
            f"If the count is right, write “{other}”.",
            other if met.quoted == f"“{chain}”" else None,
            "likely",
        ),
        related=(Related(at, "the count is stated here"),) if at else (),
    )


RULE = fit_rule(__name__, __doc__, "error", words)
