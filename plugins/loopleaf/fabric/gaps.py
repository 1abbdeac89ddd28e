"""`in each sp across` over groups without chains between them: the gaps between the groups are meant."""

from ..notation.tree import Each, Next, Span, Target
from ..notation.tree import Place as NamedPlace
from .hand import Hand
from .inside import has_groups, same_group
from .seek import Into, number
from .worked import Space

_SPACE = Target("space")


def in_gaps(hand: Hand, place: NamedPlace, span: Span | None) -> list[Into] | None:
    """The gaps that a bare `sp` names; None where the edge has spaces of chains, or has no groups."""
    edge = hand.edge
    match place:
        case Next(count=count, target=target) if target == _SPACE:
            wanted = number(hand, count)
        case Each(targets=(target,), every=1, until=until) if target == _SPACE and until.kind == "end":
            wanted = len(edge.places)  # as many as there are
        case _:
            return None
    if any(isinstance(one, Space) for one in edge.places) or not has_groups(edge):
        return None
    hand.leaf = None
    found: list[Into] = []
    while len(found) < wanted and (at := _next_gap(hand)) >= 0:
        beyond = edge.places[(at + 1) % len(edge.places)]
        hand.gaps = True
        hand.use(at, at + 1, edge.places[at])
        found.append((edge.places[at], beyond))
    if not found or (isinstance(place, Next) and len(found) < wanted):
        raise hand.stuck("works-past-the-end", span, needed=wanted, available=len(found), what="group")
    return found


def _next_gap(hand: Hand) -> int:
    """The last stitch before the next gap: it ends a group, and no lone edge stitch follows. -1 for none."""
    edge = hand.edge
    places = edge.places
    end = edge.limit if edge.circle else min(edge.limit, len(places) - 2)
    for at in range(edge.pos if hand.gaps else max(edge.pos - 1, 0), end):
        ends = at + 1 == len(places) or not same_group(places[at], places[at + 1])
        if at and ends and same_group(places[at - 1], places[at]):
            return at
    return -1
