"""The file of a pattern in one of its sizes alone, as if it had been written in that one.

Numbers of the other sizes and rounds that only they work are left out, and the rounds that stay get numbers
without a gap.
"""

import re
from collections.abc import Iterator

from .. import notation
from ..pattern import Path, Pattern, Run
from ..pattern.nodes import Node
from ..review import Checked, check
from .draft import CannotAlter, Draft, NotUnderstood
from .numbers import Renumber, renumber
from .one_size import one_size, text_of_size

_SKIPPED = re.compile(r"(?<![\w.])-(?= \()|(?<=[(,] )-(?=[,)])|(?<=\()-(?=[,)])")


def size_named(pattern: Pattern, name: str) -> int:
    """Which size a name means (0-based). Raises NotUnderstood for a name that none has."""
    sizes = [str(size) for size in pattern.sizes]
    if not sizes:
        raise CannotAlter("This pattern is written in one size.")
    for at, size in enumerate(sizes):
        if size.lower() == name.strip().lower():
            return at
    raise NotUnderstood(f"No size is called “{name}”; the pattern has {', '.join(sizes)}.")


def only(checked: Checked, size: int) -> Checked:
    """The pattern in one of its sizes, checked. Raises CannotAlter where what is left doesn't check."""
    pattern = checked.source.pattern
    if pattern is None or checked.work is None or checked.source.root is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    draft = Draft(checked.source)
    draft.drop(("sizes",))
    _title(draft, pattern, size)
    gone = _entries(draft, pattern, size)
    _lines(draft, checked, size)
    for path, node in _texts(checked.source.root):
        if path[0] != "sizes" and path[-1] != "title":
            words = text_of_size(node.text, size, pattern.size_count)
            if words != node.text:
                draft.value(path, words)
    alone = check(draft.text().encode(), checked.source.file)
    if alone.source.pattern is not None and any(gone.values()):
        numbered = Draft(alone.source)
        for piece, numbers in gone.items():
            renumber(numbered, alone.source.pattern, piece, _closed(numbers), frozenset())
        alone = check(numbered.text().encode(), checked.source.file)
    if alone.has_errors:
        raise CannotAlter(
            f"Size {pattern.sizes[size]} can't be written by itself.",
            *dict.fromkeys(one.message for one in alone.findings if one.severity == "error"),
        )
    return alone


def _title(draft: Draft, pattern: Pattern, size: int) -> None:
    draft.value(("title",), f"{pattern.title}, {pattern.sizes[size]}")


def _entries(draft: Draft, pattern: Pattern, size: int) -> dict[str, set[int]]:
    """Leave out the entries of other sizes; the round numbers that are gone then, by piece."""
    name = str(pattern.sizes[size])
    gone: dict[str, set[int]] = {}
    for piece, model in pattern.pieces.items():
        kept: set[int] = set()
        for index, entry in enumerate(model.entries):
            if not entry.sizes:
                kept.update(_numbers(entry.run))
                continue
            path: Path = ("pieces", piece, model.entries_field, index)
            if name in map(str, entry.sizes):
                kept.update(_numbers(entry.run))
                draft.drop((*path, "sizes"))
            else:
                gone.setdefault(piece, set()).update(_numbers(entry.run))
                draft.drop(path)
        if piece in gone:
            gone[piece] -= kept
    return gone


def _numbers(run: Run | None) -> range:
    return range(0) if run is None else range(run.first, (run.last or run.first) + 1)


def _lines(draft: Draft, checked: Checked, size: int) -> None:
    """Lines in which the size skips a step are written from what it works."""
    assert checked.work is not None
    alone = one_size(checked.work, size)
    terms = alone.pattern.terms
    for piece in alone.pieces:
        for round in piece.rounds:
            if round.line is not None and _SKIPPED.search(round.plan.work):
                words = notation.write(round.line, terms, vocabulary=alone.vocabulary)
                draft.value(round.plan.work_path, words)


def _texts(node: Node, path: Path = ()) -> Iterator[tuple[Path, Node]]:
    """Every single value of the file that is a text, with its path."""
    if node.kind == "text":
        yield path, node
    for key, value in node.fields:
        yield from _texts(value, (*path, key.text))
    for index, value in enumerate(node.items):
        yield from _texts(value, (*path, index))


def _closed(gone: set[int]) -> Renumber:
    """A round's number once those that are gone are passed over; one of them names the round before it."""

    def to(number: int) -> int:
        return max(number - sum(one <= number for one in gone), 1)

    return to
