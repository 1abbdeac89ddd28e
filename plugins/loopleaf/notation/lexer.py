"""From a line's text to its words: each with its meaning, its value and where it stands.

One pass with one regular expression, then the lexicon's longest phrase at each word. Case and
spacing don't matter; hyphens inside words are dropped but remembered (`2ch-sp`, `5-dc bobble`).
"""

import re
from dataclasses import dataclass
from typing import Any

from .dotted import DOTTED, ends_nothing
from .instead import Piece, put_instead
from .lexicon import Entry, Lexicon, lexicon_for
from .problem import Problem
from .tree import Amount, Span
from .vocabulary import NumberOfN, Terms, Vocabulary

LARGEST = 100_000
"""The largest number that a line may hold."""
DEEPEST = 12
"""How many brackets may stand inside each other."""

_PIECES = re.compile(
    r"(?P<ord>\d+)(?:st|nd|rd|th)(?![^\W_])"
    r"|(?P<num>\d+)"
    rf"|(?P<dotted>{DOTTED})"
    r"|(?P<word>[^\W\d_]+(?:['’][^\W\d_]+)*)"
    r"|(?P<mark>\*\*|††?|‡‡?|\*)"
    r"|(?P<sign>[^\s\w]|_)",
    re.IGNORECASE,
)
_SIGNS = {"×": "x", ",": ",", ";": ",", ".": ",", ":": ",", "&": "and", "+": "and", "=": "-"}
_HYPHENS = "-–—‐‑−"


@dataclass(slots=True)
class Word:
    """One word or phrase. glued: nothing or a hyphen stands between it and the word before.

    For a bracket, value is the index of its fellow; for a number, an Amount; for unknown words, the text.
    """

    means: str
    value: Any
    start: int
    end: int
    glued: bool = False
    name: str = ""


@dataclass(slots=True)
class Lexed:
    """A line's words, closed by four `end` words, and what was noticed on the way."""

    words: list[Word]
    problems: list[Problem]
    too_deep: bool = False


def lex(text: str, vocabulary: Vocabulary, n: NumberOfN | None) -> Lexed:
    """The words of a line. Unmatched brackets are reported and left out; words of the other side are
    reported and read.
    """
    lexicon = lexicon_for(vocabulary)
    pieces = put_instead(_split(text), lexicon)
    words: list[Word] = []
    problems: list[Problem] = []
    brackets: list[int] = []
    deep = False
    at = 0
    count = len(pieces)
    while at < count:
        if _stands_twice(words, text):
            again = words.pop()
            problems.append(_twice(text, words[-1], again))
        kind, raw, start, end, glued = pieces[at]
        if kind == "word" or kind == "ord":
            taken = _look_up(lexicon, pieces, at, words, problems, text, vocabulary.terms)
            if taken:
                at += taken
                continue
        if kind == "ord":
            words.append(Word("ord", _number(raw[:-2], start, end, problems), start, end, glued))
        elif kind == "num":
            taken = _look_up(lexicon, pieces, at, words, problems, text, vocabulary.terms)
            if taken:
                at += taken
                continue
            words.append(Word("num", Amount((_number(raw, start, end, problems),)), start, end, glued))
        elif kind == "word":
            if raw == "n":
                value = Amount(variable="n") if n is None else Amount(n if isinstance(n, tuple) else (n,))
                words.append(Word("num", value, start, end, glued))
            elif not _stitches_together(lexicon, words, raw, start, end, glued):
                words.append(Word("?", raw, start, end, glued))
        elif kind == "mark":
            words.append(Word("*", raw, start, end, glued))
        elif raw in "([{":
            brackets.append(len(words))
            deep = deep or len(brackets) > DEEPEST
            words.append(Word("(", -1, start, end, glued, raw))
        elif raw in ")]}":
            if brackets:
                words[brackets[-1]].value = len(words)
                words.append(Word(")", brackets.pop(), start, end, glued, raw))
            else:
                problems.append(_lone(text, start, end, "opens"))
        elif raw in _HYPHENS:
            words.append(Word("-", None, start, end, glued))
        else:
            means = _SIGNS.get(raw)
            words.append(Word(means or "?", raw, start, end, glued))
        at += 1
    for index in brackets:
        lone = words[index]
        problems.append(_lone(text, lone.start, lone.end, "closes"))
        lone.means = ","
    if deep:
        problems.append(_too_deep(text))
    length = len(text)
    words.extend(Word("end", None, length, length) for _ in range(4))
    _short_rounds(words)
    _round_as_around(words)
    _end_before_a_stitch(words)
    _circle_in_short(words, vocabulary)
    _equals(words)
    return Lexed(words, problems, deep)


def _stitches_together(
    lexicon: Lexicon, words: list[Word], raw: str, start: int, end: int, glued: bool
) -> bool:
    """`2trtog`, as UK print has it: the stitch and `tog`, in one word behind the number."""
    if not raw.endswith("tog") or not words or words[-1].means != "num":
        return False
    entry = next((one for one in lexicon.get(raw[:-3], ()) if not one.more and one.means == "stitch"), None)
    if entry is None or entry.foreign:
        return False
    words.append(Word("stitch", entry.value, start, end - 3, glued, raw[:-3]))
    words.append(Word("tog", None, end - 3, end, True, "tog"))
    return True


_NEVER_TWICE = frozenset(
    {"stitch", "ch", "inc", "dec", "rep", "from", "in", "next", "each", "st", "sp", "skip", "first", "same"}
)


def _stands_twice(words: list[Word], text: str) -> bool:
    """Whether the last word says again what the one before it says: `sc sc in next st`."""
    if len(words) < 2 or words[-1].means not in _NEVER_TWICE:
        return False
    one, other = (text[word.start : word.end].lower() for word in words[-2:])
    return one == other and words[-2].end < words[-1].start


def _twice(text: str, first: Word, again: Word) -> Problem:
    said = text[first.start : first.end]
    span = Span(first.start, again.end)
    once = (f"Write “{said}”.", said, "likely")
    return Problem("unknown-instruction", "error", span, f"“{said}” stands here twice.", "", once)


_BEHIND_ROUND = frozenset({"post", "next", "first", "last", "each", "same"})
_BEFORE_ROUND = frozenset({"stitch", "special", "st", "sp", "sps", "chsp", "fp", "ch", "loop"})


def _short_rounds(words: list[Word]) -> None:
    """`of R1`: the letter stands for the round (or row) of that number."""
    for before, word, after in zip(words, words[1:], words[2:], strict=False):
        if word.means == "?" and word.value in ("r", "rd") and after.means == "num" and after.glued:
            word.means = "round" if before.means in ("of", "in", "behind") else "?"


def _round_as_around(words: list[Word]) -> None:
    """UK print works `round next st` and `in each st round`: there the word is `around`."""
    for before, word, after in zip(words, words[1:], words[2:], strict=False):
        if word.means != "round" or before.means not in _BEFORE_ROUND:
            continue
        if after.means in _BEHIND_ROUND or after.means in (",", "end"):
            word.means = "around"


def _end_before_a_stitch(words: list[Word]) -> None:
    """`rep from * around, end sc in last st`, `…, end 2 dc in tch`: what `ending with` says."""
    for before, word, after, second in zip(words, words[1:], words[2:], words[3:], strict=False):
        stitch = after.means == "stitch" or (after.means == "num" and second.means == "stitch")
        if word.means == "ending" and before.means == "," and stitch:
            word.means = "ending-with"


def _circle_in_short(words: list[Word], vocabulary: Vocabulary) -> None:
    """`6 sc in MC`, `MC, 6 sc`: the magic circle, where the pattern has no main colour of that name."""
    if "MC" in (name.upper() for name in vocabulary.yarns):
        return
    for before, word in zip([None, *words], words, strict=False):
        if word.means == "?" and word.value == "mc" and (before is None or before.means == "in"):
            word.means = "ring"


def _equals(words: list[Word]) -> None:
    """`ch 3 (= 1 dc)`, `(skipped chs = 1 dc)`: what a chain counts as; elsewhere the sign stands before a
    count.
    """
    for at, word in enumerate(words):
        before = [one.means for one in words[max(at - 3, 0) : at]]
        named = at > 3 and words[at - 4].means in ("of", "in", "to", "as")  # `ss to top of 3ch (= 12 tr)`
        behind_chain = before in (["ch", "num", "("], ["num", "ch", "("]) and not named
        if word.value == "=" and (behind_chain or before[-1:] in (["ch"], ["tch"], ["skipped"])):
            word.means = "counts-as"


def _split(text: str) -> list[Piece]:
    """The smallest pieces: (what, lower-case text, start, end, glued). Hyphens inside words and `the` are
    left out.
    """
    pieces: list[Piece] = []
    last = -1
    for match in _PIECES.finditer(text):
        kind = match.lastgroup
        assert kind is not None
        start, end = match.span()
        raw = match.group()
        if kind == "dotted":  # `d.c.`, `h.tr.`, as UK print wrote them
            kind, raw = "word", raw.lower().replace(".", "")
        elif kind == "word":
            raw = raw.lower().replace("’", "'")
            if raw == "the":
                continue
        elif kind == "ord":
            raw = raw.lower()
        elif raw == "." and pieces and pieces[-1][3] == start and ends_nothing(text, pieces[-1][1], end):
            continue
        elif kind == "sign" and start == last and text[end : end + 1].isalnum() and _joins(raw, pieces):
            last = end
            continue
        pieces.append((kind, raw, start, end, start == last))
        last = end
    return pieces


def _joins(sign: str, pieces: list[Piece]) -> bool:
    """Whether a sign is a hyphen within a word; `turn—10 sc` is none, `ch—3` is."""
    return sign in _HYPHENS and (sign != "—" or pieces[-1][1] in ("ch", "chain"))


def _look_up(
    lexicon: Lexicon,
    pieces: list[Piece],
    at: int,
    words: list[Word],
    problems: list[Problem],
    text: str,
    terms: Terms,
) -> int:
    """Add the longest phrase that begins here; gives how many pieces it took, 0 where none fits."""
    _, raw, start, end, glued = pieces[at]
    for entry in lexicon.get(raw, ()):
        more = entry.more
        if more:
            taken = 1 + len(more)
            if at + taken > len(pieces) or any(pieces[at + 1 + i][1] != w for i, w in enumerate(more)):
                continue
            end = pieces[at + taken - 1][3]
        else:
            taken = 1
            end = pieces[at][3]
        value = entry.value
        means = entry.means
        if means == "num":
            value = Amount((value,))
        words.append(Word(means, value, start, end, glued, raw))
        if entry.foreign:
            problems.append(_foreign(text[start:end], entry, terms, Span(start, end)))
        return taken
    return 0


def _number(digits: str, start: int, end: int, problems: list[Problem]) -> int:
    if len(digits) <= 6 and (number := int(digits)) <= LARGEST:
        return number
    problems.append(
        Problem(
            "number-too-large",
            "error",
            Span(start, end),
            f"“{digits if len(digits) <= 20 else digits[:20] + '…'}” is more than any round can hold.",
            f"A line may hold numbers up to {LARGEST:,}.",
        )
    )
    return 1


def _lone(text: str, start: int, end: int, missing: str) -> Problem:
    sign = text[start:end]
    return Problem(
        "unknown-instruction",
        "error",
        Span(start, end),
        f"“{sign}” stands alone: the bracket that {missing} it is missing.",
    )


def _too_deep(text: str) -> Problem:
    return Problem(
        "too-deep",
        "error",
        Span(0, len(text)),
        f"Brackets stand inside each other more than {DEEPEST} deep.",
        "A line may hold repeats within repeats, but not this many.",
    )


def _foreign(said: str, entry: Entry, terms: Terms, span: Span) -> Problem:
    other = "UK" if terms == "US" else "US"
    own = entry.foreign
    if entry.travels:
        return Problem(
            "term-of-the-other-system",
            "note",
            span,
            f"“{said}” is the {other} word; this file is in {terms} terms.",
            f"{terms} patterns say “{own}”; it is read all the same, and every page writes its own word.",
            (f"Write “{own}”.", own, "safe"),
        )
    return Problem(
        "term-of-the-other-system",
        "error",
        span,
        f"“{said}” is a {other} name; this file is in {terms} terms.",
        f"A {other} “{said}” is a {terms} “{own}”.",
        (f"Write “{own}”, or say `terms: {other}` if the whole file is written so.", own, "likely"),
    )
