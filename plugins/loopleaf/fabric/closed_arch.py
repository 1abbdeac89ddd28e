"""The arch that a tall stitch closed the round below with, called by that stitch: `sc around post of dc`; and
that stitch's top, in which this round is closed as well: `ch 2, dc in top of dc`."""

from dataclasses import replace

from ..notation.tree import ONE, STITCH, JustMade, Next, Place, Same, Stitch, Target, Work
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


def on_the_closing(hand: Hand, place: Place) -> Same | None:
    """Where a round ends that began on the top of such a stitch and calls it by its name; None where another
    goes by that, or more of the round is left than the rest of the arch that it closed."""
    edge = hand.edge
    if not ends_on_the_closing(hand, place):
        return None
    left = edge.places[edge.pos : -1]
    if len(left) not in {0, *hand.runs} or not all(isinstance(one, Made) for one in left):
        return None
    edge.pos = edge.limit
    return Same(begun="join")


def ends_on_the_closing(hand: Hand, place: Place) -> bool:
    """Whether a round that goes on from the stitch it was joined to, the rest of its arch coming last, names
    that stitch."""
    edge = hand.edge
    match place:
        case Next(target=target) if hand.setting.reading.onward and place == Next(ONE, target):
            return isinstance(edge.places[-1], Space) and _is_closed_with(hand, target)
    return False


def _closed_with(hand: Hand, target: Target) -> bool:
    """Whether the hook stands in an arch whose far end is the stitch named."""
    edge = hand.edge
    begun = not edge.pos and bool(edge.places) and isinstance(edge.places[0], Space)
    return begun and _is_closed_with(hand, target)


def _is_closed_with(hand: Hand, target: Target) -> bool:
    """Whether the stitch named closed the round below, and no other of it goes by that name."""
    below = hand.earlier[-1].sizes[hand.setting.size] if hand.earlier else None
    last = below.made[-1] if below is not None and below.made else None
    if not isinstance(last, Made) or last.role != "join" or hand.edge.find(target, 0) is not None:
        return False
    return target.stitch is not None and last.kind == target.stitch.kind != "slip"
