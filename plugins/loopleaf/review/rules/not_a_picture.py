"""A file named as a picture can't be shown as one.

What: Pictures are JPEG, PNG, WebP or GIF files, whichever of these their name says. They stand beside the
pattern, or in a folder below it.

Why it matters: The page would have a hole in that place, and the booklet could not be made.

Wrong:

    pictures: [{file: pouch.docx, alt: A teal pouch.}]

Right:

    pictures: []

When to ignore: Never; save the picture in one of these forms.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
