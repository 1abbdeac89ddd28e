"""The arch that a tall stitch closed the round below with, called by that stitch: `sc around post of dc`."""

from dataclasses import replace

from ..notation.tree import ONE, STITCH, JustMade, Next, Stitch, Target, Work
from .hand import Hand
from .worked import Made, Space


def around_the_closing(hand: Hand, step: Work) -> Work:
    """The step as one in that arch, where the round begins with it and no other stitch goes by the name."""
    match step:
        case Work(stitch=Stitch(post="around"), places=(Next(target=target) as place,)):
            if place == Next(ONE, target) and target != STITCH and _closed_with(hand, target):
                into = replace(step, places=(JustMade(target),))
                hand.settled[id(step)] = into
                return into
    return step


def _closed_with(hand: Hand, target: Target) -> bool:
    """Whether the hook stands in an arch whose far end is the stitch named."""
    edge = hand.edge
    below = hand.earlier[-1].sizes[hand.setting.size] if hand.earlier else None
    if below is None or edge.pos or not edge.places or not isinstance(edge.places[0], Space):
        return False
    last = below.made[-1] if below.made else None
    if not isinstance(last, Made) or last.role != "join" or edge.find(target, 0) is not None:
        return False
    return target.stitch is not None and last.kind == target.stitch.kind != "slip"
