"""Reads what chains or a gap are for: `ch 4 for handle`, `sk 4 sts for thumb`; `ch 3 for first dc` counts."""

from dataclasses import replace
from functools import cache

from .cursor import Cursor, UnreadableError
from .lexicon import words_file
from .names import read_stitch, starts_stitch
from .tree import Chain, CountsAs, Group, Repeat, Skip, Step, Work

MOST_WORDS = 4
_ENDS = frozenset({",", "end", ")", "(", "and", "then", "*", "rep"})


@cache
def _nouns() -> frozenset[str]:
    return frozenset(words_file()["purposes"])


def read_purpose(cursor: Cursor) -> str:
    """The author's words behind `for`, kept as they are; "" where none stand. Stitches aren't a purpose."""
    if cursor.means != "for":
        return ""
    first = at = cursor.at + 1
    while cursor.words[at].means not in _ENDS:
        if cursor.words[at].means in ("num", "ord", "stitch", "special"):
            raise UnreadableError(at, "purpose")
        at += 1
    if at == first or at - first > MOST_WORDS:
        raise UnreadableError(first, "purpose")
    cursor.at = at
    return cursor.said(first, at)


def read_stands_for(cursor: Cursor) -> CountsAs | None:
    """`ch 3 for first dc`: the chain counts as that stitch."""
    if cursor.means != "for" or cursor.ahead() != "first" or not starts_stitch(cursor, cursor.at + 2):
        return None
    cursor.at += 2
    return CountsAs(stitch=read_stitch(cursor))


def pass_purpose_aside(cursor: Cursor, steps: list[Step]) -> bool:
    """`sk 4 sts (thumb opening)`, `ch 3 (buttonhole)`: a few words of the author say what for. Behind
    stitches, `5-dc bobble in next st (thumb)`, they only name what was just worked.
    """
    before = steps[-1] if steps else None
    first, close = cursor.at + 1, cursor.words[cursor.at].value
    inside = cursor.words[first:close]
    if before is None or not 0 < len(inside) <= MOST_WORDS:
        return False
    said = cursor.text[inside[0].start : inside[-1].end].lower().split()
    if not set(said) <= _nouns():
        return False
    if isinstance(before, Chain | Skip):
        if before.purpose:
            return False
        steps[-1] = replace(before, purpose=cursor.said(first, close))
    elif not isinstance(before, Work | Group | Repeat):
        return False
    cursor.at = close + 1
    return True
