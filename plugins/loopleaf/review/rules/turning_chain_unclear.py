"""Nothing says whether the chain at the start counts as a stitch, and the count depends on it.

What: For half doubles (UK half trebles) and taller stitches the first chain is counted in some patterns and
not in others. Here both readings give different counts, and neither the round nor the pattern says which is
meant.

Why it matters: The maker gains or loses a stitch at the start of every round.

Wrong:

    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join"}

Right:

    turning chains: {dc: counts}
    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join", count: 12}

When to ignore: Never; say `ch 3 (counts as dc)` or `ch 2 (does not count)` in the round, or once for the
whole file under `turning chains`.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..names import chain_name, kind_name
from ..rule import Words, finding, rule
from ..subject import Met, Subject


def words(met: Met) -> Words:
    facts = met.facts
    stitch = kind_name(facts["stitch"], met.subject)
    chain = chain_name(facts["chains"], met.subject)
    return Words(
        message=f"{met.where.capitalize()} doesn't say whether the {chain} at its start counts as a stitch.",
        working=f"If it counts as {stitch} there are {facts['count_if']}, if not {facts['count_if_not']}.",
        suggestion=Suggestion(
            f"Write “{chain} (counts as {stitch})” or “{chain} (does not count)”, or say it once for the "
            f"file: “turning chains: {{{stitch}: counts}}”.",
            None,
            "fill-in",
        ),
    )


def find(subject: Subject) -> Iterator[Finding]:
    """One finding a stitch: a single word for the file settles all its rounds."""
    told: set[str] = set()
    for met in subject.met("turning-chain-unclear"):
        if met.facts["stitch"] not in told:
            told.add(met.facts["stitch"])
            yield finding("turning-chain-unclear", "error", met, words(met))


RULE = rule(__name__, __doc__, "error", find)
