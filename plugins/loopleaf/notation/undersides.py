"""Reads chains said to be worked from below: `in each of 2 chs at underside of ch-2`, `in next 4 chs along
other side of ch-4`.
"""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor
from .piece_names import piece_at

_BELOW = frozenset({"underside", "bottom"})
OPENINGS = frozenset({"underarm", "thumb", "opening", "gap", "armhole", "thumbhole"})
"""What print calls an opening, and the chains over it."""


def pass_underside(cursor: Cursor) -> bool:
    """Passes `at underside of ch-2`, `along underside of underarm`, `at underarm`; whether it stands here."""
    at = cursor.at
    if cursor.means in ("at", "along", "in", "of", "across") and not piece_at(cursor, at + 1):
        after = at + 1
        while cursor.said(after, after + 1).lower() in OPENINGS:
            after += 1
        if after > at + 1:
            cursor.at = after
            return True
    if cursor.means in ("at", "along", "in") and cursor.ahead() == "other-side":
        return _pass_other_side(cursor)
    if cursor.means not in ("at", "along", "in") or cursor.said(at + 1, at + 2).lower() not in _BELOW:
        return False
    if cursor.ahead(2) != "of":
        return False
    cursor.at += 3
    if starts_chain_name(cursor, cursor.at):
        read_chain_name(cursor, 0)
    elif cursor.means == "ch" or cursor.said(cursor.at, cursor.at + 1).lower() in OPENINGS:
        cursor.at += 1
    else:
        cursor.at = at
    return cursor.at > at


def _pass_other_side(cursor: Cursor) -> bool:
    """`along other side of ch-4`: of a chain named by its length, as those over an opening are."""
    words, at = cursor.words, cursor.at + 3
    numbered = "num" in (words[at].means, words[at + 1].means)
    if cursor.ahead(2) != "of" or not numbered or not starts_chain_name(cursor, at):
        return False
    cursor.at = at
    read_chain_name(cursor, 0)
    return True
