"""Places of another piece, which is finished: `in next 12 sts of leg 2`, `in each st around leg 1`."""

from ..notation.tree import Each, Next, Span
from .edge import Edge
from .hand import Hand
from .seek import Into, describe
from .worked import Made, Place


def of_piece(hand: Hand, place: Next, count: int, span: Span | None) -> list[Into]:
    """`in next 12 sts of leg 2`, `of next flag`: places of a finished piece, in order; none of this edge."""
    name = place.piece.removeprefix("next ")
    if name != place.piece:  # the next copy of it, from its first place on
        hand.other_pos[name] = 0
    other = _edge_of(hand, name, span)
    at = hand.other_pos.get(name, 0)
    if at and other.count(at, other.limit) < count and _only_joined(hand, other.places[at - 1]):
        at -= 1
    found: list[Into] = []
    for _ in range(count):
        one = other.find(place.target, at)
        if one is None and other.find(place.target, 0) is None:
            what, there = describe(place.target), other.describe()
            raise hand.stuck("no-such-place", span, what=what, there=there, piece=name)
        if one is None:
            raise hand.stuck("works-past-the-end", span, needed=count, available=len(found), what="piece")
        found.append((one.place,))
        at = one.after
    hand.other_pos[name] = at
    hand.last = found[-1][0] if found else hand.last
    return found


def each_of_piece(hand: Hand, place: Each, span: Span | None) -> list[Into]:
    """`in each st around leg 1`: all its places of this kind that the round hasn't gone into."""
    target = place.targets[0]
    other = _edge_of(hand, place.piece, span)
    at = hand.other_pos.get(place.piece, 0)
    if at and _only_joined(hand, other.places[at - 1]):
        hand.other_pos[place.piece] = at = at - 1
    left = 0
    while (one := other.find(target, at)) is not None:
        left, at = left + 1, one.after
    return of_piece(hand, Next(target=target, piece=place.piece), max(left, 1), span)


def lies_here(hand: Hand, piece: str) -> bool:
    """Whether the next place on the edge is one of another piece's: what a flap begun on that left of it."""
    edge = hand.edge
    there = hand.setting.others.get(piece, [])
    return edge.pos < edge.limit and any(one is edge.places[edge.pos] for one in there)


def _edge_of(hand: Hand, name: str, span: Span | None) -> Edge:
    """The finished edge of a piece, or of the piece that this is a copy of (`leg 2` of `leg`)."""
    others = hand.setting.others
    places = others.get(name)
    if places is None and " " in name:
        places = others.get(name.rsplit(" ", 1)[0])
    if places is None:
        raise hand.stuck("no-such-place", span, what="piece", there=sorted(others))
    return Edge(places)


def _only_joined(hand: Hand, place: Place) -> bool:
    """Whether all that has gone into a place is the slip stitch just made, which joins to the piece."""
    last = next((one for one in reversed(hand.made) if isinstance(one, Made)), None)
    return last is not None and last.kind == "slip" and last.into == (place,)
