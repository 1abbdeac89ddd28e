"""Stitches worked into a round further down, from where the hook is: spikes, long stitches, the loops behind
a flap."""

from ..notation.tree import STITCH, Amount, Next, Span, Target
from .earlier import lay_round
from .hand import Hand
from .seek import Into, find_next, missing, take
from .worked import Made, Place, Space


def further_down(hand: Hand, place: Next, count: int, span: Span | None) -> list[Into]:
    """Stitches worked into a round further down; each uses up the stitch that it stands in front of, or the
    chain space that it was said to be worked around."""
    if hand.setting.reading.deep and not place.skipped:
        lay_round(hand, hand.setting.index - place.below, place.target, span)
        return take(hand, find_next(hand, place.target, count, span))
    hand.goes_deep = True
    found: list[Into] = []
    over, hand.over = hand.over, []
    around: list[Into] = [(space,) for space in over if isinstance(space, Space)]
    in_front = place.target
    if place.skipped:
        in_front = Target("space")
    elif in_front.stitch is not None and hand.edge.find(in_front, 0) is None:
        in_front = STITCH  # `next dc 2 rows below` behind a row of sc: the kind is said of what lies below
    for into in around or take(hand, find_next(hand, in_front, count, span)):
        deep = into[0]
        for _ in range(place.below - 1):
            if not isinstance(deep, Made | Space) or not deep.into:
                raise hand.stuck("no-such-place", span, what="rounds below", there=[])
            deep = deep.into[0]
        if in_front is not place.target and not hand.edge.matches(deep, place.target):
            raise missing(hand, place.target, count, len(found), span)
        found.append((deep,))
    return found


def free_beneath(hand: Hand, free: list[Place], count: int, span: Span | None) -> list[Into]:
    """The free loops of an earlier round that lie beneath the next stitches, which they use up: a mouth or an
    eyelid is passed behind. free: all free loops of that round."""
    below = hand.setting.index - free[0].round
    beneath = further_down(hand, Next(Amount((count,)), below=below), count, span)
    if not {id(into[0]) for into in beneath} <= set(map(id, free)):
        raise hand.stuck("no-such-place", span, what="free loop", there=[])
    return beneath


def stacked_spaces(hand: Hand, place: Next, span: Span | None) -> list[Into]:
    """`around both ch-5 sps`: the next such space, and those of the rows before that it stands over."""
    spaces: list[Place] = [take(hand, find_next(hand, place.target, 1, span))[0][0]]
    while len(spaces) < place.stacked:
        over = spaces[-1].into if isinstance(spaces[-1], Space) else ()
        beneath = next((one for one in over if isinstance(one, Space)), None)
        if beneath is None or place.target.length not in (0, beneath.chains):
            raise missing(hand, place.target, place.stacked, len(spaces), span)
        spaces.append(beneath)
    return [tuple(spaces)]
