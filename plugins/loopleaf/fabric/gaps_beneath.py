"""The gap between two groups of an earlier round, beneath the one where the hook stands: a long stitch
between petals, `sc in sp between groups of round 2`."""

from ..notation.tree import Next, Span
from ..notation.tree import Place as NamedPlace
from .grouped import same_group
from .hand import Hand
from .seek import Into, number
from .worked import Made, Place, Space


def in_gap_beneath(hand: Hand, place: NamedPlace, span: Span | None) -> list[Into] | None:
    """It uses up nothing of this edge; None where no earlier round's gap is named."""
    if not isinstance(place, Next) or place.target.kind != "gap":
        return None
    if not place.target.round and place.below < 2:
        return None
    at = hand.setting.index - place.below
    if place.target.round:
        at = next((i for i, one in enumerate(hand.earlier) if one.plan.number == place.target.round), -1)
    there = hand.earlier[at].sizes[hand.setting.size] if 0 <= at < hand.setting.index else None
    if there is None:
        raise hand.stuck("no-such-place", span, what="rounds below", there=[])
    gap = _between(hand, at, there.edge)
    if gap is None or number(hand, place.count) != 1:
        raise hand.stuck("no-such-place", span, what="gap", there=[])
    hand.gap = gap
    hand.last = gap[0]
    return [gap]


def _between(hand: Hand, at: int, places: list[Place]) -> tuple[Place, Place] | None:
    """The end of one group and the beginning of the next, between what the stitches beside the hook stand
    in; None where they stand in one group, or more than one gap lies between them."""
    edge = hand.edge
    if not edge.circle and not 0 < edge.pos < len(edge.places):
        return None
    feet = [_foot(edge.places[one % len(edge.places)], at) for one in (edge.pos - 1, edge.pos)]
    ends = [next((i for i, one in enumerate(places) if one is foot), -1) for foot in feet]
    if -1 in ends or ends[0] == ends[1]:
        return None
    if hand.setting.worked == "rows" and ends[0] > ends[1]:
        ends.reverse()
    count = len(places)
    steps = (ends[1] - ends[0]) % count
    found = [
        (one, other)
        for i in range(ends[0], ends[0] + steps)
        if not same_group(one := places[i % count], other := places[(i + 1) % count])
        and not (isinstance(one, Space) and one.corner)
        and not (isinstance(other, Space) and other.corner)
    ]
    return found[0] if len(found) == 1 else None


def _foot(place: Place, at: int) -> Place | None:
    """What a place stands on in the round of that index."""
    while place.round > at:
        if not isinstance(place, Made | Space) or not place.into:
            return None
        place = place.into[-1]
    return place
