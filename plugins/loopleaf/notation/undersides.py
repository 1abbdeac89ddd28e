"""Reads chains said to be worked from below: `in each of 2 chs at underside of ch-2`."""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor

_BELOW = frozenset({"underside", "bottom"})
_OPENINGS = frozenset({"underarm", "thumb", "opening", "gap", "armhole"})


def pass_underside(cursor: Cursor) -> bool:
    """Passes `at underside of ch-2`, `along underside of underarm`; whether it stands here."""
    at = cursor.at
    if cursor.means not in ("at", "along", "in") or cursor.said(at + 1, at + 2).lower() not in _BELOW:
        return False
    if cursor.ahead(2) != "of":
        return False
    cursor.at += 3
    if starts_chain_name(cursor, cursor.at):
        read_chain_name(cursor, 0)
    elif cursor.means == "ch" or cursor.said(cursor.at, cursor.at + 1).lower() in _OPENINGS:
        cursor.at += 1
    else:
        cursor.at = at
    return cursor.at > at
