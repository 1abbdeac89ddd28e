"""Reads places beside a stitch, not in it: `between next 2 sts`, `in sp between last and first groups`."""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor, UnreadableError
from .gap_ends import pass_the_same, read_gap_end
from .names import starts_stitch
from .targets import (
    BARE_SPACE,
    GAP,
    pass_between_groups,
    read_counted_target,
    read_target,
    starts_named_number,
    starts_target,
)
from .tree import ONE, Amount, Between, Each, Last, Next, Place, Target, Until
from .untils import read_until

_SECOND = 2


def read_between(cursor: Cursor) -> Place:
    """`between next 2 sts`."""
    if cursor.means == "between" and pass_between_groups(cursor):
        return Each((GAP,), read_until(cursor) or Until(word=""))
    cursor.need("between", "place")
    if _pass_the_chain(cursor) or _pass_the_first(cursor):
        return Between(first=True)
    if _pass_the_ends(cursor) or pass_the_same(cursor):
        return Next(ONE, GAP)
    chain = _pass_the_last(cursor)
    if chain:
        return Last(ONE, BARE_SPACE) if chain == "tch" else Next(ONE, GAP)
    end = read_gap_end(cursor)
    if end is not None:
        return end
    which = cursor.means
    if not cursor.take("first") and not cursor.take("any"):
        cursor.need("next", "between")
    amount, target = _neighbours(cursor)
    if amount != Amount((2,)):
        raise UnreadableError(cursor.at - 1, "between")
    return Between(target, which == "first", which == "any")


def _neighbours(cursor: Cursor) -> tuple[Amount | None, Target]:
    """`2 sts`, `two 2-dc groups`, `2 petals`."""
    if cursor.means == "num" and cursor.ahead() == "group-name":
        cursor.at += 2
        return cursor.words[cursor.at - 2].value, Target("group")
    return read_counted_target(cursor)


def _pass_the_ends(cursor: Cursor) -> bool:
    """`between last and first groups`: where the round below was joined."""
    words, at = cursor.words, cursor.at
    ends = {words[at].means, words[at + 2].means} == {"first", "last"} and words[at + 1].means == "and"
    if not ends or not (starts_target(cursor, at + 3) or starts_named_number(cursor, at + 3)):
        return False
    cursor.at += 3
    read_target(cursor)
    return True


def _pass_the_last(cursor: Cursor) -> str:
    """`between last dc and tch`: a row's last gap; `between beg ch-3 and last dc`: a round's.

    What the chain is called; "" (and nothing passed) where none of this is said.
    """
    at = cursor.at
    named = [_pass_an_end(cursor)]
    if cursor.take("and"):
        named.append(_pass_an_end(cursor))
    named.sort(key="last".__eq__)
    if len(named) > 1 and named[0] in ("tch", "chain") and named[1] == "last":
        return named[0]
    cursor.at = at
    return ""


def _pass_an_end(cursor: Cursor) -> str:
    """Passes `last dc`, `tch` or `beg ch-3` and says which of them it was; "" for neither."""
    if cursor.means == "last" and starts_target(cursor, cursor.at + 1):
        cursor.at += 1
        read_target(cursor)
        return "last"
    if starts_chain_name(cursor, cursor.at):
        return "tch" if read_chain_name(cursor, 0).chain == "tch" else "chain"
    return ""


def pass_before_the_chain(cursor: Cursor) -> bool:
    """`sp before tch`: the last one of the row."""
    before = cursor.ahead() == "in-front" and cursor.said(cursor.at + 1, cursor.at + 2).lower() == "before"
    if cursor.means != "sp" or not before or not starts_chain_name(cursor, cursor.at + 2):
        return False
    cursor.at += 2
    read_chain_name(cursor, 0)
    return True


def _pass_the_chain(cursor: Cursor) -> bool:
    """`between beg ch-3 and next dc`: the first gap of the round."""
    at = cursor.at
    if not starts_chain_name(cursor, at):
        return False
    read_chain_name(cursor, 0)
    if cursor.take("and") and (cursor.take("next") or cursor.take("first")):
        read_target(cursor)
        return True
    cursor.at = at
    return False


def _pass_the_first(cursor: Cursor) -> bool:
    """`between first and 2nd dc`, `between first dc and next group`."""
    words, at = cursor.words, cursor.at
    if words[at].means == "first" and starts_stitch(cursor, at + 1):
        cursor.at += 1
        read_target(cursor)
        if cursor.means == "and" and cursor.ahead() == "next":
            cursor.at += 2
            read_target(cursor)
            return True
        cursor.at = at
        return False
    if words[at].means != "first" or words[at + 1].means != "and" or words[at + 2].means != "ord":
        return False
    if words[at + 2].value != _SECOND:
        return False
    cursor.at += 3
    read_target(cursor)
    return True


def each_between(cursor: Cursor) -> tuple[Target, bool] | None:
    """The stitches of `in each sp between dc`, passed, or of `between the 2 dc of each pair` (and True: the
    next gap is the next pair's); None where neither is said.
    """
    words, at = cursor.words, cursor.at
    said = [word.means for word in words[at : at + 5]]
    if said[:1] == ["in"] and said[1:3] == ["sp", "between"]:
        at += 2
    if words[at].means == "between":
        pair = _of_each_pair(cursor, at)
        return None if pair is None else (pair, True)
    if said[:4] != ["in", "each", "sp", "between"] or said[4] not in ("st", "stitch"):
        return None
    cursor.at += 4
    return read_target(cursor), False


def _of_each_pair(cursor: Cursor, at: int) -> Target | None:
    """The stitches of `between the 2 dc of each pair`, passed; None where that isn't said."""
    words = cursor.words
    if words[at + 1].means != "num" or words[at + 1].value != Amount((_SECOND,)):
        return None
    if words[at + 2].means not in ("st", "stitch") or words[at + 3].means != "of":
        return None
    if words[at + 4].means != "each" or cursor.said(at + 5, at + 6).lower() not in _PAIRS:
        return None
    cursor.at = at + 2
    target = read_target(cursor)
    cursor.at = at + 6
    return target


_PAIRS = ("pair", "group", "v-st", "v-stitch")
