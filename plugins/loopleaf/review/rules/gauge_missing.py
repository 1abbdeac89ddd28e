"""The pattern gives no gauge.

What: How many stitches and rows make 10 cm (4 in), or a piece that measures so much across.

Why it matters: Without it the finished size is a guess, and the yarn may not suffice.

Wrong:

    # without gauge
    finished size: {across: 9 cm}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}

When to ignore: Where the size doesn't matter, write `gauge: not critical`.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    if subject.pattern.gauge or subject.pattern.gauge_not_critical:
        return
    words = Words(
        message="This pattern gives no gauge.",
        suggestion=Suggestion("Add “gauge”, or write “gauge: not critical”.", None, "fill-in"),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("title",)), words)


RULE = rule(__name__, __doc__, "warning", find)
