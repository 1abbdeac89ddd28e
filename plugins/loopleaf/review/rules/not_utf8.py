r"""The file isn't saved as UTF-8 text.

What: A byte in the file belongs to no UTF-8 character. Old editors save accented letters, dashes and
fractions in other ways.

Why it matters: Letters would be shown wrongly on the page, or lost.

Wrong:

    summary: A pouch in the colour of crème br\xfblée.

Right:

    summary: A pouch in the colour of crème brûlée.

When to ignore: Never; choose UTF-8 when saving.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
