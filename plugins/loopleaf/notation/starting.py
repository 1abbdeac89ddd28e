"""Reads where a row's first stitch goes, told by itself: `starting in 2nd ch from hook, sc in each
ch across`, `4 sc starting in 2nd ch from hook`.
"""

from dataclasses import replace

from .counting import minus_one
from .cursor import Cursor, UnreadableError
from .leaning import over_several
from .place_kinds import read_place
from .targets import CHAIN
from .tree import (
    ONE,
    STITCH,
    Amount,
    Chain,
    Each,
    FromHook,
    Next,
    Over,
    Place,
    Repeat,
    Same,
    Step,
    Stitch,
    Work,
)


def read_starting(cursor: Cursor, steps: list[Step]) -> None:
    """`starting in 2nd ch from hook, sc in each ch across`, `…, sc in next 7 chs`: there first, then on.

    `ch 1, starting in same st, *…; rep from * around` says only what the chain says too.
    """
    first = cursor.at
    cursor.at += 1
    cursor.need("in", "step")
    place = read_place(cursor)
    cursor.need(",", "step")
    cursor.read_step(cursor, steps)
    work = steps[-1]
    match place, work:
        case Same() | FromHook(), Work(
            stitch=Stitch(form="tog", number=legs), each=Amount(sizes=(1,)), places=(Over(),)
        ):
            target = CHAIN if isinstance(place, FromHook) else STITCH
            over = (place, Next(Amount((legs - 1,)), target))
            steps[-1] = over_several(work.stitch, over, cursor.span(first)) or work
            return
        case (Same(), Repeat(star=True)) if len(steps) > 1 and _stands_on_none(steps[-2]):
            return  # the first stitch goes there in any case
        case ((FromHook() | Same()), Work(places=(Each(), *rest) as places)):
            pass
        case Same(), Work(places=(Next(count=count, target=target), *rest)) if target == STITCH:
            places = (Next(minus_one(count)), *rest) if count != ONE else tuple(rest)
        case FromHook(), Work(places=(Next(count=count, target=target), *rest)) if target in (STITCH, CHAIN):
            places = (Next(minus_one(count), CHAIN), *rest) if count != ONE else tuple(rest)
        case _:
            raise UnreadableError(first, "step")
    steps[-1] = replace(work, places=(place, *places), span=cursor.span(first))


def _stands_on_none(step: Step) -> bool:
    """Whether the chain before it counts as no stitch: `ch 1`, `ch 2 (does not count)`."""
    if not isinstance(step, Chain):
        return False
    return step.length == ONE if step.counts is None else step.counts.stitch is None


def read_begun_at(cursor: Cursor, amount: Amount | None) -> tuple[Place, ...]:
    """`starting in 2nd ch from hook` behind a number of stitches: one there, and one in each chain behind it;
    () (and nothing passed) where that isn't said.
    """
    first = cursor.at
    if amount is None or cursor.means not in ("foundation", "beg") or cursor.ahead() != "in":
        return ()
    cursor.at += 2
    place = read_place(cursor)
    if not isinstance(place, FromHook):
        cursor.at = first
        return ()
    return (place,) if amount == ONE else (place, Next(minus_one(amount), CHAIN))
