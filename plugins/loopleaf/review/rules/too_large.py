"""The file is larger than any pattern needs.

What: The file goes past the limit for a pattern file. Pictures stay in files of their own.

Why it matters: A file like this is broken or made to do harm, and is not read further.

Wrong:

    notes: ["one note that goes on for several million letters"]

Right:

    notes: ["one note of a line or two"]

When to ignore: Never; split a very long work into several pattern files.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
