"""Down the side of the piece itself, and on around it: a row worked into the ends of the rows before it, into
the other side of the chain that it began on, and up the other side."""

from ..notation.tree import Each, Evenly, First, Last, Next, Place, RowEnds, Target
from .around import row_end, ways
from .hand import Hand
from .worked import Made
from .worked import Place as MadePlace


def lay_own_side(hand: Hand, place: Place) -> None:
    """Lay the next stretch of the piece's own edge before the hand, where the line goes into it and nothing
    else lies before it any more.

    The first is the side where the hook is, from the last row down. A row that turns aside at its own end has
    its end there too, unless the reading leaves it out.
    """
    if hand.way_round is None:
        if _begins_a_side(hand, place):
            hand.way_round = _way_round(hand)
            _lay_next(hand)
    elif hand.way_round and _is_used_up(hand) and _is_in(place, hand.way_round[0]):
        _lay_next(hand)


def goes_on_below(hand: Hand) -> bool:
    """Whether `along other side of foundation ch` only says where the line has come to on its way around the
    piece; the chain is then laid before the hand."""
    edge = hand.edge
    if edge.sided and edge.pos < edge.limit and _is_chain(edge.places[edge.pos]):
        return True
    if not hand.way_round or not _is_used_up(hand):
        return False
    if _is_chain(hand.way_round[0][0]):
        _lay_next(hand)
    return True


def _begins_a_side(hand: Hand, place: Place) -> bool:
    edge = hand.edge
    named = isinstance(place, RowEnds) or (isinstance(place, Evenly) and place.along == "row ends")
    if not named or not hand.setting.rows or not hand.earlier or (hand.new and edge.rest()):
        return False
    return all(getattr(one, "role", "") != "row-end" for one in edge.places)


def _way_round(hand: Hand) -> list[list[MadePlace]]:
    """Down the side where the hook is, along the beginning, up the other side, and the corner beyond."""
    rows, size = hand.earlier, hand.setting.size
    gone = ways(rows)
    aside = hand.end_open = bool(hand.new)
    near = [(way == gone[-1]) == aside for way in gone]
    down = [row_end(row, at, size, first=near[at]) for at, row in enumerate(rows)]
    up = [row_end(row, at, size, first=not near[at]) for at, row in enumerate(rows)]
    own = [one for one in hand.new if isinstance(one, Made)]
    if own and not hand.setting.reading.without_end:
        down.append(_end_beside(own[-1], len(rows) + 1))
        up.append(_end_beside(own[0], len(rows) + 1))
    low = _beginning(hand)
    stretches: list[list[MadePlace]] = [
        [end for end in reversed(down) if end is not None],
        [*low] if near[0] else [*reversed(low)],
        [end for end in up if end is not None],
        [*own[:1]],
    ]
    return [stretch for stretch in stretches if stretch]


def _end_beside(made: Made, number: int) -> Made:
    return Made(made.kind, (made,), made.round, made.yarn, "row-end", number)


def _beginning(hand: Hand) -> list[Made]:
    """The other side of the chains that the first row stands on, in the order that it was worked."""
    first = hand.earlier[0].sizes[hand.setting.size]
    counted = [one for one in first.made if isinstance(one, Made) and one.number] if first is not None else []
    used = {below.number for made in counted for below in made.into if isinstance(below, Made)}
    standing = any(made.role == "turning" and not made.into for made in counted)
    chains = [one for one in hand.other_side if isinstance(one, Made)]
    return [one for one in chains if used and min(used) - standing <= one.number <= max(used)]


def _lay_next(hand: Hand) -> None:
    assert hand.way_round
    stretch = hand.way_round.pop(0)
    ends = () if _is_row_end(stretch[0]) else (stretch[0], stretch[-1])
    hand.edge.lay(stretch, frozenset(map(id, ends)))
    hand.standing = hand.last = None


def _is_used_up(hand: Hand) -> bool:
    """Whether nothing is left before the hand but the end of the row in work, which print may leave out."""
    edge = hand.edge
    return edge.rest() == 0 or (edge.rest() == 1 and _is_row_end(edge.places[edge.pos]))


def _is_in(place: Place, stretch: list[MadePlace]) -> bool:
    """Whether a line's place is one of the stretch's kind."""
    if isinstance(place, RowEnds | Evenly):
        return _is_row_end(stretch[0]) and (isinstance(place, RowEnds) or place.along == "row ends")
    if not isinstance(place, Each | Next | First | Last):
        return False
    target: Target = place.targets[0] if isinstance(place, Each) else place.target
    if target.kind == "corner":
        return not _is_row_end(stretch[0])
    return target.kind == "chain" and _is_chain(stretch[0])


def _is_row_end(place: MadePlace) -> bool:
    return isinstance(place, Made) and place.role == "row-end"


def _is_chain(place: MadePlace) -> bool:
    return isinstance(place, Made) and place.role == "foundation"
