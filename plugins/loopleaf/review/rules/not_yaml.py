"""The file can't be read as YAML.

What: The text breaks a rule of YAML, so that nothing after that place can be understood. Most often a value
begins with `*`, `[`, `@` or `%`, or holds `: `, and needs quotation marks; or a line is indented with a
tab.

Why it matters: Nothing of the pattern can be checked or published until the file can be read.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join"}
    summary: @home, for every day

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join"}
    summary: "@home, for every day"

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
