"""Reads where the last of a run goes: `dc in each st across, working last dc in top of tch`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .ending_places import ending_place
from .names import starts_stitch
from .omitting import pass_instead
from .stitching import read_work
from .tree import ONE, ChainOf, Each, Last, Repeat, Step, Until, Work


def starts_last_of_each(cursor: Cursor, at: int) -> bool:
    """Whether `last dc` stands there, of the stitches worked just before."""
    return cursor.words[at].means == "last" and starts_stitch(cursor, at + 1)


def read_last_of_each(cursor: Cursor, steps: list[Step]) -> None:
    """The run goes to before the place named, its last stitch into that: `dc in each st to tch, dc in top of
    tch`, `dc in each st to last st, dc in last st`.
    """
    first = cursor.at
    if not starts_last_of_each(cursor, first):
        raise UnreadableError(first, "step", first)
    cursor.at += 1
    last: list[Step] = []
    read_work(cursor, last)
    _end_there(steps, last, first)


def read_where_it_ends(cursor: Cursor, steps: list[Step]) -> None:
    """`dc in each dc across, ending in top of tch`: the stitch isn't named again."""
    first = cursor.at
    _end_there(steps, list(ending_place(cursor, tuple(steps[-1:]))), first)


def _end_there(steps: list[Step], last: list[Step], first: int) -> None:
    """The run before, up to the place of the stitch that ends it."""
    match (*steps[-1:], *last):
        case (
            Work(each=each, places=(*before, Each(until=Until(kind="end"), every=1) as run)) as work,
            Work(places=(ChainOf() | Last() as place,)) as ends,
        ) if ends.stitch == work.stitch and ends.each == each == ONE:
            until = Until("to-last" if isinstance(place, Last) else "tch")
            steps[-1] = replace(work, places=(*before, replace(run, until=until)))
            steps.append(ends)
        case _:
            raise UnreadableError(first, "step", first)


def read_instead(cursor: Cursor, steps: list[Step]) -> None:
    """`3 dc in each sp across, working 2 dc instead of 3 dc in last sp`: the run goes to before it."""
    first = cursor.at
    pass_instead(cursor)
    last: list[Step] = []
    read_work(cursor, last)
    match (*steps[-1:], *last):
        case (
            Work(places=(*before, Each(targets=(target,), until=Until(kind="end"), every=1) as run)) as work,
            Work(places=(Last(target=end),)) as ends,
        ) if ends.stitch == work.stitch and end == target:
            steps[-1] = replace(work, places=(*before, replace(run, until=Until("to-last", target=target))))
            steps.append(ends)
        case (Repeat(until=Until(kind="end"), star=False, ending=()) as repeat, Work() as ends):
            steps[-1] = replace(repeat, ending=(ends,), star=True)
        case _:
            raise UnreadableError(first, "step", first)
