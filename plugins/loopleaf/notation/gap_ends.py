"""Reads the gaps at a row's two ends: `in sp between first st and next group`, `in sp between last group and
tch`, `in sp before first group`; and the one at hand, `between same dc and next dc`.
"""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor
from .names import starts_stitch
from .targets import read_target, starts_named_number
from .tree import Between, Target

_OF_A_GROUP = frozenset({"st", "stitch", "group", "form", "special"})


def read_gap_end(cursor: Cursor) -> Between | None:
    """The gap named by what stands on either side, behind its `between`; None (and nothing passed) where it
    isn't so named. The last gap is the one behind the next group, where the hand has come to that.
    """
    at = cursor.at
    which = cursor.means
    if which in ("first", "last") and _names_one(cursor, at + 1):
        cursor.at += 1
        read_target(cursor)
        if cursor.take("and") and _pass_the_other(cursor):
            return Between(first=True) if which == "first" else Between(Target("group"))
    cursor.at = at
    return None


def _names_one(cursor: Cursor, at: int) -> bool:
    """Whether a stitch or a group is named at a word, `group` or `3-dc group`."""
    return cursor.words[at].means in _OF_A_GROUP or starts_named_number(cursor, at)


def read_gap_beside(cursor: Cursor) -> Between | None:
    """`sp before first group`, `sp after last group`; None (and nothing passed) where it isn't so named."""
    first, words = cursor.at, cursor.words
    side = cursor.said(first + 1, first + 2).lower()
    end = {"before": "first", "after": "last"}.get(side, "")
    if words[first].means != "sp" or words[first + 2].means != end or not _names_one(cursor, first + 3):
        return None
    cursor.at += 3
    if read_target(cursor).kind != "group":
        cursor.at = first
        return None
    return Between(first=True) if end == "first" else Between(Target("group"))


def pass_the_same(cursor: Cursor) -> bool:
    """`same dc and next dc` behind `between`: the gap at hand."""
    at = cursor.at
    if cursor.means == "same" and starts_stitch(cursor, at + 1):
        cursor.at += 1
        read_target(cursor)
        if cursor.means == "and" and cursor.ahead() == "next" and starts_stitch(cursor, cursor.at + 2):
            cursor.at += 2
            read_target(cursor)
            return True
    cursor.at = at
    return False


def _pass_the_other(cursor: Cursor) -> bool:
    """`next group`, `first group`, `last st`, `tch`, `beg ch-3`."""
    if starts_chain_name(cursor, cursor.at):
        read_chain_name(cursor, 0)
        return True
    if cursor.means not in ("next", "first", "last") or not _names_one(cursor, cursor.at + 1):
        return False
    cursor.at += 1
    read_target(cursor)
    return True
