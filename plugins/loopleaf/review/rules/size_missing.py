"""The pattern doesn't say how large the finished piece is.

What: A `finished size` on the file or on a piece: `around`, `across`, `width`, `length`, `height`.

Why it matters: The maker wants to know what they will have before they choose yarn and hook.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 2 cm}

When to ignore: Where the size doesn't matter, `gauge: not critical` says so for both.
"""

from collections.abc import Iterator

from ...pattern import Finding, Path, Suggestion
from ...pattern.nodes import find as find_node
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    stated = [pattern.finished_size, *(piece.finished_size for piece in pattern.pieces.values())]
    if pattern.gauge_not_critical or any(size and size.model_dump(exclude_none=True) for size in stated):
        return
    if any(_written(subject, path) for path in ((), *(("pieces", name) for name in pattern.pieces))):
        return  # it stands there, and why it can't be read is found already
    words = Words(
        message="This pattern doesn't say how large the finished piece is.",
        suggestion=Suggestion("Add “finished size”, such as {across: 9 cm}.", None, "fill-in"),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("title",)), words)


def _written(subject: Subject, path: Path) -> bool:
    """Whether something stands where the size belongs."""
    if subject.source.root is None:
        return False
    node, whole = find_node(subject.source.root, (*path, "finished size"))
    return whole and bool(node.fields or node.items or node.text.strip())


RULE = rule(__name__, __doc__, "warning", find)
