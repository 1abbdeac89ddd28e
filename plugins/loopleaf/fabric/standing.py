"""A space named without `next` where the hook stands in one: `ch 3, (2 dc, ch 2, 3 dc) in corner sp`."""

from dataclasses import replace
from typing import TypeVar

from ..notation.tree import ONE, Group, Next, Same, Work
from .hand import Hand
from .worked import Made, Space

_Step = TypeVar("_Step", Work, Group)


def where_it_stands(hand: Hand, step: _Step) -> _Step:
    """The step, its space said to be the same where the beginning chain right before it stands in that, or
    the slip stitches have come into it."""
    edge = hand.edge
    standing = hand.standing
    slipped = isinstance(standing, Made) and standing.role == "loop" and not hand.numbered and not edge.pos
    stood = isinstance(standing, Space) and hand.stood and hand.numbered == 1 and edge.pos == 1
    if not slipped and not stood:
        return step
    match step.places:
        case (Next(count=count, target=target, unsaid=True, piece="", below=0),) if count == ONE:
            space = standing.into[0] if isinstance(standing, Made) else standing
            if edge.places[0] is standing and space is not None and edge.matches(space, target):
                there = replace(step, places=(Same(target),))
                hand.settled[id(step)] = there
                return there
    return step
