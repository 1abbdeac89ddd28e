"""Reads places that the line itself has just made, told by number: `2nd of these 3 tr`, `6th sc`."""

from .cursor import Cursor, UnreadableError, read_amount
from .targets import read_target
from .tree import STITCH, Amount, JustMade, Place, Target


def read_among_made(cursor: Cursor, number: int) -> JustMade | None:
    """The `of these 3 tr`, `of these tr`, `of 3 tr just made` behind `2nd`; None (nothing passed) where it
    isn't said.
    """
    first = cursor.at
    these = cursor.said(first + 1, first + 2).lower() in ("these", "those")
    cursor.at += 1 + these
    try:
        among = read_amount(cursor)
        target = read_target(cursor)
        among = among or (_so_many_before(cursor, first, target) if these else None)
    except UnreadableError:
        among = None
    made = among is not None and cursor.take("just-made")
    if among is None or among.varies or among.variable or not (these or made):
        cursor.at = first
        return None
    return JustMade(target, number, among.sizes[0] or 0)


def _so_many_before(cursor: Cursor, at: int, target: Target) -> Amount | None:
    """The `3` of `3 sc in next ch`, the step before: so many are `these sc`; None where that isn't one."""
    words = cursor.words
    while at and words[at].means != ",":
        at -= 1
    begins = at - 1
    while begins and words[begins - 1].means not in (",", "*", "(", ")"):
        begins -= 1
    said = words[begins].means == "num" and words[begins + 1].means == "stitch"
    same = said and words[begins + 1].value == target.stitch
    amount: Amount = words[begins].value
    return amount if same or (said and target == STITCH) else None


def read_marked_stitch(cursor: Cursor) -> Place | None:
    """`in 6th sc`, behind `place marker`: the row's own, counted from where it began; else None."""
    words, first = cursor.words, cursor.at
    if words[first].means not in ("in", "to") or words[first + 1].means != "ord":
        return None
    cursor.at += 2
    try:
        target = read_target(cursor)
    except UnreadableError:
        target = None
    cursor.take("just-made")
    if target is None or cursor.means in ("of", "from-hook"):
        cursor.at = first
        return None
    return JustMade(target, words[first + 1].value)
