"""Reads the gaps at a row's two ends: `in sp between first st and next group`, `in sp between last group and
tch`.
"""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor
from .targets import read_target
from .tree import Between, Target

_OF_A_GROUP = frozenset({"st", "stitch", "group", "form", "special"})


def read_gap_end(cursor: Cursor) -> Between | None:
    """The gap named by what stands on either side, behind its `between`; None (and nothing passed) where it
    isn't so named. The last gap is the one behind the next group, where the hand has come to that.
    """
    at = cursor.at
    which = cursor.means
    if which in ("first", "last") and cursor.ahead() in _OF_A_GROUP:
        cursor.at += 1
        read_target(cursor)
        if cursor.take("and") and _pass_the_other(cursor):
            return Between(first=True) if which == "first" else Between(Target("group"))
    cursor.at = at
    return None


def _pass_the_other(cursor: Cursor) -> bool:
    """`next group`, `first group`, `last st`, `tch`, `beg ch-3`."""
    if starts_chain_name(cursor, cursor.at):
        read_chain_name(cursor, 0)
        return True
    if cursor.means not in ("next", "first", "last") or cursor.ahead() not in _OF_A_GROUP:
        return False
    cursor.at += 1
    read_target(cursor)
    return True
