"""A number is larger than any pattern needs.

What: So many stitches, passes, rounds or chains can't be worked by hand, and aren't worked here either.

Why it matters: It is nearly always a slip, two numbers run together; else a file made to do harm.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring) x 1000000000, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, (sc in ring) x 10, join"}

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
