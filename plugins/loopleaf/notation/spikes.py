"""Spike stitches, worked into a round further down: `spike sc over next st 2 rows below`."""

from .cursor import Cursor, UnreadableError
from .places import Where
from .tree import Next


def read_over_as_in(cursor: Cursor, first: int) -> None:
    """`spike sc over next st`: it goes down in front of that stitch, and leans on no several."""
    one = cursor.ahead() in ("next", "st", "stitch")
    if cursor.means == "over" and one and _spike_at(cursor, first) >= 0:
        cursor.words[cursor.at].means = "in"


def need_depth(cursor: Cursor, first: int, named: int, where: Where) -> None:
    """A spike stitch goes into a round further down: which one has to be said. named: the word behind its
    name; `long` behind that is the edge's.
    """
    if any(isinstance(place, Next) and place.below for place in where.places):
        return
    at = _spike_at(cursor, first)
    if 0 <= at < named:
        raise UnreadableError(at, "spike", cursor.at - 1)


def _spike_at(cursor: Cursor, first: int) -> int:
    return next((at for at in range(first, cursor.at) if cursor.words[at].means == "spike"), -1)
