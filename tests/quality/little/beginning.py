"""How a round begins: turning chains, skipped chains, yarn joined anew, slip stitches that travel."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    Chain,
    ChainOf,
    Each,
    First,
    FromHook,
    Group,
    Join,
    JoinYarn,
    Next,
    Over,
    Repeat,
    Same,
    Skip,
    Step,
    Stitch,
    Target,
    Work,
)

from .below import FREE, NOWHERE, PASSED, USED
from .cells import Cell, Misfit, kind_of
from .hand import Hand
from .places import spots


def travels(hand: Hand, steps: Sequence[Step]) -> Sequence[Step]:
    """Slip stitches at the start move it; gives the steps after them."""
    if steps and isinstance(steps[0], JoinYarn) and steps[0].place is None:
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
    at = 0
    for step in steps[:count]:
        if isinstance(step, Skip):
            for _ in range(hand.setting.number(step.count) or 0):
                hand.take(step.target, PASSED)
        for place in step.places if isinstance(step, Work) else ():
            for spot in spots(hand, place):
                at = spot[0]
    if hand.setting.rows:
        hand.uses = 0
        for passed in range(hand.pos):
            hand.status[passed] = PASSED
        hand.last = at
    else:
        hand.turn_to(at)
        hand.uses = 0
    return rest


def _out_of_the_bracket(steps: Sequence[Step]) -> Sequence[Step]:
    """`(sl st, ch 3, 2 dc) in next sp` at a start: a slip stitch into it, then the rest in the same."""
    at = next((i for i, step in enumerate(steps) if not isinstance(step, Work) or not _is_slip(step)), -1)
    group = steps[at] if at >= 0 else None
    if not isinstance(group, Group) or len(group.steps) < 3 or len(group.places) != 1:
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
            raise Misfit("place", "yarn is joined in the middle of a round")
        before, uses = list(hand.status), hand.uses
        at = next(spots(hand, place))[0]
        hand.status, hand.uses = before, uses
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


def begin_chain(hand: Hand, step: Chain, length: int, rest: Sequence[Step]) -> bool:
    """The chain at the start of a round. False where it is no turning chain but makes a space."""
    counts = step.counts
    if counts is not None:
        if counts.nothing:
            hand.beginning = (length, 0, False)
        elif counts.stitch is not None:
            stands_on(hand, kind_of(counts.stitch) or _own(hand, rest), length, length - counts.chains)
            if counts.chains:
                hand.add(Cell("space", length=counts.chains))
        else:
            hand.add(Cell("space", length=counts.space))
        return True
    first = next(stitches(hand, rest), None)
    if first is None:
        return False
    stitch, says = first
    if says:
        if rest and isinstance(rest[0], Work):
            _first_leg(hand, rest[0])
        hand.beginning = (length, 0, False)
        return True
    kind = kind_of(stitch)
    if kind in ("inc", "dec"):
        kind = next(iter(hand.kinds)) if len(hand.kinds) == 1 else _below(hand)
    own = hand.setting.own_chains.get(kind, 0)
    joined = next((number for step in rest if (number := _joins_to(step, own, length))), 0)
    if joined:
        stands_on(hand, kind, length, joined)
        hand.add(Cell("space", length=length - joined))
        return True
    if length > max(own, 1):
        return False
    if stands(hand, kind, length):
        stands_on(hand, kind, length, length)
    else:
        hand.beginning = (length, 0, False)
    return True


def _first_leg(hand: Hand, step: Work) -> None:
    """`ch 2, dc2tog over next 2 sts (counts as dc3tog)`: the chain is the third leg, on the first stitch."""
    if step.counts is None or step.counts.stitch is None or hand.pos >= len(hand.cells):
        return
    if all(isinstance(place, Next | Over) for place in step.places):
        legs = sum(
            hand.setting.number(place.count) or 0 for place in step.places if isinstance(place, Next | Over)
        )
        if legs + 1 == step.counts.stitch.number:
            hand.mark(hand.pos, USED)
            hand.pos += 1


def _own(hand: Hand, rest: Sequence[Step]) -> str:
    """What `counts as st` means: the round's only kind, else its first."""
    if len(hand.kinds) == 1:
        return next(iter(hand.kinds))
    return next((kind_of(stitch) for stitch, _ in stitches(hand, rest)), "")


def _joins_to(step: Step, own: int, length: int) -> int:
    """`join to 3rd ch of ch-5`: the chain's first three stand for the stitch, whether it says so or not.

    Books differ by a chain in what stands for a tall stitch. 0 where nothing is joined to so.
    """
    if not isinstance(step, Join) or not isinstance(step.place, ChainOf) or step.place.length != length:
        return 0
    return step.place.number if own - 1 <= step.place.number <= own + 1 and step.place.number < length else 0


def _below(hand: Hand) -> str:
    return next((cell.kind for cell in hand.cells if cell.top), "single")


def stands(hand: Hand, kind: str, length: int) -> bool:
    """Whether a turning chain counts that doesn't say so itself: by the pattern's word, else by trial."""
    if length == 1 and hand.setting.own_chains.get(kind, 0) > 2:
        return False  # a lone chain is no tall stitch
    for key in (kind, ""):
        if key in hand.setting.counts:
            return hand.setting.counts[key]
    return length > 1 and bool(hand.setting.choose(f"turning chain of {kind}", (0, 1)))


def stands_on(hand: Hand, kind: str, length: int, stands: int) -> None:
    """A turning chain that counts stands on the first stitch and uses it."""
    hand.add(Cell(kind, chain=length, stands=stands))
    hand.begun_in = hand.made[-1]
    hand.beginning = (length, stands, True)
    if not hand.cells:
        return
    begun = hand.last is not None and hand.last >= 0
    at = hand.last if begun and hand.last is not None else hand.pos
    whole = hand.whole(Target("space"), at) if begun else [at]
    for cell in whole:
        if cell < len(hand.cells):
            hand.status[cell] = hand.status[cell] if hand.status[cell] == USED else FREE
            hand.mark(cell, USED)
    hand.pos = max(hand.pos, whole[-1] + 1)
    hand.last = at


def skipped_chains(hand: Hand, step: Work | Group, number: int) -> None:
    """`dc in 4th ch from hook`: what the chains before it stand for."""
    counts = step.counts
    if (hand.leaf is not None and not hand.leaf.grows) or hand.made:
        return
    skipped = number - 1
    if counts is not None and counts.skipped:
        if counts.stitch is not None:
            hand.add(Cell(counts.stitch.kind, chain=skipped, stands=skipped - counts.chains))
            hand.begun_in = hand.made[-1]
            hand.beginning = (skipped, skipped - counts.chains, True)
        if counts.chains or counts.space:
            hand.add(Cell("space", length=counts.chains or counts.space))
        return
    if isinstance(step, Group):
        return
    own = hand.setting.own_chains.get(step.stitch.kind, 0)
    if not skipped or not own:
        return
    says = any(key in hand.setting.counts for key in (step.stitch.kind, ""))
    a_block = hand.setting.blocks or skipped in hand.setting.named_later  # the next row names its space
    if a_block and not (says and stands(hand, step.stitch.kind, skipped)):
        hand.add(Cell("space", length=skipped))
        return
    if step.stitch.kind == "special" or not stands(hand, step.stitch.kind, skipped):
        return
    hand.add(Cell(step.stitch.kind, chain=skipped, stands=skipped))
    hand.beginning = (skipped, skipped, True)


def stitches(hand: Hand, steps: Sequence[Step]) -> Iterator[tuple[Stitch, bool]]:
    """The stitches of some steps in order, opened; and whether one says that the chain is part of it."""
    for step in steps:
        match step:
            case Work():
                if step.stitch.kind == "special":
                    inside = list(stitches(hand, hand.setting.specials.get(step.stitch.name, ())))
                    yield from inside or [(step.stitch, False)]
                elif step.stitch.kind not in ("slip", "chain"):
                    says = step.counts is not None and not step.counts.skipped and not step.counts.nothing
                    yield step.stitch, says
            case Group() | Repeat():
                yield from stitches(hand, step.steps)
