"""A value isn't of the kind that its field holds.

What: A number, a text, a list or a group of fields is expected there, and something else was found.

Why it matters: It can't be read as it was meant.

Wrong:

    tags: {pouch: yes}

Right:

    tags: [pouch]

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
