"""Reads places told by a chain or by the join: `next ch of tch`, `turning ch-4 sp`, `base of first ch-8`,
`joining sl st`.
"""

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor
from .targets import CHAIN, SPACE, read_target, starts_named_number
from .tree import ONE, STITCH, Amount, JustMade, Last, Place, Same, Stitch, Target


def starts_own_chain(cursor: Cursor) -> bool:
    """Whether `tch`, `beg ch-3`, `beg corner` stands here."""
    own = cursor.means in ("tch", "beg", "turning") and starts_chain_name(cursor, cursor.at)
    return own or (cursor.means == "beg" and cursor.ahead() == "corner")


def read_own_chain(cursor: Cursor) -> Place:
    """`tch`, `beg ch-3`; `tch sp`, `turning ch-4 sp` is the row's last space; `beg corner` is the space that
    the beginning chain stands in."""
    if cursor.means == "beg" and cursor.ahead() == "corner":
        cursor.at += 1
        read_target(cursor)
        return Same(SPACE, "chain")
    turning = cursor.means in ("tch", "turning")
    chain = read_chain_name(cursor, 0)
    if turning and cursor.means in ("sp", "loop"):
        cursor.at += 1
        return Last(ONE, SPACE)
    return chain


def read_base(cursor: Cursor) -> Place:
    """`base of ch-3`: the stitch that the turning chain stands on; `base of first ch-8`: where the round
    began."""
    if not cursor.take("at-base"):
        cursor.at += 1
        cursor.need("of", "of-what")
    first = cursor.take("first")
    read_chain_name(cursor, 0)
    return Same(STITCH, "chain" if first else "")


def read_joining(cursor: Cursor) -> Place:
    """`joining sl st`: the place that it stands in; `joining dc`: that stitch, which closed the last arch."""
    if cursor.said(cursor.at, cursor.at + 1).lower() == "joining" and cursor.ahead() in (",", "end", ")"):
        cursor.at += 1
        return Same(STITCH, "join")  # `sc in joining`
    if cursor.ahead() not in ("stitch", "st"):
        raise cursor.fail("place")
    cursor.at += 1
    target = read_target(cursor)
    if target.stitch is None or target.stitch == Stitch("slip"):
        return Same(STITCH, "join")
    return JustMade(target)


def read_end_of_row(cursor: Cursor, amount: Amount | None, target: Target) -> Place | None:
    """`dc in next ch of tch, turn`: the row's last stitch goes into the chain's top; else None."""
    words, first = cursor.words, cursor.at
    if target != CHAIN or amount is not None or cursor.means != "of" or words[first + 1].means != "tch":
        return None
    cursor.at += 1
    chain = read_chain_name(cursor, 0)
    at = cursor.at
    while words[at].means in (",", "and", "then"):
        at += 1
    if words[at].means in ("end", "turn", "no-turn", "fasten-off"):
        return chain
    cursor.at = first
    return None


def pass_the_arch(cursor: Cursor, target: Target) -> bool:
    """`next 2 chs of lp`, `next ch of tch`, `first 3 chs of next ch-5 sp`: those are the next chains. Whether
    the arch is named, not only called one."""
    if target != CHAIN or cursor.means != "of":
        return False
    if cursor.ahead() in ("loop", "sp"):
        cursor.at += 2
        return False
    at = cursor.at
    cursor.at += 1 + (cursor.ahead() in ("next", "first"))
    if starts_chain_name(cursor, cursor.at):
        read_chain_name(cursor, 0)
        return True
    named = starts_named_number(cursor, cursor.at) or cursor.means == "ch"
    if named and read_target(cursor).kind == "space":
        return True
    cursor.at = at
    return False
