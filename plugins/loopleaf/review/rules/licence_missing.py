"""The pattern doesn't say what others may do with it.

What: A `licence` by its SPDX identifier, such as `CC-BY-4.0`, or `LicenseRef-` and a name for terms of your
own.

Why it matters: Without it nobody may copy the pattern, and nobody knows whether they may sell what they
made.

Wrong:

    # without licence
    title: Coaster

Right:

    licence: CC-BY-4.0

When to ignore: When the collection says it for all its patterns on a page of its own.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    if subject.pattern.licence:
        return
    words = Words(
        message="This pattern doesn't say what others may do with it.",
        suggestion=Suggestion("Add “licence”, such as CC-BY-4.0.", None, "fill-in"),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("title",)), words)


RULE = rule(__name__, __doc__, "warning", find)
