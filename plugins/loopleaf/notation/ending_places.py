"""Reads where a repeat or a run ends, its last stitch not named again: `…, ending in top of tch`."""

from .cursor import Cursor, UnreadableError
from .places import read_places
from .tree import ChainOf, Last, Step, Work


def ending_place(cursor: Cursor, inside: tuple[Step, ...]) -> tuple[Step, ...]:
    """`rep from * across, ending in 3rd ch of tch`: the last stitch of the last pass goes there."""
    first = cursor.at
    last = next((one for one in reversed(inside) if isinstance(one, Work)), None)
    where = read_places(cursor)
    if last is None or len(where.places) != 1 or not isinstance(where.places[0], ChainOf | Last):
        raise UnreadableError(first, "step", first)
    return (Work(last.stitch, places=where.places, span=cursor.span(first)),)
