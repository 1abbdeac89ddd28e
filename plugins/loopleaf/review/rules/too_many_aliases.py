"""The file refers back to its own parts more often than any pattern needs.

What: `&name` marks a part and `*name` puts it in again. Copies of copies grow beyond all bounds.

Why it matters: A file like this is broken or made to do harm, and is not read further.

Wrong:

    notes: [&a [x, x, x, x, x, x, x, x, x],
      &b [*a, *a, *a, *a, *a, *a, *a, *a, *a],
      &c [*b, *b, *b, *b, *b, *b, *b, *b, *b],
      &d [*c, *c, *c, *c, *c, *c, *c, *c, *c],
      &e [*d, *d, *d, *d, *d, *d, *d, *d, *d],
      [*e, *e, *e, *e, *e, *e, *e, *e, *e]]

Right:

    notes: ["*a and *b name the two ends"]

When to ignore: Never; write `as: 7` or `repeat: 2-3` for rounds that come again.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
