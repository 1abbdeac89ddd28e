"""A field has a name that pattern files don't have.

What: The name isn't one of those that can stand in this place; the nearest known one is named.

Why it matters: What stands under it would be left out of the page without a word.

Wrong:

    designr: The village library

Right:

    designer: The village library

When to ignore: Never; free text goes into `notes`.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
