"""How much of anything a pattern file may hold, and why just so much.

Every limit lies far above what a real pattern needs; past it a file is broken or means harm, and is
refused before it costs time or memory.
"""

LARGEST_FILE = 1_000_000
"""Bytes. A blanket with 2,000 rows written out one by one takes about 200,000."""

DEEPEST = 16
"""Fields within fields. The deepest thing in the format (a place inside a finishing step) lies 6 deep."""

MOST_ALIASES = 200
"""Uses of `*name`. Two hundred rounds may borrow a line; more is a repeat, which has its own field."""

MOST_VALUES = 200_000
"""Values in a file once every alias is opened out: ten for each of 20,000 rounds."""

LARGEST_NUMBER = 100_000
"""Stitches, chains, grams, millimetres. A king-size blanket in lace thread is about 1,500 stitches wide."""

SHORTEST_MM = 0.1
"""Millimetres: the finest sewing thread. Nothing measures less, and nothing is measured over 0."""

SMALLEST_NUMBER = 0.01
"""Grams on a ball, stitches over a length, times the way around: of none of these there is less, or 0."""

MOST_ROUNDS = 10_000
"""Rounds or rows of one piece. The longest scarf at 60 rows to 10 cm would be 16 m long."""

LONGEST_TEXT = 20_000
"""Characters of one value. The longest printed round is a few hundred, an essay of a note a few thousand."""

LONGEST_VALUE = 300
"""Characters of a number, a length, a list of sizes. Thirty sizes of a length in fractions take about 200."""

PICTURE_BEGINNING = 131_072
"""Bytes. So many tell whether a file is a picture, and how many pixels it has: a camera may have written
64 KiB of remarks before that into a JPEG. No more of it is read."""

MOST_FINDINGS = 500
"""Findings for one file. Past that, one cause repeats itself and more lines help nobody."""
