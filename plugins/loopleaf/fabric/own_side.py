"""Down the side of the piece itself, and on around it: a row worked into the ends of the rows before it, into
the other side of the chain that it began on, up the other side, and along the last row."""

from dataclasses import replace

from ..notation.tree import Each, Evenly, First, Last, Next, Place, RowEnds, Target
from .around import row_end, ways
from .hand import Hand
from .worked import Made
from .worked import Place as MadePlace


def lay_own_side(hand: Hand, place: Place) -> None:
    """Lay the next stretch of the piece's own edge before the hand, where the line goes into it and nothing
    else lies before it any more.

    The first is the side where the hook is, from the last row down. A row that turns aside at its own end has
    its end there too, unless the reading leaves it out. A line that begins in a corner, where its edge has
    none, has all of that before it at once.
    """
    if hand.way_round is None:
        if _begins_a_side(hand, place):
            hand.way_round = _way_round(hand)
            _lay_next(hand)
        elif begins_in_a_corner(hand, place):
            lay_all_around(hand)
    elif hand.way_round and _is_used_up(hand) and _is_in(place, hand.way_round[0]):
        _lay_next(hand)


def along_the_rest(hand: Hand, place: Place) -> Place:
    """The place as one of those that a flap left of its round, where the line has come to these: `in each of
    16 unworked sts of leg` is the next 16. Else as it is."""
    flap = hand.setting.flap
    if flap is None or not isinstance(place, Each | Next):
        return place
    if hand.way_round and _is_used_up(hand) and not _is_row_end(hand.way_round[0][0]):
        _lay_next(hand)
    edge = hand.edge
    if (
        hand.way_round is None
        or edge.pos >= edge.limit
        or not any(edge.places[edge.pos] is p for p in flap.left)
    ):
        return place
    if isinstance(place, Each):
        return replace(place, targets=tuple(replace(one, unworked=False, round=0) for one in place.targets))
    return replace(place, target=replace(place.target, unworked=False, round=0), piece="")


def left_of_flap(hand: Hand) -> int:
    """How many places around a flap the line doesn't come to, once it has left the flap's last row."""
    if hand.setting.flap is None or not hand.way_round:
        return 0
    return sum(map(len, hand.way_round))


def lay_all_around(hand: Hand) -> None:
    """The whole way around the piece, from the corner where the hook is and closed: the last row first, or,
    where the work wasn't turned, last."""
    top = hand.edge.places
    aside = not _is_unturned(hand)
    down, low, up = _sides(hand, aside)
    stretches = [top, down, low, up] if aside else [top[:1], down, low, up, top[:0:-1]]
    whole = [place for stretch in stretches for place in stretch]
    ends = [top[0], top[-1], *low[:1], *low[-1:]]
    hand.edge.lay(whole, frozenset(map(id, ends)))
    hand.edge.circle = True
    hand.way_round = []
    hand.standing = whole[0]


def goes_on_below(hand: Hand) -> bool:
    """Whether `along other side of foundation ch` only says where the line has come to on its way around the
    piece or an opening; the chain is then laid before the hand."""
    edge = hand.edge
    if edge.pos < edge.limit and getattr(edge.places[edge.pos], "role", "") == "loop":
        return True  # the chain over an opening
    if edge.sided and edge.pos < edge.limit and _is_chain(edge.places[edge.pos]):
        return True
    if not hand.way_round or not _is_used_up(hand):
        return False
    if _is_chain(hand.way_round[0][0]):
        _lay_next(hand)
    return True


def has_own_sides(hand: Hand) -> bool:
    """Whether the piece is in rows, and the hand stands on the edge of the last of them."""
    if not hand.setting.rows or not hand.earlier or hand.way_round is not None:
        return False
    return all(getattr(one, "role", "") != "row-end" for one in hand.edge.places)


def _begins_a_side(hand: Hand, place: Place) -> bool:
    if not isinstance(place, RowEnds | Evenly) or not has_own_sides(hand):
        return False
    if hand.new or isinstance(place, RowEnds) or place.along == "row ends":
        return not (hand.new and hand.edge.rest())
    return "side" in place.along.split() or _is_unturned(hand)


def begins_in_a_corner(hand: Hand, place: Place | None) -> bool:
    """Whether a line goes into a corner of its piece, all of whose last row is still before it."""
    if not isinstance(place, Next | First) or place.target.kind != "corner" or place.target.length:
        return False
    edge = hand.edge
    if hand.new or edge.pos or len(edge.places) < 2 or not has_own_sides(hand):
        return False
    return not edge.corners() and bool(_beginning(hand))


def _is_unturned(hand: Hand) -> bool:
    """Whether the hook is where the last row ended, and the work wasn't turned there."""
    below = hand.earlier[-1].sizes[hand.setting.size] if hand.earlier else None
    places = hand.edge.places
    ended = below is not None and bool(below.edge) and bool(places) and places[0] is below.edge[-1]
    return ended and not hand.setting.turned


def _way_round(hand: Hand) -> list[list[MadePlace]]:
    """Down the side where the hook is, along the beginning, up the other side, and what lies beyond: the
    corner that the row itself began in, or the last row."""
    aside = hand.end_open = bool(hand.new)
    down, low, up = _sides(hand, aside)
    own = [one for one in hand.new if isinstance(one, Made)] if hand.setting.flap is None else []
    if own and not hand.setting.reading.without_end:
        number = len(hand.earlier) + 1
        down, up = [_end_beside(own[-1], number), *down], [*up, _end_beside(own[0], number)]
    beyond: list[MadePlace] = [*own[:1]] if aside else hand.edge.places[::-1]
    return [stretch for stretch in (down, low, up, beyond) if stretch]


def _sides(hand: Hand, aside: bool) -> tuple[list[MadePlace], list[MadePlace], list[MadePlace]]:
    """The ends of the rows from the last one down, the beginning, and the other ends from the first row up.

    aside: from the far end of the row in work, not from where the last row ended.
    """
    size, flap = hand.setting.size, hand.setting.flap
    first = flap.begun if flap is not None else 0
    rows = hand.earlier[first:]
    gone = ways(rows)
    goes = gone[-1] != hand.setting.turned if aside else gone[-1]
    down = [row_end(row, first + at, size, first=gone[at] != goes) for at, row in enumerate(rows)]
    up = [row_end(row, first + at, size, first=gone[at] == goes) for at, row in enumerate(rows)]
    low: list[MadePlace] = [*_beginning(hand)] if flap is None else flap.left[::-1]
    along = low if gone[0] != goes else low[::-1]
    return [end for end in down[::-1] if end is not None], along, [end for end in up if end is not None]


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
    if isinstance(place, Evenly):
        return True
    if isinstance(place, RowEnds):
        return _is_row_end(stretch[0])
    if not isinstance(place, Each | Next | First | Last):
        return False
    target: Target = place.targets[0] if isinstance(place, Each) else place.target
    if target.kind == "corner":
        return not _is_row_end(stretch[0])
    if target.kind == "stitch" and len(stretch) > 1:
        return not _is_row_end(stretch[0])
    return target.kind == "chain" and _is_chain(stretch[0])


def _is_row_end(place: MadePlace) -> bool:
    return isinstance(place, Made) and place.role == "row-end"


def _is_chain(place: MadePlace) -> bool:
    return isinstance(place, Made) and place.role == "foundation"
