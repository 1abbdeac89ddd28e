"""A field stands twice in the same place.

What: Each field can be given once. YAML would silently keep the last.

Why it matters: One of the two values would be lost without a word, and nobody could tell which was meant.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8, count: 9}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
