"""A part of the line can't be read as an instruction.

What: The words aren't shorthand that the format knows; the finding says what was expected at that place.

Why it matters: What can't be worked can't be checked, charted or put into the other terms.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in rnig, join", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

When to ignore: Never; an instruction without stitches (“stuff firmly”) goes into `text`.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
