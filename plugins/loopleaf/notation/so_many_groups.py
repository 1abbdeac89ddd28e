"""Reads a repeat told by what it comes to: `rep from * until you have 6 groups`."""

from collections.abc import Sequence

from .cursor import Cursor
from .lexer import Word
from .tree import Amount

_LEAD_IN = frozenset({"you have", "there are", "you have made", "you have worked"})
_GROUPS = frozenset({"group", "group-name", "form", "special"})


def read_so_many_groups(cursor: Cursor) -> tuple[Amount, bool] | None:
    """How often that is, and whether it is unclear: where stitches stand before the repeat, they may be one
    of the groups, and are where they are as many as the repeat's. None (and nothing passed) where nothing
    like it is said.
    """
    if cursor.means != "until":
        return None
    words = cursor.words
    at = first = cursor.at + 1
    while words[at].means not in ("num", ",", "end"):
        at += 1
    if words[at].means != "num" or cursor.said(first, at).lower() not in _LEAD_IN:
        return None
    number = words[at].value.sizes[0] or 0
    if words[at + 1].means not in _GROUPS or words[at].value.varies or number < 2:
        return None
    stars = [i for i, word in enumerate(words[: cursor.at]) if word.means == "*"]
    brackets = [i for i, word in enumerate(words[: cursor.at]) if word.means == "(" and not _aside(words, i)]
    star = [0, *(stars or brackets)[:1]][-1]
    repeated, before = _stitches(words, star, cursor.at), _stitches(words, 0, star)
    chained = any(word.means == "ch" for word in words[:2])
    alike = before in (repeated, repeated - chained)
    cursor.at = at + 2
    return (Amount((number - 1,)), not alike) if before else (Amount((number,)), False)


def _aside(words: Sequence[Word], bracket: int) -> bool:
    return words[bracket + 1].means in ("counts-as", "counts-not")


def _stitches(words: Sequence[Word], first: int, end: int) -> int:
    """How many stitches a stretch of the line makes, without what a chain is said to count as."""
    made = aside = 0
    for at in range(first, end):
        word, before = words[at], words[at - 1]
        if word.means == "(" and _aside(words, at):
            aside = word.value
        if word.means == "stitch" and at >= aside and word.value.kind not in ("slip", "chain"):
            made += (before.value.sizes[0] or 0) if at and before.means == "num" else 1
    return made
