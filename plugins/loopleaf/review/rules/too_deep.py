"""The file is nested deeper than any pattern needs.

What: Lists and fields inside one another go past the limit for a pattern file.

Why it matters: A file like this is broken or made to do harm, and is not read further.

Wrong:

    notes: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[a]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]

Right:

    notes: [a]

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
