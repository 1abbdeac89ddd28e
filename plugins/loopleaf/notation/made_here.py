"""Reads places that the line itself has just made, told by number: `2nd of these 3 tr`, `6th sc`."""

from .cursor import Cursor, UnreadableError, read_amount
from .targets import read_target
from .tree import JustMade, Place


def read_among_made(cursor: Cursor, number: int) -> JustMade | None:
    """The `of these 3 tr`, `of 3 tr just made` behind `2nd`; None (nothing passed) where it isn't said."""
    first = cursor.at
    these = cursor.said(first + 1, first + 2).lower() in ("these", "those")
    cursor.at += 1 + these
    try:
        among = read_amount(cursor)
        target = read_target(cursor)
    except UnreadableError:
        among = None
    made = among is not None and cursor.take("just-made")
    if among is None or among.varies or among.variable or not (these or made):
        cursor.at = first
        return None
    return JustMade(target, number, among.sizes[0] or 0)


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
