"""Reads a place told before what goes into it: `in next ch-3 sp work (dc, ch 1, dc)`, `in each ch-sp around
make sc, 3 dc, sc`.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .group_loops import in_loop
from .places import Where, read_places
from .repeats import inside_of, read_times
from .tree import Chain, Group, Here, Repeat, Step, Work

_SENTENCE_ENDS = frozenset({";", "."})


def read_place_first(cursor: Cursor, steps: list[Step]) -> None:
    """The finger is on the `in`. A comma may part the place from what goes into it where `work` says so."""
    first = cursor.at
    unread = len(cursor.unread)
    try:
        where = read_places(cursor)
    except UnreadableError:
        raise UnreadableError(first, "step") from None
    comma = cursor.take(",")
    told = cursor.take("working")
    if told:
        cursor.take(",")
    if cursor.means == "(":
        inside = _bracketed(cursor, told or not comma)
    else:
        inside = _listed(cursor) if told or not comma else ()
    if len(cursor.unread) > unread:
        return
    if not inside or not where.places or where.through:
        raise UnreadableError(first, "step", first)
    steps.append(_put(in_loop(inside, where.loop) if where.loop else inside, where, cursor, first))


def _put(inside: tuple[Step, ...], where: Where, cursor: Cursor, first: int) -> Step:
    match inside:
        case (Work(places=(Here(),)) as work,):
            return replace(work, places=where.places, span=cursor.span(first))
    return Group(inside, where.places, span=cursor.span(first))


def _bracketed(cursor: Cursor, repeats: bool) -> tuple[Step, ...]:
    """`(dc, ch 1, dc)`, and `(dc, ch 1) 3 times` where all of that goes into the place."""
    first = cursor.at
    close: int = cursor.words[first].value
    inside = inside_of(cursor, first + 1, True)
    cursor.at = close + 1
    times = read_times(cursor)
    if times is not None:
        inside = (Repeat(inside, times, span=cursor.span(first)),) if repeats else ()
    return inside


def _listed(cursor: Cursor) -> tuple[Step, ...]:
    """`sc, 3 dc, sc` up to a full stop, a semicolon, or a step with a place of its own. A chain behind the
    last stitch lies between this place and the next.
    """
    inside: list[Step] = []
    after, last = cursor.at, 0
    keep, cursor.here = cursor.here, True
    try:
        while cursor.means not in ("end", ")", "rep", "*", "("):
            cursor.read_step(cursor, inside)
            one = inside[-1] if inside else None
            if isinstance(one, Work) and one.places == (Here(),):
                after, last = cursor.at, len(inside)
            elif not isinstance(one, Chain):
                break
            if cursor.said(cursor.at, cursor.at + 1) in _SENTENCE_ENDS:
                break
            while cursor.means in (",", "and", "then"):
                cursor.at += 1
    except UnreadableError:
        if not last:
            raise
    finally:
        cursor.here = keep
    cursor.at = after
    return tuple(inside[:last])
