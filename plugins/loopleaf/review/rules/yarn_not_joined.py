"""Work goes on after the yarn was fastened off, and no yarn is joined.

What: After `fasten off` the next stitch needs a yarn: `join A with sl st in any st`, or `with B`. A yarn that
no stitch was worked in can't be fastened off either: `fasten off B` in a piece of yarn A. Nor can a row's
`yarn` be A where the row before it ends by changing to B, and no word takes A up again.

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

from collections.abc import Iterator
from itertools import pairwise

from ...fabric import RoundWork
from ...notation.tree import Chain, FastenOff, Group, Join, JoinYarn, Marker, Repeat, Tally, Turn, Work, Yarn
from ...pattern import Finding, Path, Related, Suggestion
from ..rule import Words, finding, rule, told
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
    for piece in subject.work.pieces:
        said: set[tuple[Path, Path]] = set()
        for below, round in pairwise(piece.rounds):
            change = _contradicted(below, round)
            if change is None or (below.plan.work_path, round.plan.entry_path) in said:
                continue
            said.add((below.plan.work_path, round.plan.entry_path))
            at = subject.source.locate((*round.plan.entry_path, "yarn"))
            where = Related(subject.stretch(below, change.span), f"changes to {change.yarn}")
            yield told(
                __name__,
                "error",
                subject,
                at,
                _against(change, below, round, where),
                piece.name,
                round.plan.label,
            )


def _against(change: Yarn, below: RoundWork, round: RoundWork, where: Related) -> Words:
    here, before = (f"{one.plan.word} {one.plan.label}" for one in (round, below))
    return Words(
        message=f"{here.capitalize()} is in yarn {round.plan.yarn}, and {before} ends by changing to "
        f"{change.yarn}.",
        working=f"{change.yarn} is on the hook when {here} begins, and no word takes up {round.plan.yarn} "
        "again.",
        suggestion=Suggestion(
            f"Say `yarn: {change.yarn}` if the change is meant, else leave the change out of {before}.",
            None,
            "fill-in",
        ),
        related=(where,),
    )


def _contradicted(below: RoundWork, round: RoundWork) -> Yarn | None:
    """The change of yarn at a line's end that the next one's own `yarn` speaks against; several rounds of one
    entry share their words, and the change may be meant for the last of them."""
    yarn = round.plan.yarn
    if not yarn or below.line is None or round.line is None or round.plan.entry == below.plan.entry:
        return None
    change = next((one for one in reversed(below.line.steps) if not isinstance(one, _BEHIND_A_CHANGE)), None)
    if not isinstance(change, Yarn) or change.how not in ("change", "changing") or change.yarn == yarn:
        return None
    first = next((one for one in round.line.steps if isinstance(one, _YARN_OR_STITCHES)), None)
    return None if isinstance(first, Yarn | JoinYarn) else change


_BEHIND_A_CHANGE = (Turn, Join, Tally, Chain, Marker, FastenOff)
"""What may stand between a change at a round's end and the next round."""

_YARN_OR_STITCHES = (Yarn, JoinYarn, Work, Group, Repeat)


RULE = rule(__name__, __doc__, "error", find)
