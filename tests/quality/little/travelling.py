"""Where a round begins: slip stitches that move its start, yarn joined anew."""

from collections.abc import Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    ONE,
    Chain,
    Each,
    First,
    FromHook,
    Group,
    JoinYarn,
    Next,
    Place,
    Repeat,
    Same,
    Skip,
    Step,
    Work,
)

from .below import NOWHERE, PASSED, USED
from .cells import Cell, Edge, Misfit, with_single_chains
from .hand import Hand
from .looking_ahead import chain_on_the_way
from .places import spots
from .setting import Setting
from .stitching import put


def travels(hand: Hand, steps: Sequence[Step]) -> Sequence[Step]:
    """Slip stitches at the start move it; gives the steps after them."""
    if steps and isinstance(steps[0], JoinYarn) and steps[0].place is None:
        return travels(hand, steps[1:])
    if hand.setting.rows and chain_on_the_way(steps):
        return travels(hand, steps[1:])
    steps = steps if hand.setting.blocks else _out_of_the_bracket(steps)
    count = 0
    for at, step in enumerate(steps):
        if isinstance(step, Work) and _is_slip(step):
            count = at + 1
        elif not isinstance(step, Skip):
            break
    rest = steps[count:]
    if not count or not any(isinstance(step, Work | Group | Repeat | Chain) for step in rest):
        return steps
    if hand.edge.at_hook and not hand.setting.rows and not isinstance(_place(steps[0]), First | Same):
        hand.pos = 1
    at, hook = 0, hand.pos
    for step in steps[:count]:
        if isinstance(step, Skip):
            for _ in range(hand.setting.number(step.count) or 0):
                hand.take(step.target, PASSED)
        for place in step.places if isinstance(step, Work) else ():
            for spot in spots(hand, place):
                at = spot[0]
    if hand.setting.rows:
        hand.uses = 0
        if hand.cells[at].kind == "space":
            hand.slipped_over = sum(cell.top for cell in hand.cells[:at])
        for passed in range(hand.pos):
            hand.status[passed] = PASSED
        hand.last = at
        hand.behind.add(at)  # `sc in same st` goes into the place slipped into last
    else:
        in_gap = at == NOWHERE
        at = hand.pos if in_gap else at
        hand.travelled = sum(cell.top or cell.kind == "space" for cell in hand.cells[hook:at])
        hand.turn_to(at)
        hand.uses = 0
        if in_gap:
            hand.in_gap, hand.gap, hand.last = True, None, NOWHERE
    return rest


def check_moves(setting: Setting, edge: Edge, steps: Sequence[Step]) -> None:
    """Slip stitches behind a join go over the round that is just made: their places must be on it."""
    cells = with_single_chains(edge.cells) if setting.chains_counted else list(edge.cells)
    hand = Hand(setting, replace(edge, cells=cells), [])
    travels(hand, (*steps, Chain(ONE)))


def _out_of_the_bracket(steps: Sequence[Step]) -> Sequence[Step]:
    """`(sl st, ch 3, 2 dc) in next sp` at a start: a slip stitch into it, then the rest in the same."""
    at = next((i for i, step in enumerate(steps) if not isinstance(step, Work) or not _is_slip(step)), -1)
    group = steps[at] if at >= 0 else None
    if not isinstance(group, Group) or len(group.steps) < 3 or len(group.places) != 1:
        return steps
    if isinstance(group.places[0], Each):
        return steps
    slip, chain = group.steps[:2]
    if not isinstance(slip, Work) or slip.stitch.kind != "slip" or not isinstance(chain, Chain):
        return steps
    there = replace(slip, places=group.places)
    return (*steps[:at], there, replace(group, steps=group.steps[1:], places=(Same(),)), *steps[at + 1 :])


def _is_slip(step: Work) -> bool:
    return step.stitch.kind == "slip" and not any(isinstance(place, Each | FromHook) for place in step.places)


def _place(step: Step) -> object:
    return step.places[0] if isinstance(step, Work) and step.places else None


def _join_on_the_way(hand: Hand, step: JoinYarn, place: Place) -> None:
    """In the middle of a round: a slip stitch uses nothing up, any other is one of the round's."""
    before = hand.save()
    for spot in spots(hand, place):
        if step.stitch.kind != "slip":
            put(hand, step.stitch, spot)
    if step.stitch.kind == "slip":
        hand.restore(before)


def join_yarn(hand: Hand, step: JoinYarn) -> None:
    """`join B with sl st in any corner sp`: the round begins there."""
    place = step.place
    at = 0
    if isinstance(place, Next) and place.any:
        found = [i for i in range(len(hand.cells)) if hand.counts_for(place.target, i)]
        if not found:
            raise Misfit("place", f"no {place.target} to join to")
        at = found[0]
    elif place is not None:
        if hand.made:
            _join_on_the_way(hand, step, place)
            return
        before = hand.save()
        at = next(spots(hand, place))[0]
        hand.restore(before)
    if at == NOWHERE:
        return
    if hand.setting.rows:
        hand.pos = at
        hand.last = at
    else:
        hand.turn_to(at)
    if step.stitch.kind != "slip":
        hand.mark(hand.pos, USED)
        hand.last = hand.pos
        hand.pos += 1
        hand.add(Cell(step.stitch.kind))
