"""Two files of the collection would make the same page.

What: A page's address comes from its file's name, in small letters with hyphens.

Why it matters: The second page would take the place of the first without a word.

Wrong:

    # tide-cloth.yml beside "Tide cloth.yaml"
    title: Tide cloth

Right:

    # tide-cloth.yml beside tide-cloth-in-two-colours.yml
    title: Tide cloth

When to ignore: Never; give one of the files another name.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
