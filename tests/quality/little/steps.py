"""The steps of a line, one after the other."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    Again,
    Chain,
    ChainOf,
    Each,
    Facing,
    FastenOff,
    First,
    FreeLoops,
    FromHook,
    Group,
    Join,
    JoinYarn,
    Last,
    Leave,
    Marker,
    Next,
    OtherSide,
    Passage,
    Repeat,
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

from .beginning import begin_chain, join_yarn, skipped_chains
from .cells import Bunch, Cell, Misfit
from .closing import check_join
from .hand import FREE, NOWHERE, PASSED, SKIPPED, Hand, Leaf
from .places import on_leaf, spots
from .repeats import repeat
from .slip_stitches import close_ring, is_first_chain, joins, mid_arch, only_fastens
from .stitching import bunch, put, work


def run(hand: Hand, steps: Sequence[Step], then: Sequence[Step] = ()) -> None:
    """Works the steps in order; raises Misfit at the first that contradicts the edge.

    then: what comes after them.
    """
    for at, step in enumerate(steps):
        rest = steps[at + 1 :]
        hand.follow = next(iter(rest or then), None)
        _step(hand, step, rest)


def _step(hand: Hand, step: Step, rest: Sequence[Step]) -> None:
    if not isinstance(step, Work):
        hand.passed_by = False
    match step:
        case Work():
            _work(hand, step, rest)
        case Chain():
            _chain(hand, step, rest)
        case Group():
            _group(hand, step)
        case Repeat():
            repeat(hand, step, run)
        case Together():
            _together(hand, step)
        case Passage():
            hand.passage = step.steps
            run(hand, step.steps)
        case Again():
            for _ in range(hand.setting.number(step.times) or 0):
                run(hand, hand.passage)
        case Skip() | WorkingOver():
            _skip(hand, step)
        case Leave():
            _leave(hand, step)
        case Join():
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
            _other_side(hand, step)
        case Yarn() | Tally() | Facing() | FreeLoops():
            pass


def _work(hand: Hand, step: Work, rest: Sequence[Step]) -> None:
    if step.counts is not None and step.counts.space and not step.counts.skipped:
        mid_arch(hand, step.counts.space, step)
        return
    first = step.places[0] if step.places else None
    if step.stitch.kind == "slip" and only_fastens(hand, step, first):
        return
    if joins(hand, step, rest):
        check_join(hand, first)
        hand.joined = True
        return
    if isinstance(first, FromHook):
        if hand.leaf is not None and step.stitch.kind == "slip" and hand.leaf.length == first.number:
            close_ring(hand, hand.leaf)
            return
        skipped_chains(hand, step, first.number)
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
    before = len(hand.made)
    begun = hand.begun_in
    whole = hand.limit
    if hand.setting.rows and _leaves_the_chain(step, rest):
        hand.limit = hand.before_the_chain()
    work(hand, step)
    hand.limit = whole
    if step.counts is not None and step.counts.stitch is not None and not step.counts.skipped:
        _counts_as(hand, before, step.counts.stitch, step.stitch.kind, begun)


def _leaves_the_chain(step: Work, rest: Sequence[Step]) -> bool:
    """`dc in each dc across, dc in top of tch`: the chain is named, so it isn't among the stitches."""
    follow = rest[0] if rest else None
    last = step.places[-1] if step.places else None
    if not isinstance(last, Each) or not isinstance(follow, Work):
        return False
    return isinstance(follow.places[0] if follow.places else None, ChainOf)


def _counts_as(hand: Hand, before: int, stitch: Stitch, kind: str, begun: Cell | None) -> None:
    """`ch 2, dc2tog in same st (counts as cl)`: all of it is one stitch, and the chain is its foot."""
    start = hand.made.index(begun) if begun in hand.made else before
    del hand.made[start:]
    put(hand, stitch if stitch.kind else replace(stitch, kind=kind), ())
    if hand.beginning is not None:
        hand.beginning = (hand.beginning[0], hand.beginning[0], True)


def _chain(hand: Hand, step: Chain, rest: Sequence[Step]) -> None:
    length = hand.setting.number(step.length)
    if not length:
        return
    if _turns_back(rest):
        hand.leaf = Leaf(length, grows=hand.setting.rows and hand.leading and not hand.pos)
        return
    hand.leaf = None
    if hand.joined:
        hand.carried = None if any(isinstance(one, FastenOff) for one in rest) else step
        return  # it locks the yarn, or it belongs to the next round
    if any(isinstance(one, Turn) for one in rest) and not any(_makes(rest)):
        hand.carried = step  # it belongs to the next row
        return
    if hand.leading and step.counts is None and rest and isinstance(rest[0], Chain):
        hand.begun_with = 0 if rest[0].counts is not None else hand.begun_with + length
        return
    length, hand.begun_with = length + hand.begun_with, 0
    if hand.leading and begin_chain(hand, step, length, rest):
        return
    if step.counts is not None and step.counts.nothing:
        return
    if len(hand.made) > hand.group_start and hand.made[-1].kind == "space" and not hand.made[-1].bunches:
        length += hand.made.pop().length
        if hand.fastened_to and length not in hand.fastened_to and length + 1 in hand.fastened_to:
            length += 1  # the slip stitch stands in the middle chain's stead
    hand.fastened_to = frozenset()
    hand.add(Cell("space", length=length))


def _turns_back(rest: Sequence[Step]) -> bool:
    for step in rest:
        if isinstance(step, Turn | Yarn | Marker):
            continue
        if not isinstance(step, Work) or not step.places:
            return False
        closes = step.stitch.kind == "slip" and len(rest) > 1 and is_first_chain(step.places[0])
        return closes or isinstance(step.places[0], FromHook)
    return False


def _makes(steps: Sequence[Step]) -> Iterator[Step]:
    yield from (step for step in steps if isinstance(step, Work | Group | Repeat | Chain))


def _group(hand: Hand, step: Group) -> None:
    for place in step.places:
        if isinstance(place, FromHook) and step.counts is not None:
            skipped_chains(hand, step, place.number)
        for spot in spots(hand, place):
            before, here, last = len(hand.made), hand.here, hand.last
            hand.here = spot[0]
            hand.last = spot[0]
            leading, start = hand.leading, hand.group_start
            hand.leading = leading and _begins_with_chain(hand, step.steps[0])
            hand.group_start = before
            run(hand, step.steps)
            hand.leading, hand.group_start = leading and not hand.made, start
            hand.here, hand.last = here, spot[0] if spot[0] != NOWHERE else last
            bunch(hand, before, Bunch())


def _begins_with_chain(hand: Hand, step: Step) -> bool:
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
    legs = hand.made[before:]
    del hand.made[before:]
    tallest = max(legs, key=lambda leg: hand.setting.own_chains.get(leg.kind, 0))
    hand.add(Cell(tallest.kind, form="tog"))


def _skip(hand: Hand, step: Skip | WorkingOver) -> None:
    number = hand.setting.number(step.count) or 0
    if isinstance(step, Skip) and step.which == "first":
        for at in range(min(number, len(hand.cells))):
            if hand.status[at] == FREE:
                if at < hand.pos or hand.free(0, at):
                    raise Misfit("fit", "the first stitch lies behind")
                hand.mark(at, SKIPPED)
                hand.skipped.append(at)
                hand.pos = at + 1
            elif at + 1 < hand.pos:
                raise Misfit("fit", "the first stitch lies behind")
        return
    if isinstance(step, Skip) and step.which == "last":
        for _ in spots(hand, Last(step.count, step.target)):
            pass
        return
    if on_leaf(hand, step.target):
        assert hand.leaf is not None
        if hand.leaf.left < number:
            raise Misfit("fit", "past the end of the chain")
        hand.leaf.at += number
        return
    over = isinstance(step, WorkingOver)
    hand.passed_by = over
    worked_into = hand.last
    hand.uneven = False  # what the repeats leave is said to be skipped
    hand.skipped_at_once = number
    for _ in range(number):
        space = step.target.kind in ("space", "loop", "corner") and not over
        hand.skipped.append(hand.take(step.target, PASSED if space else SKIPPED))
    hand.last = worked_into


def _leave(hand: Hand, step: Leave) -> None:
    if step.target.kind == "chain" and hand.leaf is not None and hand.leaf.left:
        return
    left = [at for at in range(hand.pos, len(hand.cells)) if hand.counts_for(step.target, at)]
    left = [at for at in left if hand.status[at] == FREE]
    number = None if step.count is None else hand.setting.number(step.count) or 0
    if number is not None and number > len(left):
        raise Misfit("fit", f"there are only {len(left)} to leave")
    first = 0 if number is None else len(left) - number
    start = left[first] if first < len(left) else len(hand.cells)
    if number is None:
        start = hand.pos
    hand.uneven = False
    for at in range(start, len(hand.cells)):
        hand.mark(at, PASSED)


def _other_side(hand: Hand, step: OtherSide) -> None:
    if step.of == "chain" and hand.leaf is not None:
        hand.leaf = Leaf(hand.leaf.length, grows=hand.leaf.grows, far=True)
        return
    if not hand.edge.other:
        raise Misfit("place", "the chain has no other side to work on")
    if hand.free(0, len(hand.cells)):
        raise Misfit("fit", "chains are left on the first side")
    hand.lay(list(hand.edge.other))
    hand.edge.other = []
    hand.last = NOWHERE
