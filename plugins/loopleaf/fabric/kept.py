"""What an `each` leaves to the step behind it, because that step names it, or because a side ends."""

from dataclasses import replace

from ..notation.tree import (
    Chain,
    ChainOf,
    Each,
    Evenly,
    Group,
    Last,
    Next,
    Over,
    Repeat,
    RowEnds,
    Skip,
    Step,
    Until,
    Work,
)
from .edge import Edge
from .hand import Hand
from .seek import chain_at_the_end, number
from .worked import Made


def kept(hand: Hand, step: Step, follow: Step | None) -> int:
    """How many of the places at the end of the edge a step leaves alone."""
    return _chain_kept(hand, step, follow) or _sides_kept(hand, step, follow)


def before_the_last(hand: Hand, step: Step, follow: Step | None) -> Step:
    """`dc in each st across, 2 dc in last st`: without the last places, where that is the reading."""
    match step, _last_of(follow):
        case Work(places=(*before, Each(every=1, until=Until(kind="end")) as each)), Until() as until:
            hand.last_open = True
            if hand.setting.reading.last:
                return replace(step, places=(*before, replace(each, until=until)))
    return step


def _last_of(step: Step | None) -> Until | None:
    """Up to the places that a step calls the last ones; None where it calls none so."""
    match step:
        case Work(places=(Last() as last, *_)) | Group(places=(Last() as last, *_)):
            return Until("to-last", count=last.count, target=last.target)
        case Work(places=(Over(which="last") as over, *_)):
            return Until("to-last", count=over.count, target=over.target)
        case Skip(which="last"):
            return Until("to-last", count=step.count, target=step.target)
    return None


def before_the_last_space(hand: Hand, following: tuple[Step, ...]) -> int | None:
    """Where a round's repeat ends that `3 dc in last ch-1 sp` follows: before that space. None where what
    follows doesn't go into a last space first.
    """
    edge = hand.edge
    for one in following:
        match one:
            case Chain():
                continue
            case (
                Work(places=(Last(count=count, target=target), *_))
                | Group(places=(Last(count=count, target=target), *_))
            ):
                if not edge.circle or target.kind not in ("space", "loop", "corner"):
                    return None
                ones = [at for at in range(edge.pos, edge.limit) if edge.matches(edge.places[at], target)]
                wanted = number(hand, count)
                return ones[-wanted] if 0 < wanted <= len(ones) else None
        return None
    return None


def _chain_kept(hand: Hand, step: Step, follow: Step | None) -> int:
    """1 where `dc in each dc across, dc in top of tch` stops before the turning chain; else 0."""
    if not hand.setting.rows or hand.depth or not isinstance(step, Work) or not isinstance(follow, Work):
        return 0
    match step.places[-1:], follow.places[:1]:
        case (Each(targets=(target, *_), until=until),), (ChainOf(),) if not target.unworked:
            if until.kind == "to-last":  # `to last st, dc in top of tch`: that chain is the last
                return 0
            return hand.edge.limit - chain_at_the_end(hand)
        case (Last(),), (ChainOf(),):  # `dc in last dc, dc in top of tch`: the last one before it
            return hand.edge.limit - chain_at_the_end(hand)
    return 0


def ends_in_a_chain(edge: Edge) -> bool:
    """Whether an edge ends in a turning chain, which a row may name: `sk last dc, dc in top of tch`."""
    last = edge.places[-1] if edge.places else None
    return isinstance(last, Made) and last.role == "turning"


def into_chain(step: Step) -> bool:
    """Whether a step goes into a turning chain by that name."""
    match step:
        case Work(places=places) | Group(places=places):
            return any(isinstance(place, ChainOf) for place in places)
        case Repeat(ending=ending):
            return any(into_chain(one) for one in ending)
    return False


def _sides_kept(hand: Hand, step: Step, follow: Step | None) -> int:
    """Around a piece in rows `across` and `along edge` go to the end of one side: before its last corner
    where the step behind names that, else over it.
    """
    edge = hand.edge
    if not edge.sided or edge.pos >= edge.limit or not isinstance(step, Work | Group):
        return 0
    match step.places[-1:]:
        case (Each(until=until) | Evenly(until=until) | RowEnds(until=until, count=None),):
            if until.kind != "end" or until.word == "around":
                return 0
        case _:
            return 0
    at = edge.side_end()
    corner = at - 1
    if _names_corner(follow) and corner > edge.pos and id(edge.places[corner]) in edge.corners():
        at = corner
    return edge.limit - at


def _names_corner(step: Step | None) -> bool:
    return isinstance(step, Work | Group) and any(
        isinstance(place, Next) and place.target.kind == "corner" for place in step.places
    )
