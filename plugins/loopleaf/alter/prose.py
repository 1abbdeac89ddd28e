"""Sentences of a pattern that tell numbers: they can't follow an alteration, so that someone must look.

Named are numbers with what they count (`8 rounds`, `twelve stitches`, `2½ in`), bare ones that the alteration
changed elsewhere in the file (`part the 48 in four`, `the 24th`), and rounds of another piece than the first:
what the file says of rounds is said of the first piece, and follows by itself (`numbers`).
"""

import re
from collections.abc import Iterator, Mapping, Sequence

from ..pattern import Source
from ..pattern.nodes import Node
from .draft import Change

_ROOMS = ("title", "summary", "notes", "pieces", "finishing")
_PROSE = ("title", "summary", "notes", "note", "text", "stuff", "heading", "knot")
_RUNS = ("round", "rounds", "row", "rows")
_TELLS = re.compile(
    r"\b(?:\d+(?:[.,]\d+)?(?: ?[½¼¾])?(?:-\d+)?(?: \([\d.,\s-]+\))?"
    r"|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)[ -]?"
    r"(?:rounds?|rnds?|rows?|stitch(?:es)?|sts?|(?:in|de)creases?|times|cm|mm"
    r"|inch(?:es)?|in(?! (?:all|total|the|each|every|next|same|a|an)\b))\b",
    re.IGNORECASE,
)
_ROUNDS = re.compile(r"\b(?:rounds?|rows?|rnds?)\s+\d+(?:\s*(?:-|–|to|and)\s*\d+)?", re.IGNORECASE)
_MEASURE = re.compile(r"(?:cm|mm|in|inch|inches)$", re.IGNORECASE)
"""What ends a length: no count became another one there."""
_LEAST = 4
"""Smaller numbers stand in too many sentences that have nothing to do with a count (chosen here)."""


def telling(source: Source, changes: Sequence[Change] = ()) -> Iterator[str]:
    """`line 48 says “8 rounds”: look whether it still holds`, for each text that tells a number.

    changes: what the alteration changed; where a number became just one other one, that is said.
    """
    if source.root is None:
        return
    now = _became(changes)
    elsewhere = _renumbers_another(source, changes)
    for name, value in source.root.fields:
        if name.text not in _ROOMS:
            continue
        for node in _texts(value, name.text in ("title", "summary", "notes")):
            rounds = elsewhere and name.text != "pieces"
            said = dict.fromkeys(_said(node.text, now, rounds))
            if said:
                line = source.lines.position(node.start)[0]
                quoted = " and ".join(f"“{one}”" for one in said)
                yield f"line {line} says {quoted}{_is_now(said, now)}: look whether it still holds"


def _said(text: str, now: Mapping[str, set[str]], rounds: bool) -> Iterator[str]:
    """The numbers that a text tells, in its order. rounds: round numbers are named as well."""
    found = [*_TELLS.finditer(text), *(_ROUNDS.finditer(text) if rounds else ())]
    taken = [one.span() for one in [*found, *_ROUNDS.finditer(text)]]
    for one in re.finditer(r"\b(\d+)(?:st|nd|rd|th)?\b", text):
        if one[1] in now and not any(start < one.end() and one.start() < end for start, end in taken):
            found.append(one)
    yield from (" ".join(one[0].split()) for one in sorted(found, key=lambda one: one.start()))


def _became(changes: Sequence[Change]) -> dict[str, set[str]]:
    """What each number of the file that isn't a round's became. Round numbers in sentences follow."""
    found: dict[str, set[str]] = {}
    for one in changes:
        before, after = (re.findall(r"\d+(?:\.\d+)?", text) for text in (one.before, one.after))
        if one.what in (*_RUNS, "work", "note", "text", "notes") or len(before) != len(after):
            continue
        for was, made in zip(before, after, strict=True):
            if was != made and float(was) >= _LEAST:
                found.setdefault(was, set()).add(made)
    return found


def _is_now(said: Mapping[str, None], now: Mapping[str, set[str]]) -> str:
    """`, where 48 is now 54`."""
    counts = [one for one in said if not _MEASURE.search(one)]
    numbers = dict.fromkeys(number for one in counts for number in re.findall(r"\d+(?:\.\d+)?", one))
    told = [f"{one} is now {next(iter(now[one]))}" for one in numbers if len(now.get(one, ())) == 1]
    return f", where {' and '.join(told)}" if told else ""


def _renumbers_another(source: Source, changes: Sequence[Change]) -> bool:
    """Whether rounds of another piece than the first have other numbers now."""
    others = list(source.pattern.pieces)[1:] if source.pattern is not None else []
    return any(
        one.what in _RUNS and one.where.startswith((f"{piece}, round", f"{piece}, row"))
        for one in changes
        for piece in others
    )


def _texts(node: Node, prose: bool) -> Iterator[Node]:
    """The texts that a reader reads as sentences. prose: whether this value is one."""
    if node.kind == "text" and prose:
        yield node
    for item in node.items:
        yield from _texts(item, prose)
    for name, value in node.fields:
        yield from _texts(value, name.text in _PROSE)
