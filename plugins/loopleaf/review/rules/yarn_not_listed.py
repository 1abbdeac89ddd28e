"""A yarn is worked with that the materials don't list.

What: Each yarn that a piece, a round, a line or a grid takes up must stand under `materials: yarns`.

Why it matters: The maker buys what the list says, and finds a yarn missing halfway.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, yarn: C, work: "ch 1, 2 hdc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, yarn: A, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Never.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..names import listed
from ..rule import Words, rule, told
from ..subject import Subject
from ..yarns import yarns_used


def find(subject: Subject) -> Iterator[Finding]:
    known = subject.pattern.materials.yarns
    seen = set()
    for use in yarns_used(subject):
        if use.yarn in known or use.yarn in seen:
            continue
        seen.add(use.yarn)
        has = f"The materials list {listed(known)}." if known else "The materials list no yarn."
        words = Words(
            message=f"Yarn {use.yarn} is worked with, and the materials don't list it.",
            working=has,
            suggestion=Suggestion(
                f"Add {use.yarn} under “yarns”, or name one that is there.", None, "fill-in"
            ),
        )
        yield told(__name__, "warning", subject, use.location, words, use.piece, use.round)


RULE = rule(__name__, __doc__, "warning", find)
