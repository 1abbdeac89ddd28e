"""There is HTML where the format says plain text.

What: Texts in a pattern file are plain words; tags in pointed brackets aren't shown as such.

Why it matters: The page and the booklet would show the bare tags, or worse, run what stands in them.

Wrong:

    summary: A pouch with a <b>scalloped</b> edge.

Right:

    summary: A pouch with a scalloped edge.

When to ignore: Never; `<` and `>` by themselves are fine.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
