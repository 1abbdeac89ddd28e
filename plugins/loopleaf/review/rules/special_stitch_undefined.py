"""A bobble, cluster or other special stitch is used without saying how it is made.

What: It needs its number (`5-dc bobble`, `ch-3 picot`) or a definition under `special stitches`.

Why it matters: There are many ways to make a bobble; the maker can't know which is meant.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (hdc in next st, bobble in next st) x 4, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (hdc in next st, 5-dc bobble in next st) x 4, join"}

When to ignore: Never.
"""

from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    return Words(
        message=f"The special stitch “{met.facts['name']}” is defined by itself.",
        working="Its own name stands in its definition, which then never comes to a stitch.",
        location=met.subject.source.locate(("special stitches", met.facts["name"], "work")),
    )


RULE = fit_rule(__name__, __doc__, "error", words)
