"""`in each sp across` over groups without chains between them: the gaps between the groups are meant."""

from ..notation.tree import Each, First, Last, Next, Span, Target, Until
from ..notation.tree import Place as NamedPlace
from .grouped import has_groups, last_gap, same_group
from .hand import Hand
from .seek import Into, number
from .worked import Made, Place, Space

_SPACE = Target("space")
_GAP = Target("gap")


def in_gaps(hand: Hand, place: NamedPlace, span: Span | None) -> list[Into] | None:
    """The gaps that a bare `sp` names; None where the edge has spaces of chains, or has no groups."""
    edge = hand.edge
    match place:
        case Next(count=count, target=target) if target in (_SPACE, _GAP):
            wanted = number(hand, count)
        case Last(count=count, target=target) if target == _SPACE and edge.circle and hand.gaps:
            wanted = number(hand, count)  # `in each of last 2 sps` of a round
        case First(target=target) | Last(target=target) if target == _SPACE:
            return _end_gap(hand, isinstance(place, First))
        case Each(targets=(target,), every=1, until=Until(kind="end")) if target in (_SPACE, _GAP):
            wanted = len(edge.places)  # as many as there are
        case _:
            return None
    spaced = any(isinstance(one, Space) or getattr(one, "role", "") == "loop" for one in edge.places)
    if target == _GAP and spaced:
        return _between_groups(hand, wanted, isinstance(place, Next), span)
    round_again = edge.circle and edge.pos == len(edge.places) and (hand.since == 1 or _is_free(hand))
    here = 0 < edge.pos < edge.limit or round_again
    if target == _GAP and not has_groups(edge) and isinstance(place, Next) and here:
        hand.gaps = True  # among single stitches: the gap that the hook stands before
        hand.since = 0
        hand.last = edge.places[edge.pos - 1]
        return [(edge.places[edge.pos - 1], edge.places[edge.pos % len(edge.places)])]
    if spaced or not has_groups(edge):
        return None
    hand.leaf = None
    if target == _SPACE and isinstance(place, Next) and wanted == 1 and _stands_beside_a_gap(hand):
        hand.gap_open = True
        if hand.setting.reading.gap:
            return _end_gap(hand, True)
    found: list[Into] = []
    while len(found) < wanted and (at := _next_gap(hand)) >= 0:
        beyond = edge.places[(at + 1) % len(edge.places)]
        hand.gaps = True
        hand.use(at, at + 1, edge.places[at])
        found.append((edge.places[at], beyond))
    if not found or (isinstance(place, Next | Last) and len(found) < wanted):
        raise hand.stuck("works-past-the-end", span, needed=wanted, available=len(found), what="group")
    return found


def _is_free(hand: Hand) -> bool:
    """Whether a round that has come to its last stitch hasn't yet gone into the gap behind it, the first
    stitch's other side: `*FPdc around next dc, dc in sp before next dc`."""
    last = hand.edge.places[-1]
    between = (last, hand.edge.places[0])
    return hand.last is last and all(getattr(one, "into", ()) != between for one in hand.made)


def ends_beside_the_start(hand: Hand) -> bool:
    """Whether a round that began in a gap has come so near to it that what is left,
    with the stitch before that gap, is what each pass skips: `*sk 2 dc, 2 dc in sp before next dc`."""
    edge = hand.edge
    if not edge.circle or not hand.gaps:
        return False
    first = next((one for one in hand.new if isinstance(one, Made)), None)
    begun = first is not None and len(first.into) > 1 and first.into[0] is edge.places[0]
    return begun and edge.rest() > 0 and hand.skips == {edge.rest() + 1}


def _stands_beside_a_gap(hand: Hand) -> bool:
    """Whether a row has only begun, with a chain that counts, beside the gap before its first group."""
    edge = hand.edge
    begun = hand.stood and edge.pos == hand.numbered == 1 and not edge.circle
    return begun and not same_group(edge.places[0], edge.places[1])


def _end_gap(hand: Hand, first: bool) -> list[Into] | None:
    """The gap between a row's edge stitch and its first or last group; None where there is none."""
    edge = hand.edge
    at = 0 if first else last_gap(edge)
    if last_gap(edge) < 0 or (edge.pos > 1 if first else edge.pos > at + 1):
        return None
    hand.gaps = True
    if edge.pos <= at:
        hand.use(at, at + 1, edge.places[at])
    hand.last = edge.places[at]
    return [(edge.places[at], edge.places[at + 1])]


def _between_groups(hand: Hand, wanted: int, exactly: bool, span: Span | None) -> list[Into]:
    """The next places between groups, where some have chains there and some have none."""
    edge = hand.edge
    found: list[Into] = []
    while len(found) < wanted:
        gap = _next_gap(hand)
        space = next((i for i in range(edge.pos, edge.limit) if _parts_groups(edge.places[i])), -1)
        if space >= 0 and (gap < 0 or space <= gap + 1):
            hand.use(space, space + 1, edge.places[space])
            found.append((edge.places[space],))
        elif gap >= 0:
            hand.gaps = True
            hand.use(gap, gap + 1, edge.places[gap])
            found.append((edge.places[gap], edge.places[(gap + 1) % len(edge.places)]))
        else:
            break
    if not found or (exactly and len(found) < wanted):
        raise hand.stuck("works-past-the-end", span, needed=wanted, available=len(found), what="group")
    return found


def _parts_groups(place: Place) -> bool:
    return isinstance(place, Space) and not place.corner


def _next_gap(hand: Hand) -> int:
    """The last stitch before the next gap: it ends a group, and no lone edge stitch follows. -1 for none."""
    edge = hand.edge
    places = edge.places
    end = edge.limit if edge.circle else min(edge.limit, len(places) - 2)
    at_hand = not hand.gaps or hand.since  # `sk 2 dc, 2 dc in sp before next dc`: the gap that was come to
    for at in range(max(edge.pos - 1, 0) if at_hand else edge.pos, end):
        ends = not same_group(places[at], places[(at + 1) % len(places)])
        if at and ends and same_group(places[at - 1], places[at]):
            return at
    return -1
