"""A place named without `next` where the hook is there already: `ch 3, (2 dc, ch 2, 3 dc) in corner sp`,
`sc in next 5 sts, 3 sc in center sc of 3-sc group`, whose first stitch is worked by then."""

from dataclasses import replace
from typing import TypeVar

from ..notation.tree import ONE, Group, Next, Same, Within, Work
from .edge import Stuck
from .groups import next_group, this_group
from .hand import Hand
from .worked import Made, Space

_Step = TypeVar("_Step", Work, Group)


def where_it_stands(hand: Hand, step: _Step) -> _Step:
    """The step, its space said to be the same where the beginning chain right before it stands in that, or
    the slip stitches have come into it; its group, where the hook is on the way to its middle."""
    edge = hand.edge
    match step.places:
        case (Within(part="centre", same=False, last=False) as place,) if _on_the_way(hand, place):
            begun = replace(step, places=(replace(place, same=True),))
            hand.settled[id(step)] = begun
            return begun
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


def _on_the_way(hand: Hand, place: Within) -> bool:
    """Whether the group last worked into has its middle still ahead, and is the one that is meant: which one
    isn't said, or there is no other."""
    if hand.last is None or place.of.kind in ("space", "chain"):
        return False
    try:
        start, group = this_group(hand, place.of, place.span)
    except Stuck:
        return False
    if start + len(group) // 2 < hand.edge.pos:
        return False
    if place.unsaid:
        return True
    try:
        next_group(hand, place.of, place.span)
    except Stuck:
        return not hand.depth
    return False
