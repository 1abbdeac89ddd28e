"""The count works out only if chains between stitches are counted, and the pattern doesn't say so.

What: The stated number is the stitches and the chains between them together.

Why it matters: A maker who counts stitches alone finds too few.

Wrong:

    worked: rows
    start: chain 12
    rows:
      - row: 1
        work: "sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * across, turn"
        count: 11

Right:

    chain spaces: counted
    worked: rows
    start: chain 12
    rows:
      - row: 1
        work: "sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * across, turn"
        count: 11

When to ignore: Never; add `chain spaces: counted` to the file, or count by kind: `6 sc, 5 ch-1 sps`.
"""

from ...pattern import Related, Suggestion
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    facts = met.facts
    at = met.stated_at
    work = met.subject.source.locate(met.round.plan.work_path) if met.round else met.location
    return Words(
        message=f"The count of {met.where}, {facts['stated']}, is right only if chains between stitches "
        "count.",
        working=f"Stitches alone make {facts['stitches']}, with each chain between them "
        f"{facts['with_chains']}.",
        suggestion=Suggestion(
            "Add “chain spaces: counted” to the file if your counts include them.", None, "likely"
        ),
        related=(Related(work, f"{met.where} is worked here"),) if at else (),
        location=at if met.troubles[0].span is None else None,
    )


RULE = fit_rule(__name__, __doc__, "warning", words)
