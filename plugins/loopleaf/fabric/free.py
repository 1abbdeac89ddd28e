"""Loops of an earlier round that are free, because the next round went into the other loop alone."""

from collections import defaultdict
from dataclasses import replace

from ..notation.tree import STITCH, Each, FreeLoops, Next, Span
from .hand import Hand
from .worked import Made, Place

_OTHER = {"back": ("front",), "front": ("back",), "third": ("front", "back")}
"""Which loops stay free where a stitch goes into one alone."""


def working_in(hand: Hand, step: FreeLoops) -> None:
    """`working in free front loops of round 5`: the line goes on along those."""
    turn_to(hand, step.loop, step.round, step.span)


def along_free(hand: Hand, place: Next | Each, span: Span | None) -> Next | Each:
    """The place as one of the free loops' own edge, which the hand now stands at."""
    target = place.target if isinstance(place, Next) else place.targets[0]
    turn_to(hand, target.loop, target.round, span)
    return replace(place, target=STITCH) if isinstance(place, Next) else replace(place, targets=(STITCH,))


def turn_to(hand: Hand, loop: str, number: int, span: Span | None) -> None:
    """Lay the free loops before the hand as its edge, if they don't lie there already."""
    edge = hand.edge
    if hand.on_free:
        return
    if edge.pos and edge.rest():
        raise hand.stuck("stitches-left-over", span, left=edge.rest(), target="stitch")
    places = free_loops(hand, loop, number)
    if not places:
        raise hand.stuck("no-such-place", span, what="free loop", there=[])
    hand.on_free = True
    edge.lay(places)
    hand.standing = hand.last = None


def free_loops(hand: Hand, loop: str, number: int) -> list[Place]:
    """The stitches with that loop free, in the order that the hand now meets them.

    loop: "" for either. number: the round's, 0 for the last one that has any.
    """
    size = hand.setting.size
    taken: defaultdict[int, set[str]] = defaultdict(set)
    for at in range(len(hand.earlier) - 1, -1, -1):
        work = hand.earlier[at]
        worked = work.sizes[size]
        if worked is None:
            continue
        if number in (0, work.plan.number):
            found: list[Place] = [
                place for place in worked.edge if isinstance(place, Made) and _is_free(taken[id(place)], loop)
            ]
            if found or number:
                back = hand.setting.worked == "rows" and (hand.setting.index - at) % 2 == 1
                return found[::-1] if back else found
        for made in worked.made:
            if isinstance(made, Made) and made.role == "stitch":
                for place in made.into:
                    taken[id(place)].add(made.loop)
    return []


def _is_free(taken: set[str], loop: str) -> bool:
    free = {one for other in taken for one in _OTHER.get(other, ())} - taken
    return bool(free) and "" not in taken and loop in ("", *free)
