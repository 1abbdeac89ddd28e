"""A field that every pattern needs isn't there.

What: A pattern can't be worked or published without it.

Why it matters: A reader would miss just that, and the stitches may not be clear without it.

Wrong:

    pieces:
      other:
        title: Other piece
        yarn: A
        rounds: [{round: 1, work: "ch 1, 8 hdc in ring, join"}]

Right:

    pieces:
      other:
        title: Other piece
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 hdc in ring, join"}]

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
