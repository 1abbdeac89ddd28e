"""Petals: groups, and whole rounds in a ring, whose chains are alike at both ends."""

from ..notation.tree import Chain, FastenOff, Step, Stitch, Turn, Work
from ..notation.tree import Ring as InRing


def is_a_petal(steps: tuple[Step, ...]) -> bool:
    """`(ch 2, 3 dc, ch 2, sl st) in same st`: neither chain is a stitch."""
    match steps:
        case (Chain(counts=None, length=first), *_, Chain(length=last), Work(stitch=Stitch(kind="slip"))):
            return first == last
    return False


def is_one_in_a_ring(steps: tuple[Step, ...]) -> bool:
    """A heart in one round: `ch 3, 3 tr in ring, …, 3 tr in ring, ch 3, sl st in ring`."""
    while steps and isinstance(steps[-1], FastenOff | Turn):
        steps = steps[:-1]
    last = steps[-1] if steps else None
    return is_a_petal(steps) and isinstance(last, Work) and last.places in ((InRing(),), ())
