"""Reads what print says of a yarn that only runs along: `carrying B along`, `carrying unused color along top
of sts`.
"""

from .cursor import Cursor

_COLOURS = frozenset({"color", "colour"})
_UNUSED = frozenset({"unused", "other", "nonworking", "non-working", "non", "resting", "inactive"})
_ON_THE_WAY = frozenset(
    {"along", "top", "of", "st", "row", "round", "behind", "over", "in", "across", "a", "next", "?", "inside",
     "stitch", "base", "edge", "side"}
)  # fmt: skip
_MOST_WORDS = 7


def pass_colour(cursor: Cursor) -> None:
    """`color B`, `colour B`: the word before a yarn's letter, or one of the pattern's yarns, adds nothing."""
    words, at = cursor.words, cursor.at
    if words[at].means != "?" or cursor.said(at, at + 1).lower() not in _COLOURS:
        return
    word = words[at + 1]
    said = cursor.text[word.start : word.end]
    letter = len(said) == 1 and said.isupper()
    if letter or any(yarn.lower() == said.lower() for yarn in cursor.vocabulary.yarns):
        cursor.at += 1


def pass_along(cursor: Cursor) -> None:
    """`along`, `along top of sts`, `behind sts` behind the carried yarn: how it runs makes no stitch."""
    at = cursor.at
    if cursor.words[at].means not in ("along", "behind", "in", "over", "across"):
        return
    while cursor.words[at].means in _ON_THE_WAY and at - cursor.at < _MOST_WORDS:
        at += 1
    if cursor.words[at].means in (",", "end", ")", "*", "("):
        cursor.at = at


def pass_unused(cursor: Cursor) -> bool:
    """`unused color along top of sts`, `color not in use`: whichever isn't worked with; says nothing new."""
    at = cursor.at + (cursor.means == "a")
    said = cursor.said(at, at + 1).lower()
    if not (said in _UNUSED or (said in (*_COLOURS, "yarn") and _says(cursor, at + 1, "not"))):
        return False
    while cursor.words[at].means not in (",", "end", ")", "(", "*") and at - cursor.at < 2 * _MOST_WORDS:
        at += 1
    if cursor.words[at].means not in (",", "end", ")", "(", "*"):
        return False
    cursor.at = at
    return True


def _says(cursor: Cursor, at: int, word: str) -> bool:
    return cursor.said(at, at + 1).lower() == word
