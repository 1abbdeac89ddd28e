"""Reads an edge that the author's own words name: `evenly across row ends`, `evenly around edge of brim`,
`evenly up edge working 20 sc`, `in each skipped dc around armhole`.
"""

from .cursor import Cursor, read_amount
from .names import read_stitch, starts_stitch
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
