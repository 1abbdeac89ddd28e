"""Reads where a new yarn is joined, in the author's own words for a spot of the edge: `join yarn with sl st
at lower corner`, `in bottom corner`, `at top edge`.
"""

from .cursor import Cursor

MOST_WORDS = 6
_WORDS = frozenset(
    {"?", "corner", "edge", "centre", "side", "of", "ending", "beg", "first", "last", "row", "round", "num",
     "a", "top", "base", "other", "same", "foundation", "marker", "ch", "st", "ord"}
)  # fmt: skip
_SPOTS = frozenset({"corner", "edge", "ending", "side"})
_CLOSES = frozenset({",", "end", ")", "(", "with", "and", "then"})


def read_spot(cursor: Cursor) -> str:
    """The words behind `at`, or behind an `in` where a word of the author's own names a corner or an edge;
    "" (and nothing passed) where none are.
    """
    if cursor.means not in ("at", "in"):
        return ""
    first = at = cursor.at + 1 + (cursor.ahead() == "a")
    while cursor.words[at].means in _WORDS:
        at += 1
    if not 0 < at - first <= MOST_WORDS or cursor.words[at].means not in _CLOSES:
        return ""
    own = cursor.words[first].means in ("?", "top", "base")
    if cursor.means == "in" and not (own and cursor.words[at - 1].means in _SPOTS):
        return ""
    cursor.at = at
    return " ".join(cursor.said(first, at).split())
