"""The author's own stitches: opened where they stand, and worked."""

from collections.abc import Callable
from dataclasses import replace

from ..notation.tree import (
    ONE,
    STITCH,
    Chain,
    CountsAs,
    Each,
    FromHook,
    Group,
    Line,
    Next,
    Over,
    Same,
    Step,
    Stitch,
    Work,
)
from ..notation.tree import Place as NamedPlace
from .beginning import skipped_chains
from .hand import Hand
from .places import resolve
from .seek import Into, bound, number
from .stitches import (
    DEEPEST_OPENING,
    all_in_one,
    given_place,
    make,
    names_no_place,
    needs,
    picot_chains,
    places_taken,
    said_at,
)
from .worked import Made, Place

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
    if names_no_place(line.steps) and _is_given_one(hand, step, places_taken(line.steps)):
        line = all_in_one(line)
    wanted = needs(line)
    if wanted == "one":
        opened = given_place(line)
        for place in _where(hand, step, opened):
            if isinstance(place, FromHook) and hand.leaf is None:
                skipped_chains(hand, step, place)
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
        if isinstance(place, Next | Over) and place.count != ONE:
            passes *= _passes(hand, place, places_taken(line.steps) if wanted == "several" else 1)
    for _ in range(passes):
        _open(hand, name, line.steps, None, perform)


def _is_given_one(hand: Hand, step: Work, taken: int) -> bool:
    """Whether the instruction says which one place, or each of which places, the whole stitch goes into.

    taken: how many places its stitches take side by side; `in next 6 sts` may be two of three.
    """
    match step.places:
        case (Next(count=count, span=span),):
            there = number(hand, count)
            return span is not None and (there == 1 or there % max(taken, 1) != 0)
        case (Each(span=span),):
            return span is not None
        case (Over(),) | ():
            return False
    return True


def written_out(hand: Hand, group: Group) -> tuple[str, int]:
    """The name of the author's stitch that a group is though it isn't named, and the number of its unit; no
    name (and 0) for any other group."""
    for name, line in hand.setting.specials.items():
        if len(line.steps) == 1 and isinstance(line.steps[0], Group) and line.steps[0].steps == group.steps:
            hand.unit += 1
            return name, hand.unit
    return "", 0


def _passes(hand: Hand, place: Next | Over, taken: int) -> int:
    """How often a stitch over several places is worked: `x-st x 5` says it, `in next 10 sts` how far."""
    count = number(hand, place.count)
    if isinstance(place, Next) and place.span is None:
        return count
    return count // taken if count % taken == 0 else 1


def _where(hand: Hand, step: Work, opened: Line) -> tuple[NamedPlace, ...]:
    """Where a stitch in one place goes: one that begins a round with its chain, and names none, stands where
    the yarn is."""
    if step.places == (Next(),) and step.places[0].span is None and _begins(hand, opened.steps):
        return (Same(),)
    return step.places


def _begins(hand: Hand, steps: tuple[Step, ...]) -> bool:
    """Whether a stitch's own first chain is the one that its round or row begins with."""
    travelled = all(isinstance(one, Made) and one.role == "travel" for one in hand.made)
    first = steps[0] if steps else None
    if isinstance(first, Group) and first.steps:
        first = first.steps[0]
    return not hand.depth and travelled and isinstance(first, Chain)


def _with_its_leg(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`ch 2, dc2tog in same st` at a round's beginning: the chain is the first leg of what is gathered."""
    match steps:
        case (Chain(counts=None) as chain, Work(stitch=Stitch(form="tog", number=legs), counts=None) as work):
            whole = CountsAs(replace(work.stitch, number=legs + 1))
            return chain, replace(work, counts=whole)
    return steps


def _picot_places(hand: Hand, step: Work) -> list[Into]:
    if step.places in ((), (Next(),)):
        return [tuple(hand.made[-1:])]
    match step.places:
        case (Next(span=None, target=target) as unsaid,) if target == STITCH:  # `3 p`: all of them here
            return [tuple(hand.made[-1:])] * number(hand, unsaid.count)
    return [into for place in step.places for into in resolve(hand, place, step.span)]


def _open(hand: Hand, name: str, steps: tuple[Step, ...], place: Place | None, perform: Perform) -> None:
    if hand.depth > DEEPEST_OPENING:
        raise hand.stuck("special-stitch-undefined", None, name=name)
    outer_here, outer_opening, outer_depth = hand.here, hand.opening, hand.depth
    hand.unit += 1
    hand.opening = (name, hand.unit)
    if _begins(hand, steps):
        hand.begun = False
        steps = _with_its_leg(steps)
    else:
        hand.depth += 1
    if place is not None:
        hand.here = place
        hand.last = place
    try:
        perform(hand, steps)
    finally:
        hand.here, hand.opening = outer_here, outer_opening
        hand.depth = outer_depth
    if place is not None:
        hand.last = place
