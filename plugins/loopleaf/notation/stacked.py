"""Reads chains of several rows that lie one above the other: `sc around both ch-5 sps`, `over all 3 ch-5
loops`.
"""

from .cursor import Cursor, UnreadableError
from .targets import read_counted_target
from .tree import ONE, Next
from .untils import stacked_at


def read_stacked(cursor: Cursor) -> Next | None:
    """The place behind `over` or `around`; None (and nothing passed) where no such chains are named."""
    first = cursor.at
    number, at = stacked_at(cursor, first + 1)
    if cursor.means not in ("over", "around") or not number:
        return None
    cursor.at = at
    try:
        amount, target = read_counted_target(cursor)
    except UnreadableError:
        amount, target = ONE, None
    if amount is not None or target is None or target.kind not in ("space", "loop"):
        cursor.at = first
        return None
    return Next(ONE, target, stacked=number, span=cursor.span(first))
