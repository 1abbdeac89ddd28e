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

A yarn that no stitch was worked in can't be fastened off either: `fasten off B` in a piece of yarn A.

When to ignore: Never.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..rule import Words, finding, rule
from ..subject import Met, Subject
from ..yarns import yarns_used


def words(met: Met) -> Words:
    yarn = met.facts["yarn"]
    if met.facts.get("never"):
        return Words(
            message=f"{met.quoted} in {met.where} ends a yarn that isn't in work.",
            working=f"No stitch before it is worked in yarn {yarn}.",
            suggestion=Suggestion(
                "Name the yarn that is in work, or say where this one is joined.", None, "fill-in"
            ),
        )
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


def find(subject: Subject) -> Iterator[Finding]:
    misnamed = {use.yarn for use in yarns_used(subject)} - set(subject.pattern.materials.yarns)
    for met in subject.met("yarn-not-joined"):
        if not met.facts.get("never") or not misnamed:  # a yarn that isn't listed is told; it may be this one
            yield finding("yarn-not-joined", "error", met, words(met))


RULE = rule(__name__, __doc__, "error", find)
