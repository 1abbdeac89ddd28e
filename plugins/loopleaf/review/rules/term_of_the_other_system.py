"""A stitch is named in the terms of the other side of the Atlantic.

What: `sc` and `hdc` are US names only, `htr` is a UK name only; a file keeps to the terms that it says it
is in. Other words that travel (`miss`, `yo`, `gauge`) are only noted.

Why it matters: `dc`, `tr` and `dtr` exist in both and mean different stitches. One name of the other side
puts all of them in doubt.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 htr in ring, join", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}

When to ignore: The note for words that travel: if they are what your readers say, keep them.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
