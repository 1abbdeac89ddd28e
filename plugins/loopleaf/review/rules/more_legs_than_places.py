"""A stitch gathers more legs than the places that it is worked over.

What: `dc4tog over next 3 sts` draws up four loops over three stitches. `dc3tog over next 5 sts` is fine: it
leans on five and passes two.

Why it matters: One of the two numbers is wrong, and the count, one stitch in any case, can't show which.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}
      - {round: 2, work: "ch 1, (sc4tog over next 3 sts) x 4, join", count: 4}

Right:

    rounds:
      - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}
      - {round: 2, work: "ch 1, (sc3tog over next 3 sts) x 4, join", count: 4}

When to ignore: Where two legs really go into one stitch; then write them out, or define the stitch.
"""

from collections.abc import Iterator

from ...notation.tree import Over, Span, Work
from ...pattern import Finding, Path
from ..lines import within
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    said: set[tuple[Path, Span | None]] = set()
    for piece, round in subject.rounds():
        for step in within(round.line, Work) if round.line is not None else ():
            places = _too_few(step)
            if places is None or (round.plan.work_path, step.span) in said:
                continue
            said.add((round.plan.work_path, step.span))
            legs = step.stitch.number
            words = Words(
                message=f"A stitch in {round.plan.word} {round.plan.label} gathers {legs} legs over "
                f"{number_of(places, 'place')}.",
                working="Each leg is worked into a place of its own.",
            )
            at = subject.stretch(round, step.span)
            yield told(__name__, "warning", subject, at, words, piece.name, round.plan.label)


def _too_few(step: Work) -> int | None:
    """How many places a gathered stitch leans on, where they are fewer than its legs."""
    if step.stitch.form != "tog":
        return None
    for place in step.places:
        if isinstance(place, Over):
            fewest = min((count for count in place.count.sizes if count), default=0)
            if 0 < fewest < step.stitch.number:
                return fewest
    return None


RULE = rule(__name__, __doc__, "warning", find)
