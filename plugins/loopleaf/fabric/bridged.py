"""A repeat `around` whose last gap belongs to what follows it: `…; rep from * around, ch 3, join`."""

from collections.abc import Callable
from itertools import takewhile

from ..notation.tree import (
    Chain,
    ChainOf,
    FastenOff,
    First,
    Join,
    Marker,
    Repeat,
    Same,
    Skip,
    Step,
    Tally,
    Turn,
    Work,
)
from .edge import Stuck
from .hand import Hand
from .seek import number
from .worked import Space

Perform = Callable[[Hand, tuple[Step, ...]], None]


def left_to_the_closing(hand: Hand, following: tuple[Step, ...], perform: Perform) -> bool:
    """Whether the closing steps take what a repeat in rounds has left of the edge.

    A skip behind the repeat takes what it names; without one, a last chain bridges such a run as the repeat
    itself skips.
    """
    if not hand.edge.circle or hand.depth != 1:
        return False
    closing = tuple(takewhile(lambda one: isinstance(one, Chain | Skip), following))
    if not closing or not all(_closes(one) for one in following[len(closing) :]):
        return False
    skips = tuple(one for one in closing if isinstance(one, Skip))
    if not skips:
        return hand.edge.rest() + hand.since in hand.skips
    before = hand.mark()
    try:
        perform(hand, skips)
        left = hand.edge.rest()
        return not left or left + hand.since in hand.runs
    except Stuck:
        return False
    finally:
        hand.back_to(before)


def skip_is_all_that_is_left(hand: Hand, step: Repeat, following: tuple[Step, ...]) -> bool:
    """`*sk next sc, sc in next sc, ch 3; rep from * around, join`: the last chain bridges the last that is
    skipped, for the stitch behind it is the round's first."""
    first = step.steps[0]
    if not hand.edge.circle or hand.depth != 1 or not isinstance(first, Skip) or first.which != "next":
        return False
    chained = bool(hand.made) and isinstance(hand.made[-1], Space)
    left = hand.edge.rest() + hand.since
    return chained and left == number(hand, first.count) and all(_closes(one) for one in following)


def _closes(step: Step) -> bool:
    """Steps that take nothing more of the edge: a join, by a stitch into the round's beginning too."""
    if isinstance(step, Work):
        return all(isinstance(place, First | Same | ChainOf) for place in step.places)
    return isinstance(step, Join | Turn | FastenOff | Marker | Tally)
