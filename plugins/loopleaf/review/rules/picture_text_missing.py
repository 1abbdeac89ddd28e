"""A picture has no text for those who don't see it.

What: Each picture has `alt`: one sentence on what it shows.

Why it matters: A reader who listens to the page, or whose pictures don't load, learns nothing there.

Wrong:

    pictures: [{file: pouch.jpg}]

Right:

    pictures: [{file: pouch.jpg, alt: A teal pouch with a pale moon.}]

When to ignore: Never.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..pictures import pictures
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for path, picture, piece in pictures(subject.pattern):
        if picture.alt.strip():
            continue
        words = Words(
            message=f"The picture {picture.file} has no text that says what it shows.",
            suggestion=Suggestion("Add “alt” with one sentence on what it shows.", None, "fill-in"),
        )
        yield told(__name__, "warning", subject, subject.source.locate(path), words, piece)


RULE = rule(__name__, __doc__, "warning", find)
