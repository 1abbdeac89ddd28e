"""Two sorts of places in one walk: `sc in each dc and 2 sc in each ch-2 sp around`, as they come."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from loopleaf.notation.tree import Each, Group, Next, Step, Work

from .cells import Misfit
from .hand import Hand

Run = Callable[[Hand, Sequence[Step]], None]


Way = tuple[Work | Group, Each]


def in_one_walk(step: Step, rest: Sequence[Step]) -> tuple[Way, Way] | None:
    """A step and the next where both go all along the edge, and one of them doesn't say how far."""
    if not isinstance(step, Work | Group) or not rest or not isinstance(rest[0], Work | Group):
        return None
    match step.places, rest[0].places:
        case (Each(every=1) as one,), (Each(every=1) as other,):
            both_end = one.until.kind == other.until.kind == "end"
            unsaid = "" in (one.until.word, other.until.word)
            of_this_edge = not any(target.unworked for target in (*one.targets, *other.targets))
            if both_end and unsaid and of_this_edge and one.targets != other.targets:
                return (step, one), (rest[0], other)
    return None


def walk(hand: Hand, ways: tuple[Way, Way], run: Run) -> None:
    """Works both in the order of the edge; where a place is of both sorts (a corner), the latter has it."""
    bound = max((hand.bound(place.until) for _, place in ways if place.until.word), default=hand.limit)
    gone: set[int] = set()
    for at in range(hand.pos, bound):
        for way, (one, place) in enumerate(reversed(ways)):
            target = next((target for target in place.targets if hand.counts_for(target, at)), None)
            if target is not None and at >= hand.pos:
                run(hand, (replace(one, places=(Next(target=target),)),))
                gone.add(way)
                break
    if len(gone) < len(ways):
        raise Misfit("place", "there is nothing of one of the two sorts")
    hand.pass_to(bound)
