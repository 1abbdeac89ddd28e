"""The author's own stitches: opened where they stand, and worked."""

from collections.abc import Callable

from ..notation.tree import ONE, Each, Next, Step, Stitch, Work
from .hand import Hand
from .places import resolve
from .seek import Into, bound, number
from .stitches import DEEPEST_OPENING, given_place, make, needs, picot_chains, said_at
from .worked import Place

Perform = Callable[[Hand, tuple[Step, ...]], None]


def own_stitch(hand: Hand, step: Work, each: int, perform: Perform) -> None:
    """One of the author's own stitches, opened and worked."""
    name = step.stitch.name
    line = said_at(hand.setting.specials[name], step.span)
    chains = picot_chains(line)
    if chains:
        picot = Stitch("chain", "picot", chains)
        for into in _picot_places(hand, step):
            for _ in range(each):
                make(hand, picot, into, step.span)
                hand.made[-1].special = name
        return
    wanted = needs(line)
    if wanted == "one":
        opened = given_place(line)
        for place in step.places:
            for into in resolve(hand, place, step.span):
                for _ in range(each):
                    _open(hand, name, opened.steps, into[0], perform)
        return
    passes = each
    for place in step.places:
        if isinstance(place, Each):
            end = bound(hand, place.until, step.span)
            while hand.edge.pos < end and hand.edge.count(hand.edge.pos, end):
                _open(hand, name, line.steps, None, perform)
            return
        if isinstance(place, Next) and place.count != ONE and wanted == "none":
            passes = number(hand, place.count)
    for _ in range(passes):
        _open(hand, name, line.steps, None, perform)


def _picot_places(hand: Hand, step: Work) -> list[Into]:
    if step.places in ((), (Next(),)):
        return [tuple(hand.made[-1:])]
    return [into for place in step.places for into in resolve(hand, place, step.span)]


def _open(hand: Hand, name: str, steps: tuple[Step, ...], place: Place | None, perform: Perform) -> None:
    if hand.depth > DEEPEST_OPENING:
        raise hand.stuck("special-stitch-undefined", None, name=name)
    outer_here, outer_opening = hand.here, hand.opening
    hand.unit += 1
    hand.opening = (name, hand.unit)
    hand.depth += 1
    if place is not None:
        hand.here = place
        hand.last = place
    try:
        perform(hand, steps)
    finally:
        hand.here, hand.opening = outer_here, outer_opening
        hand.depth -= 1
    if place is not None:
        hand.last = place
