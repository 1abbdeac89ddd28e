"""Finds the names of pieces in a line, and two pieces worked through at once: `through both layers of arm and
body`, `through both body and 2nd arm`, `of arm and body together`, `holding arm against body, …`.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .tree import Step, Work

_IN_A_NAME = frozenset({"?", "ord", "next", "other", "edge", "top", "side", "corner", "group-name", "num"})
_MOST_WORDS = 3
_JOINTS = frozenset({"against", "beside", "with"})


def piece_at(cursor: Cursor, at: int) -> str:
    """The pattern's piece whose name begins at a word, as the file spells it; "" where there is none.

    A stitch of the author's own that is called like a piece is the stitch, and `first sc` is a place though
    a piece is called `first`.
    """
    if cursor.words[at].means == "special":
        return ""
    start = cursor.words[at].start
    rest = cursor.text[start:].lower()
    found = ""
    for piece in cursor.vocabulary.pieces:
        name = piece.lower()
        if len(name) > len(found) and rest.startswith(name) and not rest[len(name) : len(name) + 1].isalnum():
            found = piece
    return "" if _tells_which(cursor, at) and len(found) == len(cursor.said(at, at + 1)) else found


_WHICH = frozenset({"first", "ord", "next", "last", "same", "each", "any", "other", "remaining", "top"})
_CLOSES = frozenset({",", "end", ")", "and", "then"})


def _tells_which(cursor: Cursor, at: int) -> bool:
    """Whether a word says which place is meant, and isn't the whole name of `ch-5 sp of first`."""
    words = cursor.words
    whole = words[at - 1].means == "of" and words[at + 1].means in _CLOSES
    return words[at].means in _WHICH and not whole


def nth_piece(cursor: Cursor, at: int) -> str:
    """`leg 1` for the `first leg` at a word, where the pattern has a piece of that name; "" else."""
    word = cursor.words[at]
    if word.means not in ("first", "ord") or cursor.words[at + 1].means == "end":
        return ""
    number = 1 if word.means == "first" else word.value
    name = f"{cursor.said(at + 1, at + 2)} {number}".lower()
    return next((piece for piece in cursor.vocabulary.pieces if piece.lower() == name), "")


def _past_the_name(cursor: Cursor, at: int) -> int:
    """Where a piece's name ends that begins at a word, or what may be one; the same word where none does."""
    words, first = cursor.words, at
    at += words[at].means == "a"
    if _own_edge(cursor, at):
        return at + 2
    named = at + (words[at].means in ("ord", "next", "other", "first"))
    piece = piece_at(cursor, named)
    if piece:
        end = words[named].start + len(piece)
        while words[named].means != "end" and words[named].start < end:
            named += 1
        return named + (words[named].means == "num" and words[named + 1].means not in ("stitch", "ch"))
    begun = at
    while words[at].means in _IN_A_NAME and at - begun < _MOST_WORDS and _is_a_word(cursor, at):
        at += 1
    return first if at == begun else at


def _own_edge(cursor: Cursor, at: int) -> bool:
    """Whether `this row`, `row 3` or `foundation ch` stands at a word: the piece's own, folded on itself."""
    words = cursor.words
    if words[at].means == "foundation":
        return words[at + 1].means == "ch"
    if words[at].means in ("row", "round"):
        return words[at + 1].means == "num"
    return cursor.said(at, at + 1).lower() in _THIS and words[at + 1].means in ("row", "round")


_THIS = ("this", "current")


def _is_a_word(cursor: Cursor, at: int) -> bool:
    said = cursor.said(at, at + 1)
    return said[:1].isalnum() and said.lower() not in ("both", "through", *_JOINTS)


def _both(cursor: Cursor, at: int, joints: frozenset[str] = frozenset({"and"})) -> tuple[str, int]:
    """`arm and body` from a word on, and the word behind it; ("", at) where no two pieces are named."""
    words = cursor.words
    first = at
    after = _past_the_name(cursor, at)
    joint = after
    if after == at or not (words[after].means in joints or cursor.said(after, after + 1).lower() in joints):
        return "", first
    second = after + 1 + (words[after + 1].means == "of")
    last = _past_the_name(cursor, second)
    if last == second:
        return "", first
    names = (_name(cursor, first, joint), _name(cursor, second, last))
    return " and ".join(names), last


def _name(cursor: Cursor, first: int, after: int) -> str:
    first += cursor.words[first].means == "a"
    return " ".join(cursor.said(first, after).lower().split())


def starts_both_together(cursor: Cursor) -> bool:
    """Whether `of arm and body together` stands here, and not `of leg 2`."""
    if cursor.means != "of":
        return False
    names, after = _both(cursor, cursor.at + 1 + _says_both(cursor, cursor.at + 1))
    return bool(names) and cursor.words[after].means == "tog"


def _says_both(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means == "?" and cursor.said(at, at + 1).lower() == "both"


def read_layers(cursor: Cursor) -> str:
    """`through both layers`, `through both layers of arm and body`, `through both arm and body`; "" (and
    nothing passed) where nothing is said of layers.
    """
    at = cursor.at
    if starts_both_together(cursor):
        names, after = _both(cursor, at + 1 + _says_both(cursor, at + 1))
        cursor.at = after + 1
        return f"both layers of {names}"
    if cursor.means != "through":
        return ""
    if cursor.ahead() == "layers":
        layers: str = cursor.words[at + 1].value
        cursor.at += 2
        if cursor.means != "of":
            return layers
        names, after = _both(cursor, cursor.at + 1)
        if names:
            cursor.at = after
        return f"{layers} of {names}" if names else layers
    names, after = _both(cursor, at + 1 + _says_both(cursor, at + 1))
    if not names:
        return ""
    cursor.at = after
    return f"both layers of {names}"


def read_held(cursor: Cursor, steps: list[Step]) -> None:
    """`holding arm against body, sc in next 4 sts`: what follows goes through both."""
    first = cursor.at
    cursor.at += 1
    names, after = _both(cursor, cursor.at, _JOINTS | {"to", "behind", "in-front", "and"})
    cursor.at = after
    cursor.take("tog")
    if not names or cursor.means not in (",", "and"):
        raise UnreadableError(first, "step")
    cursor.at += 1
    cursor.read_step(cursor, steps)
    work = steps[-1] if steps else None
    if isinstance(work, Work) and not work.through:
        steps[-1] = replace(work, through=f"both layers of {names}", span=cursor.span(first))


def read_flattened(cursor: Cursor, steps: list[Step]) -> None:
    """`flatten arm, sc through both layers across`, `fold arm in half, …`: only says how it lies."""
    first = cursor.at
    cursor.at = after = max(_past_the_name(cursor, first + 1), first + 1)
    if cursor.means == "in" and cursor.said(after + 1, after + 2).lower() == "half":
        cursor.at += 2
    if cursor.at > first + 1 and cursor.means not in (",", "and", "then"):
        raise UnreadableError(first, "step")
