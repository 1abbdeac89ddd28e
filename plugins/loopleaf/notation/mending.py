"""Turns words that can't be read into a problem: which words, what was expected there, and the nearest
known word.
"""

from collections.abc import Callable, Iterator
from difflib import SequenceMatcher
from functools import cache
from typing import Any

from ..trade.data_files import data_file
from .cursor import Cursor, UnreadableError
from .lexicon import lexicon_for
from .places import starts_place
from .problem import Problem
from .style import Style, kind_names
from .tree import Span
from .vocabulary import Terms, Vocabulary

NAMED = 4
"""How many things that fit are named."""
_CLOSING = frozenset({",", "end", ")"})
_PLACED = frozenset(
    {"next", "each", "first", "last", "same", "ring", "st", "ch", "num", "ord", "corner", "stitch"}
)
"""Words that make a place of an `in`: what stands before it is used as a stitch's name."""


@cache
def _expected_file() -> dict[str, Any]:
    return data_file(__package__, "expected.yml")


def explain(
    cursor: Cursor, error: UnreadableError, mistakes_in: Callable[[str], list[int]] | None
) -> Problem:
    """The problem for a stretch that can't be read. mistakes_in: where a text has any, to try a mending
    before it is offered.
    """
    words = cursor.words
    first = min(error.at, len(words) - 1)
    terms = cursor.vocabulary.terms
    if error.to < 0 and words[first].means in _CLOSING:
        return _broken_off(cursor, error, first)
    suggestion = None
    last = max(error.to, first)
    if error.to < 0 and words[first].means in ("?", "weave-in"):
        mending = _mended(cursor, first, mistakes_in) if mistakes_in is not None else None
        if mending is None:
            last = _whole_run(cursor, first)
            suggestion = _without_mending(cursor, error, first, last)
        else:
            last, word = mending
            suggestion = (f"Write “{word}”.", word, "likely")
    span = Span(words[first].start, words[last].end)
    said = _shortened(cursor.text[span.start : span.end])
    expected = _listed(_fitting(error.expected, said, terms))
    says: str = _expected_file()["says"].get(error.expected, "“{said}” can't be read here")
    message = f"{says.format(said=said)}; expected {expected}."
    return Problem("unknown-instruction", "error", span, message, "", suggestion)


def _broken_off(cursor: Cursor, error: UnreadableError, first: int) -> Problem:
    before = max(first - 1, 0)
    began = min(error.began, before)
    began = max((i for i in range(began, first) if cursor.words[i].means == "rep"), default=began)
    span = Span(cursor.words[began].start, max(cursor.words[before].end, cursor.words[began].start))
    said = _shortened(cursor.text[span.start : span.end])
    expected = _listed(_fitting(error.expected, said, cursor.vocabulary.terms))
    if not said:
        return Problem("unknown-instruction", "error", span, f"Nothing is written here; expected {expected}.")
    return Problem("unknown-instruction", "error", span, f"“{said}” breaks off; expected {expected} next.")


def _whole_run(cursor: Cursor, first: int) -> int:
    """The last word of what can't be read: all up to the next comma or bracket."""
    last = first
    while cursor.words[last + 1].means not in (*_CLOSING, "("):
        last += 1
    return last


def _shortened(said: str) -> str:
    said = " ".join(said.split())
    return said if len(said) <= 60 else said[:57].rstrip() + "…"


def _fitting(key: str, said: str, terms: Terms) -> list[str]:
    """What could have stood there, nearest to what was written first."""
    skip = Style(terms).word("skip")
    names = {kind: kind_names(kind, terms).short for kind in ("single", "half", "double", "treble", "slip")}
    examples = [example.format(skip=skip, **names) for example in _expected_file()["expected"][key]]
    return sorted(examples, key=lambda e: -round(_likeness(said, e), 1))[:NAMED]


def _likeness(said: str, example: str) -> float:
    """How near an example is to what was written, by how both begin (numbers apart); 0 where they differ."""
    first = said.lower().split(" ")[0]
    words = example.lower().split(" ")
    begins = words[:2] if words[0].isdigit() else words[:1]
    nearest = max(SequenceMatcher(None, first, word).ratio() for word in begins)
    return nearest if nearest >= 0.6 else 0.0


def _listed(examples: list[str]) -> str:
    quoted = [f"“{example}”" for example in examples]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"


# ---- nearest words ------------------------------------------------------------------------------------


def _mended(cursor: Cursor, first: int, mistakes_in: Callable[[str], list[int]]) -> tuple[int, str] | None:
    """The known word that the unknown one was likely meant to be, if the line reads better with it; and the
    last word replaced.
    """
    words, text = cursor.words, cursor.text
    begins = words[first].start

    def left(line: str) -> int:
        return sum(start >= begins for start in mistakes_in(line))

    before = left(text)
    for phrase, meant in _expected_file()["mistaken"].items():
        end = begins + len(phrase)
        if text[begins:end].lower() == phrase and not text[end : end + 1].isalnum():
            last = first
            while words[last].end < end:
                last += 1
            if left(text[:begins] + meant + text[end:]) < before:
                return last, meant
    word = words[first]
    for candidate in _near(str(word.value), cursor.vocabulary):
        if left(text[:begins] + candidate + text[word.end :]) < before:
            return first, candidate
    return None


def _near(word: str, vocabulary: Vocabulary) -> Iterator[str]:
    """Known words a slip or two away, nearest first; for a word of two letters only those swapped: `cs`."""
    allowed = 1 if len(word) <= 4 else 2
    short = len(word) == 2
    if len(word) < 2 or len(word) > 30:
        return
    found: list[tuple[int, float, str]] = []
    for known, entries in lexicon_for(vocabulary).items():
        if len(known) >= 2 and abs(len(known) - len(word)) <= allowed and any(not e.foreign for e in entries):
            slips = _slips(word, known)
            if slips <= allowed and not (short and set(word) != set(known)):
                found.append((slips, -SequenceMatcher(None, word, known).ratio(), known))
    found.sort()
    for _, _, known in found[:8]:
        yield known


def _slips(a: str, b: str) -> int:
    """How many letters are wrong, missing, too many, or swapped with their neighbour."""
    before: list[int] = []
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        before, last, row = row, before, [i]
        for j, y in enumerate(b, 1):
            cost = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                cost = min(cost, last[j - 2] + 1)
            row.append(cost)
    return row[-1]


def _without_mending(
    cursor: Cursor, error: UnreadableError, first: int, last: int
) -> tuple[str, str | None, str] | None:
    words = cursor.words
    if (
        error.expected in ("step", "stitch")
        and starts_place(cursor, first + 1)
        and words[first + 2].means in _PLACED
    ):
        name = _shortened(cursor.text[words[first].start : words[first].end])
        return (f"If “{name}” is a stitch of your own, define it under `special stitches`.", None, "fill-in")
    if error.began == 0 and error.expected == "step" and words[last + 1].means == "end":
        return ("An instruction without stitches goes into `text`.", None, "fill-in")
    return None
