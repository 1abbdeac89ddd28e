"""Rounds are missing, told twice, or refer to one that isn't there.

What: Round numbers go up one by one through a piece; `repeat: 2-3` and `as: 7` name rounds that come
earlier.

Why it matters: A maker who can't find round 5 doesn't know whether it was forgotten or is the same as round
4.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 3, work: "ch 1, 2 hdc in each st around, join", count: 16}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
