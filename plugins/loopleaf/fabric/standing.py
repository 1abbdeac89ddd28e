"""A space named without `next` where the hook stands in one: `ch 3, (2 dc, ch 2, 3 dc) in corner sp`."""

from dataclasses import replace
from typing import TypeVar

from ..notation.tree import ONE, Group, Next, Same, Work
from .hand import Hand
from .worked import Space

_Step = TypeVar("_Step", Work, Group)


def where_it_stands(hand: Hand, step: _Step) -> _Step:
    """The step, its space said to be the same where the beginning chain right before it stands in that."""
    edge = hand.edge
    standing = hand.standing
    if not isinstance(standing, Space) or not hand.stood or hand.numbered != 1 or edge.pos != 1:
        return step
    match step.places:
        case (Next(count=count, target=target, unsaid=True, piece="", below=0),) if count == ONE:
            if edge.places[0] is standing and edge.matches(standing, target):
                there = replace(step, places=(Same(target),))
                hand.settled[id(step)] = there
                return there
    return step
