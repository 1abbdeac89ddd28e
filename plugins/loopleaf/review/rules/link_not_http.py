"""A link doesn't begin with https:// or http://.

What: Links on a page lead to other web pages. Other kinds of address aren't published.

Why it matters: A reader who follows it gets nowhere, or something runs that shouldn't.

Wrong:

    contact: "javascript:alert(1)"

Right:

    contact: https://example.org/help

When to ignore: Never.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
