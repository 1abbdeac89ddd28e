"""The steps of a line, one after the other."""

from collections.abc import Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    Again,
    Chain,
    Facing,
    FastenOff,
    First,
    FreeLoops,
    FromHook,
    Group,
    Join,
    JoinYarn,
    Leave,
    Lying,
    Marker,
    Next,
    OtherSide,
    Passage,
    Repeat,
    Same,
    Skip,
    Step,
    Stitch,
    Tally,
    Together,
    Turn,
    Work,
    WorkingOver,
    Yarn,
)

from .beginning import skipped_chains
from .below import NOWHERE
from .cells import Bunch, Cell, Misfit
from .chain_steps import make_chain
from .closing import check_join
from .hand import Hand
from .looking_ahead import leaves_the_chain
from .passing import leave, other_side, skip
from .places import spots
from .places_elsewhere import lay_first
from .repeats import repeat
from .slip_stitches import (
    close_ring,
    closes_arch,
    closes_no_arch,
    goes_into_the_first,
    is_first_chain,
    joins,
    mid_arch,
    only_fastens,
)
from .stitching import bunch, known_as, put, work
from .travelling import join_yarn
from .walk import in_one_walk, walk


def run(hand: Hand, steps: Sequence[Step], then: Sequence[Step] = ()) -> None:
    """Works the steps in order; raises Misfit at the first that contradicts the edge.

    then: what comes after them.
    """
    walked = False
    for at, step in enumerate(steps):
        rest = steps[at + 1 :]
        if walked:
            walked = False
            continue
        ways = in_one_walk(step, rest)
        if ways is not None:
            walk(hand, ways, run)
            walked = True
            continue
        hand.follow = next(iter(rest or then), None)
        if hand.setting.rows and leaves_the_chain(step, rest):
            whole, hand.limit = hand.limit, hand.before_the_chain()
            _step(hand, step, rest, then)
            hand.limit = whole
        else:
            _step(hand, step, rest, then)


def _step(hand: Hand, step: Step, rest: Sequence[Step], then: Sequence[Step]) -> None:
    if not isinstance(step, Work):
        hand.passed_by = False
    if not isinstance(step, Skip):
        hand.stood = 0
    match step:
        case Work():
            _work(hand, step, rest)
        case Chain():
            make_chain(hand, step, rest, then)
        case Group():
            _group(hand, step, rest)
        case Repeat():
            lay_first(hand, step.steps)  # how far a repeat goes is measured along the edge that it goes along
            repeat(hand, step, run, rest)
        case Together():
            _together(hand, step)
        case Passage():
            hand.passage = step.steps
            run(hand, step.steps, rest)
        case Again():
            for _ in range(hand.setting.number(step.times) or 0):
                run(hand, hand.passage, rest)
        case Skip() | WorkingOver():
            if not hand.made:
                lay_first(hand, rest)  # what is skipped is of the round that the line goes along
            skip(hand, step)
        case Leave():
            leave(hand, step)
        case Join():
            if step.place is not None and closes_arch(hand, step.stitch, step.place, rest):
                return
            if step.how != "not":
                check_join(hand, step.place)
                hand.joined = True
        case Turn():
            hand.turns = step.turns
        case FastenOff():
            hand.fastened = True
        case Marker():
            if step.action == "remove":
                hand.marks.clear()
            elif hand.made and step.place is None:
                hand.marks.append(hand.made[-1])
            elif hand.made:
                hand.marks.append(hand.made[0] if isinstance(step.place, First) else hand.made[-1])
        case JoinYarn():
            join_yarn(hand, step)
        case OtherSide():
            other_side(hand, step)
        case Yarn() | Tally() | Facing() | Lying() | FreeLoops():
            pass


def _work(hand: Hand, step: Work, rest: Sequence[Step]) -> None:
    if step.counts is not None and step.counts.space and not step.counts.skipped:
        mid_arch(hand, step.counts.space, step.places)
        return
    first = step.places[0] if step.places else None
    if step.stitch.kind == "slip" and only_fastens(hand, step, first):
        return
    if joins(hand, step, rest):
        check_join(hand, first)
        hand.joined = True
        return
    if first is not None and closes_arch(hand, step.stitch, first, rest):
        return
    if isinstance(first, FromHook):
        if hand.leaf is not None and step.stitch.kind == "slip" and hand.leaf.length == first.number:
            close_ring(hand, hand.leaf)
            return
        skipped_chains(hand, step, first.number, rest)
    if hand.leaf is not None and not hand.leaf.at and step.stitch.kind == "slip" and is_first_chain(first):
        close_ring(hand, hand.leaf)
        return
    in_the_ring = hand.edge.ring and not hand.ring_used
    if step.stitch.kind == "slip" and not in_the_ring and not isinstance(first, FromHook):
        ended = hand.exhausted and hand.leaf is None and hand.made
        if ended and hand.setting.spiral and isinstance(first, Next | First):
            if not any(hand.fits(first.target, cell) for cell in hand.made):
                raise Misfit("place", f"no {first.target} to level with")
            return  # it levels the spiral past its marker
        if ended and not hand.setting.rows and isinstance(first, First):
            check_join(hand, first)
            hand.joined = True
            return
    if goes_into_the_first(hand, step, rest) or (first is not None and closes_no_arch(hand, step, rest)):
        put(hand, step.stitch, ())
        return
    before = len(hand.made)
    begun = hand.begun_in
    work(hand, step)
    if step.counts is not None and step.counts.stitch is not None and not step.counts.skipped:
        _counts_as(hand, before, step.counts.stitch, step.stitch.kind, begun)


def _counts_as(hand: Hand, before: int, stitch: Stitch, kind: str, begun: Cell | None) -> None:
    """`ch 2, dc2tog in same st (counts as cl)`: all of it is one stitch, and the chain is its foot."""
    start = hand.made.index(begun) if begun in hand.made else before
    del hand.made[start:]
    put(hand, stitch if stitch.kind else replace(stitch, kind=kind), ())
    if hand.beginning is not None:
        hand.beginning = (hand.beginning[0], hand.beginning[0], True)


def _group(hand: Hand, step: Group, rest: Sequence[Step]) -> None:
    for place in step.places:
        if isinstance(place, FromHook):
            skipped_chains(hand, step, place.number, rest)
        for spot in spots(hand, place):
            before, here, last = len(hand.made), hand.here, hand.last
            hand.here = spot[0]
            hand.last = spot[0]
            leading, start = hand.leading, hand.group_start
            hand.leading = leading and _begins_withchain(hand, step.steps[0])
            hand.group_start = before
            run(hand, step.steps, rest)
            hand.leading, hand.group_start = leading and not hand.made, start
            hand.here, hand.last = here, spot[0] if spot[0] != NOWHERE else last
            bunch(hand, before, Bunch(known_as(hand, step)))


def _begins_withchain(hand: Hand, step: Step) -> bool:
    """Whether a bracket's first thing is a beginning chain, or one of the author's stitches with one."""
    if isinstance(step, Work) and step.stitch.kind == "special":
        opened = hand.setting.specials.get(step.stitch.name, ())
        return len(opened) > 1 and isinstance(opened[0], Chain) and step.places != ()
    return isinstance(step, Chain)


def _together(hand: Hand, step: Together) -> None:
    """Stitches drawn up into one, which is as tall as the tallest of them."""
    before, here = len(hand.made), hand.here
    if step.place is not None:
        spot = next(iter(spots(hand, step.place)))
        hand.here = hand.last = spot[0]
    leading, hand.leading = hand.leading, False
    run(hand, step.steps)
    hand.leading = leading and not hand.made
    hand.here = here
    shares = any(
        isinstance(place, Same) for one in step.steps[:1] if isinstance(one, Work) for place in one.places
    )
    hand.shared = hand.last if shares and step.place is None else None
    legs = hand.made[before:]
    del hand.made[before:]
    tallest = max(legs, key=lambda leg: hand.setting.own_chains.get(leg.kind, 0))
    hand.add(Cell(tallest.kind, form="tog"))
