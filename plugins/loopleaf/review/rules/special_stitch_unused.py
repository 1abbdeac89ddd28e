"""A special stitch is defined and never worked.

What: A stitch stands under `special stitches`, and no round of any piece names it.

Why it matters: The maker practises a stitch that doesn't come, or a round lost the stitch that it should
have.

Wrong:

    special stitches:
      shell: {short: sh, work: 5 dc in same st, text: Five stitches fanned from one.}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

Right:

    special stitches:
      shell: {short: sh, work: 5 dc in same st, text: Five stitches fanned from one.}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (sc in next st, sk next st, sh in next st, sk next st) x 2, join"}

When to ignore: When only a note speaks of it; better to take it out.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..lines import special_stitches
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    used = {name for _, round in subject.rounds() if round.line for name in special_stitches(round.line)}
    for name in subject.pattern.special_stitches:
        if name not in used:
            words = Words(
                message=f"The special stitch “{name}” is defined, and no round works it.",
                suggestion=Suggestion(
                    "Take it out, or look for the round that should name it.", None, "fill-in"
                ),
            )
            yield told(
                __name__, "warning", subject, subject.source.locate_key(("special stitches", name)), words
            )


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
