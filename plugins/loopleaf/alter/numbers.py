"""Rounds of one piece that get other numbers, and everything in the file that names them.

The entries themselves, what repeats them, other pieces' edges, cords and tails, gauges, placements, and round
numbers in the author's own words.
"""

import re
from collections.abc import Callable, Iterator

from ..pattern import Path, Pattern
from .draft import Draft

Renumber = Callable[[int], int]
"""A round's number before -> its number after."""

_NUMBER = re.compile(r"\d+")
_SPOKEN = re.compile(
    r"\b(?:rounds?|rows?|rnds?)\s+\d+(?:\s*(?:-|–|,|to|and|or|through)\s*(?:(?:rounds?|rows?)\s+)?\d+)*",
    re.IGNORECASE,
)
_WORKED = re.compile(
    r"\b(?:(?:rounds|rows|rnds)\s+\d+(?:\s*,\s*\d+)*\s*,?\s*(?:and|&)\s+\d+(?!\s*(?:more\s+)?times\b)"
    r"|(?:rounds?|rows?|rnds?)\s+\d+(?:\s*(?:-|–|to|and|or|through|&)\s*(?:(?:rounds?|rows?|rnds?)\s+)?\d+"
    r"(?!\s*(?:more\s+)?times\b))*)",
    re.IGNORECASE,
)
"""In a line that is worked a comma may begin the next step: `in free loop of round 6, 3 sc in next st`."""
_RUNS = ("round", "rounds", "row", "rows")


def renumber(draft: Draft, pattern: Pattern, piece: str, to: Renumber, done: frozenset[int]) -> None:
    """Write every number of a piece's rounds anew. done: entries whose own run is written already."""
    at: Path = ("pieces", piece)
    model = pattern.pieces[piece]
    for index, _ in enumerate(model.entries):
        entry = (*at, model.entries_field, index)
        for name in (*_RUNS, "repeat", "as"):
            if name in _RUNS and index in done:
                continue
            _numbers(draft, (*entry, name), to)
        _spoken(draft, (*entry, "note"), to)
        _spoken(draft, (*entry, "text"), to)
    for name, other in pattern.pieces.items():
        for index, _ in enumerate(other.entries):
            _worked(
                draft, ("pieces", name, other.entries_field, index, "work"), to, _of(pattern, piece, name)
            )
    for path in _named(pattern, piece):
        _numbers(draft, path, to)
    for index, step in enumerate(pattern.finishing):
        if step.mark is not None and step.mark.to == piece and step.mark.between:
            low = to(step.mark.between[0].first)
            draft.value(("finishing", index, step.kind, "between"), f"{low}-{low + 1}")
    for path in _told(pattern, piece):
        _spoken(draft, path, to)


def moved(first: int, last: int, more: int) -> Renumber:
    """The numbers when the rounds first to last become `more` more (or, below 0, fewer).

    Later ones move along. One within keeps its share of the way, so that what lies on it keeps its place.
    """

    def to(number: int) -> int:
        if number <= first:
            return number
        if number >= last:
            return number + more
        return first + round((number - first) * (last - first + more) / (last - first))

    return to


def _named(pattern: Pattern, piece: str) -> Iterator[Path]:
    """Where else the file names a round of the piece by its number."""
    yield ("pieces", piece, "lies flat")
    first = next(iter(pattern.pieces))
    for index, gauge in enumerate(pattern.gauge):
        if gauge.rounds is not None and (gauge.piece or first) == piece:
            yield ("gauge", index, "rounds")
            yield ("gauge", "rounds")  # where it is the only one
    for name, other in pattern.pieces.items():
        for what in ("length", "tail"):
            around = getattr(getattr(other, what), "around", None)
            if around == piece or (around == "self" and name == piece):
                yield from (("pieces", name, what, word) for word in ("round", "row"))
        if other.start is not None and other.start.edge == piece:
            yield from (("pieces", name, "start", word) for word in ("round", "row"))
    for index, step in enumerate(pattern.finishing):
        if step.thread is not None and step.thread.through == piece:
            yield from (("finishing", index, "thread", word) for word in ("round", "row"))
        if step.sew is not None and step.sew.to == piece:
            yield from (("finishing", index, "sew", word) for word in ("round", "row"))
        if step.mark is not None and step.mark.to == piece:
            yield from (("finishing", index, step.kind, word) for word in ("round", "row"))


def _told(pattern: Pattern, piece: str) -> Iterator[Path]:
    """Free text of the whole pattern: it speaks of the first piece's rounds (as everywhere in Loopleaf)."""
    if piece != next(iter(pattern.pieces)):
        return
    yield ("summary",)
    yield from (("notes", index) for index in range(len(pattern.notes)))
    for index, _ in enumerate(pattern.finishing):
        yield from (
            ("finishing", index, *at)
            for at in (
                ("text",),
                ("knot", "text"),
                ("sew", "text"),
                ("place", "text"),
                ("embroider", "text"),
                ("note",),
            )
        )


def _numbers(draft: Draft, path: Path, to: Renumber) -> None:
    node = draft.node(path)
    if node is None:
        return
    if node.kind == "list":
        for index in range(len(node.items)):
            _numbers(draft, (*path, index), to)
    elif node.kind == "text":
        draft.value(path, _NUMBER.sub(lambda found: str(to(int(found[0]))), node.text))


def _of(pattern: Pattern, piece: str, own: str) -> Callable[[str], bool]:
    """Whether the words behind a round's number leave it a round of the piece, in a line of the piece `own`:
    `round 6 of leg`.
    """
    named = [(name, word) for name, one in pattern.pieces.items() for word in {name, one.title} if word]

    def ours(behind: str) -> bool:
        meant = [
            name
            for name, word in named
            if re.match(rf"\s+of (?:the )?{re.escape(word)}\b", behind, re.IGNORECASE)
        ]
        return piece in meant if meant else own == piece

    return ours


def _worked(draft: Draft, path: Path, to: Renumber, ours: Callable[[str], bool]) -> None:
    """Rounds that a line names, by number: `rep round 7`, `in free loop of round 6`."""
    node = draft.node(path)
    if node is None or node.kind != "text":
        return
    for phrase in _WORKED.finditer(node.text):
        new = _NUMBER.sub(lambda found: str(to(int(found[0]))), phrase[0])
        if new != phrase[0] and ours(node.text[phrase.end() :]):
            draft.part(path, phrase.start(), phrase.end(), new)


def _spoken(draft: Draft, path: Path, to: Renumber) -> None:
    """`between rounds 7 and 16`, phrase by phrase."""
    node = draft.node(path)
    if node is None or node.kind != "text":
        return
    for phrase in _SPOKEN.finditer(node.text):
        new = _NUMBER.sub(lambda found: str(to(int(found[0]))), phrase[0])
        if new != phrase[0]:
            draft.part(path, phrase.start(), phrase.end(), new)
