"""Reads chains passed at a row's start that count as a stitch: `sk 3 chs (counts as dc), dc in next ch`."""

from dataclasses import replace

from .asides import read_counts_aside
from .counting import minus_one
from .cursor import Cursor, UnreadableError
from .targets import CHAIN
from .tree import ONE, CountsAs, Each, FromHook, Group, Next, Repeat, Skip, Step, Work


def read_skipped_chains(cursor: Cursor, steps: list[Step]) -> None:
    """`sk 3 chs (counts as dc), dc in next ch`: `dc in 4th ch from hook (skipped chs count as dc)`."""
    first = cursor.at
    skip = steps[-1]
    counts = replace(read_counts_aside(cursor), skipped=True)
    cursor.need(",", "counts-as")
    cursor.read_step(cursor, steps)
    if not isinstance(skip, Skip) or len(steps) != 2 or skip.count.varies:
        raise UnreadableError(first, "counts-place", cursor.words[first].value)
    begun = _begun(steps[-1], FromHook((skip.count.of(0) or 0) + 1), counts)
    if not begun:
        raise UnreadableError(first, "counts-place", cursor.words[first].value)
    steps[:] = begun


def _begun(step: Step, place: FromHook, counts: CountsAs) -> list[Step]:
    """The step with its first stitch in that chain, and what is left of it; [] where it begins otherwise.

    A repeat is worked once from there, then as it says.
    """
    if isinstance(step, Repeat):
        once = _begun(step.steps[0], place, counts)
        if not once or len(step.steps) == 1:
            return once and [*once, step]
        if step.times is not None and (step.times.varies or step.unclear):
            return []
        times = None if step.times is None else minus_one(step.times)
        return [*once, *step.steps[1:], replace(step, times=times)]
    if not isinstance(step, Work | Group):
        return []
    match step.places:
        case (Next(count=count, target=target), *rest) if target == CHAIN and count == ONE:
            after = tuple(rest)
        case (Next(count=count, target=target) as run, *rest) if target == CHAIN and not count.varies:
            after = (replace(run, count=minus_one(count)), *rest)
        case (Each(targets=targets), *_) if targets == (CHAIN,):
            after = step.places
        case _:
            return []
    begun: list[Step] = [replace(step, places=(place,), counts=counts)]
    return [*begun, replace(step, places=after)] if after else begun
