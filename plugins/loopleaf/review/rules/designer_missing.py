"""The licence asks for a name, and the pattern names no designer.

What: Licences that ask to be told who made the work (all CC-BY ones) need a `designer`; so do terms of your
own.

Why it matters: Whoever shares the pattern must name someone, and can't.

Wrong:

    # without designer
    licence: CC-BY-4.0

Right:

    designer: The village library
    licence: CC-BY-4.0

When to ignore: Never; a group's name, or the name of a house, will do.
"""

from collections.abc import Iterator

from ... import trade
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    if pattern.designer or not pattern.licence:
        return
    if any(row.spdx.lower() == pattern.licence.lower() and not row.needs_name for row in trade.licences()):
        return
    if any(one.suggestion and one.suggestion.replacement == "designer" for one in subject.source.findings):
        return  # there is one, under a name a letter away
    words = Words(
        message=f"The licence {pattern.licence} asks for a name, and no designer is named.",
        suggestion=Suggestion("Add “designer”.", None, "fill-in"),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("licence",)), words)


RULE = rule(__name__, __doc__, "warning", find)
