"""A file is named that lies outside the collection.

What: Pictures stand beside the pattern or in a folder below the collection's own.

Why it matters: A collection must stay whole when it is moved, and must not carry off other files of its
owner.

Wrong:

    pictures: [{file: ../../holiday.jpg, alt: A pouch on a beach.}]

Right:

    pictures: []

When to ignore: Never; copy the picture into the collection.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "error")
