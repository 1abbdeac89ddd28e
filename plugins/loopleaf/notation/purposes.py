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
def purposes() -> frozenset[str]:
    """The words that a part of a piece may be named by."""
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
    if cursor.words[at].means == "and" and (after := _and_for(cursor, at)):
        at = after
        if at - first > 2 * MOST_WORDS:
            raise UnreadableError(first, "purpose")
    elif at == first or at - first > MOST_WORDS:
        raise UnreadableError(first, "purpose")
    cursor.at = at
    return cursor.said(first, at)


def _and_for(cursor: Cursor, at: int) -> int:
    """Where `and left front` ends behind `for back`; 0 where a step begins behind the `and`."""
    after = at + 1
    while cursor.words[after].means not in _ENDS and cursor.said(after, after + 1).lower() in purposes():
        after += 1
    return after if after > at + 1 and cursor.words[after].means in _CLOSED else 0


_CLOSED = frozenset({",", "end", ")"})


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
    if before is None or not 0 < len(inside) <= MOST_WORDS or not _says_a_part(cursor, first, close):
        return False
    if isinstance(before, Chain | Skip):
        if before.purpose:
            return False
        steps[-1] = replace(before, purpose=cursor.said(first, close))
    elif not isinstance(before, Work | Group | Repeat):
        return False  # `8 sc in ch-6 sp (handle)`: the stitches need no such words
    cursor.at = close + 1
    return True


def _says_a_part(cursor: Cursor, first: int, after: int) -> bool:
    """Whether the words from one up to before another only name a part of the piece: `left neck edge`."""
    return set(cursor.said(first, after).lower().split()) <= purposes()


def pass_what_part(cursor: Cursor, step: Step) -> None:
    """`sc2tog at neck edge`, `3 sc in next ch for center`: behind a stitch whose place is known that adds
    nothing to the work; not `3 sc at corner`.
    """
    if cursor.means not in ("at", "for") or not isinstance(step, Work):
        return
    shapes = step.stitch.form == "tog" or step.stitch.kind in ("inc", "dec")
    if shapes or any(place.span is not None for place in step.places):
        cursor.at = _past_the_part(cursor, cursor.at) or cursor.at


def part_at(cursor: Cursor, at: int) -> int:
    """Where `at neck edge`, `at center back` ends that stands at a word; 0 where nothing like it does."""
    return _past_the_part(cursor, at) if cursor.words[at].means == "at" else 0


def _past_the_part(cursor: Cursor, at: int) -> int:
    """Behind the words from the one behind this on, if a part and nothing else is named; else 0."""
    first = at = at + 1
    while cursor.words[at].means not in _PART_ENDS:
        at += 1
    return at if first < at <= first + MOST_WORDS and _says_a_part(cursor, first, at) else 0


_PART_ENDS = _ENDS | {"around", "across"}
