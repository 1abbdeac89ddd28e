"""Reads an edge that the author's own words name: `evenly across row ends`, `evenly around edge of brim`,
`evenly up edge working 20 sc`, `in each skipped dc around armhole`.
"""

from .cursor import Cursor, read_amount
from .names import read_stitch, starts_stitch
from .targets import PARTS
from .tree import Amount, Stitch
from .untils import starts_until

_OF_AN_EDGE = frozenset({"?", "row", "edge", "foundation", "top", "base"})


def names_an_edge(cursor: Cursor) -> bool:
    """Whether `around brim`, `across row ends` stands here, with its first word passed; not `across` alone or
    `around to next corner`.
    """
    words, at = cursor.words, cursor.at
    if words[at].means not in ("around", "across", "over") or words[at + 1].means not in _OF_AN_EDGE:
        return False
    if words[at + 1].means == "row" and words[at + 2].means != "ending":
        return False
    cursor.at += 1
    return True


def side_of_a_part(cursor: Cursor, at: int) -> bool:
    """Whether `along side of heel flap`, `along other side of heel` stands at a word: an edge that isn't told
    from the others but by the part that it belongs to."""
    words = cursor.words
    if words[at].means != "along":
        return False
    at += 1 + (words[at + 1].means in ("first", "last", "next", "ord", "a"))
    return words[at].means in ("side", "other-side") and _past_the_part(cursor, at) > at


def pass_part(cursor: Cursor) -> None:
    """Passes `along side of heel flap`, `of leg`, `across instep`: the part that the places belong to."""
    at = cursor.at
    if cursor.means in ("along", "across", "around", "of", "in"):
        at += 1
        at += cursor.words[at].means in ("first", "last", "ord", "a")
        after = _past_the_part(cursor, at)
        if after > at:
            cursor.at = after


_SIDES = ("left", "right")


def _past_the_part(cursor: Cursor, at: int) -> int:
    """Where `side of heel flap`, `heel flap` ends; the same word where no part is named."""
    words, first = cursor.words, at
    if words[at].means in ("side", "other-side", "edge"):
        at += 1 + (words[at + 1].means == "edge")
        if words[at].means != "of":
            return first
        at += 1 + (words[at + 1].means == "a")
    at += words[at].means == "?" and cursor.said(at, at + 1).lower() in _SIDES  # `of left sleeve`
    begun = at
    while words[at].means == "?" and cursor.said(at, at + 1).lower() in PARTS:
        at += 1
    if at == begun:
        return first
    at += words[at].means in ("side", "edge")
    return at + (words[at].means == "st" and words[at + 1].means in (",", "end", ")"))


def read_number_behind(cursor: Cursor, stitch: Stitch) -> Amount | None:
    """`sc evenly up edge, working 20 sc`: the number said last; None (and nothing passed) where none is."""
    at = cursor.at
    cursor.take(",")
    cursor.take("for")
    working = cursor.take("working")
    amount = read_amount(cursor)
    if working and amount is not None and starts_stitch(cursor, cursor.at) and read_stitch(cursor) == stitch:
        return amount
    cursor.at = at
    return None


def read_round_the_opening(cursor: Cursor) -> None:
    """`around`, `around armhole` behind `in each skipped dc`: those are in any case the opening's."""
    if cursor.means not in ("around", "across"):
        return
    if cursor.ahead() == "?" and cursor.ahead(2) in (",", "end", ")"):
        cursor.at += 2
    elif starts_until(cursor, cursor.at):
        cursor.at += 1
