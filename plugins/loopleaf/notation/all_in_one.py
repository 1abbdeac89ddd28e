"""Reads a group that print writes without brackets: `2 dc, ch 2, 2 dc all in next ch-2 sp`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .places import read_places, starts_place
from .tree import ONE, Chain, ChainOf, First, Group, Join, Next, Repeat, Ring, Step, Stitch, Work


def read_all_in(cursor: Cursor, steps: list[Step]) -> None:
    """Gathers what stands before `all in …`, back to the last step that has a place of its own; a chain
    before the first stitch isn't part of it.
    """
    word = cursor.at
    if _into_the_ring(cursor, steps):
        cursor.at += 3
        steps[:] = [_in_ring(step) for step in steps]
        return
    first = len(steps)
    while first and _has_no_place(steps[first - 1]):
        first -= 1
    while first < len(steps) and isinstance(steps[first], Chain):
        first += 1
    one = steps[first] if len(steps) - first == 1 else None
    several = isinstance(one, Work) and isinstance(one.places[0], Next) and one.places[0].count != ONE
    if (len(steps) - first < 2 and not several) or not starts_place(cursor, word + 1):
        raise UnreadableError(word, "step", word)
    span = steps[first].span
    assert span is not None
    began = next(at for at, one in enumerate(cursor.words) if one.start >= span.start)
    inside = () if several else _read_here(cursor, began, word)
    cursor.at = word + 1
    where = read_places(cursor)
    if where.loop or where.post or where.through:
        raise UnreadableError(word + 1, "group-place", cursor.at - 1)
    match one:
        case Work(places=(Next(count=count),)):  # `5 dc all in same st`
            steps[first:] = [replace(one, each=count, places=where.places, span=cursor.span(began))]
            return
    steps[first:] = [Group(inside, where.places, span=cursor.span(began))]


def _into_the_ring(cursor: Cursor, steps: list[Step]) -> bool:
    """Whether `all in ring` says of a whole round with a repeat where its stitches go: none has a place but
    the slip stitch that joins it."""
    means = [cursor.ahead(1), cursor.ahead(2)]
    made = steps[:-1] if steps and _joins(steps[-1]) else steps
    inside = [one for step in made for one in (step.steps if isinstance(step, Repeat) else (step,))]
    repeats = any(isinstance(step, Repeat) for step in made)
    return means == ["in", "ring"] and repeats and all(map(_has_no_place, inside))


def _joins(step: Step) -> bool:
    match step:
        case Join() | Work(stitch=Stitch(kind="slip"), places=(ChainOf() | First(),)):
            return True
    return False


def _in_ring(step: Step) -> Step:
    match step:
        case Repeat():
            return replace(step, steps=tuple(map(_in_ring, step.steps)))
        case Work(each=each, places=(Next(count=count),)) if ONE in (each, count):
            return replace(step, each=each if count == ONE else count, places=(Ring(),))
    return step


def pass_all(cursor: Cursor) -> None:
    """The `all` of `(2 dc, ch 2, 2 dc) all in next st`, behind a comma too."""
    at = cursor.at + (cursor.means == ",")
    if cursor.words[at].means == "all" and starts_place(cursor, at + 1):
        cursor.at = at + 1


def _has_no_place(step: Step) -> bool:
    if isinstance(step, Chain):
        return True
    return isinstance(step, Work) and all(isinstance(one, Next) and one.span is None for one in step.places)


def _read_here(cursor: Cursor, first: int, end: int) -> tuple[Step, ...]:
    """The same words again, now as stitches of one place."""
    closing = cursor.words[end]
    means, here, cursor.here = closing.means, cursor.here, True
    closing.means = "end"
    cursor.at = first
    try:
        return tuple(cursor.read_block(cursor, ""))
    finally:
        closing.means, cursor.here = means, here
