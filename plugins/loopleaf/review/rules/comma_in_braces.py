"""A comma inside `{ }` has cut a value in two.

What: Between `{ }` a comma parts one field from the next. A value that holds a comma needs quotation marks
there.

Why it matters: The rest of the value is lost: `count: 40 (48, 56)` reads as `40 (48` and something that
isn't a field.

Wrong:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 40 (48, 56) sc in ring, join", count: 40 (48, 56)}

Right:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 40 (48, 56) sc in ring, join", count: "40 (48, 56)"}

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
