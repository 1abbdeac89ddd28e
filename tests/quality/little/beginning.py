"""How a round begins: its turning chain, or the chains of the foundation that stand for one."""

from collections.abc import Iterator, Sequence

from loopleaf.notation.tree import (
    Chain,
    ChainOf,
    CountsAs,
    Facing,
    Group,
    Here,
    Join,
    JoinYarn,
    Next,
    Over,
    Passage,
    Repeat,
    Ring,
    Step,
    Stitch,
    Target,
    Work,
)

from .below import FREE, USED
from .cells import Cell, kind_of
from .first_leg import like_the_last
from .hand import Hand
from .looking_ahead import bridges, chains_in
from .places_between import stands_in_gap


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
            hand.beginning = (length, 1, True)  # a join goes to its foot
        return True
    first = next(stitches(hand, rest), None)
    if first is None or (hand.setting.blocks and hand.in_a_space) or _like_its_end(hand, length, rest):
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
    spaces = any(True for _ in chains_in(rest))
    joined = next((number for step in rest if (number := _joins_to(step, own, length, spaces))), 0)
    if joined:
        stands_on(hand, kind, length, joined)
        hand.add(Cell("space", length=length - joined))
        return True
    taller = like_the_last(hand, kind, length, rest)
    if taller:
        stands_on(hand, taller, length, length)
        return True
    if length > max(own, 1):
        return _with_a_space(hand, kind, length, own, rest)
    if stands(hand, kind, length):
        stands_on(hand, kind, length, length)
    else:
        hand.beginning = (length, 0, False)
    return True


def _like_its_end(hand: Hand, length: int, rest: Sequence[Step]) -> bool:
    """`(ch 2, 3 dc, ch 2, sl st) in same st`, or all of it in a ring: a petal's first side is as much a space
    as its last.
    """
    for at, step in enumerate(rest):
        match step, rest[at + 1 : at + 2]:
            case Chain() as last, (Work(stitch=Stitch(kind="slip"), places=(Ring(),)),):
                return hand.setting.number(last.length) == length
    match rest:
        case (*_, Chain() as last, Work(stitch=Stitch(kind="slip"), places=(Here(),))):
            return hand.setting.number(last.length) == length
    return False


def _with_a_space(hand: Hand, kind: str, length: int, own: int, rest: Sequence[Step]) -> bool:
    """`ch 4, dc in next dc, *ch 1, dc in next dc`: what is more than a stitch is the first of such spaces."""
    spaces = {hand.setting.number(chain.length) for chain in chains_in(rest) if chain.counts is None}
    if not own or length - own not in spaces or not stands(hand, kind, length):
        return False
    stands_on(hand, kind, length, own)
    hand.add(Cell("space", length=length - own))
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


def _joins_to(step: Step, own: int, length: int, spaces: bool) -> int:
    """`join to 3rd ch of ch-5`: the chain's first three stand for the stitch, whether it says so or not.

    Books differ by a chain in what stands for a tall stitch; then what is more of it must be a space, and
    the round have others. 0 where nothing is joined to so.
    """
    if not isinstance(step, Join) or not isinstance(step.place, ChainOf) or step.place.length != length:
        return 0
    number = step.place.number
    usual = number == own or (own - 1 <= number <= own + 1 and spaces)
    return number if usual and number < length else 0


def _below(hand: Hand) -> str:
    return next((cell.kind for cell in hand.cells if cell.top), "single")


def of_chain(kind: str) -> str:
    """The name of the question whether a turning chain counts."""
    return f"turning chain of {kind}"


def said_of_chain(steps: Sequence[Step]) -> tuple[str, int] | None:
    """The answer that an aside at a line's start gives: `ch 3 (counts as dc)`, `ch 2 (does not count)`."""
    for at, step in enumerate(steps):
        match step:
            case Chain(counts=CountsAs(stitch=Stitch(kind=kind))) if kind:
                return of_chain(kind), 1
            case Chain(counts=CountsAs(nothing=True)):
                follow = steps[at + 1] if at + 1 < len(steps) else None
                return (of_chain(follow.stitch.kind), 0) if isinstance(follow, Work) else None
            case Work(stitch=Stitch(kind="slip")) | JoinYarn() | Facing():
                continue
            case _:
                return None
    return None


def throughout(steps: Sequence[Step]) -> dict[str, bool]:
    """What a line settles for the rounds that follow: `ch 3 (counts as dc here and throughout)`."""
    for at, step in enumerate(steps):
        match step:
            case Chain(counts=CountsAs(throughout=True)) | Work(counts=CountsAs(throughout=True)):
                said = step.counts
            case _:
                continue
        if said is not None and said.stitch is not None:
            return {said.stitch.kind: True}
        after = next((one.stitch.kind for one in steps[at + 1 :] if isinstance(one, Work)), "")
        return {after: False}
    return {}


def stands(hand: Hand, kind: str, length: int) -> bool:
    """Whether a turning chain counts that doesn't say so itself: by the pattern's word, else by trial."""
    if length == 1 and hand.setting.own_chains.get(kind, 0) > 2:
        return False  # a lone chain is no tall stitch
    for key in (kind, ""):
        if key in hand.setting.counts:
            return hand.setting.counts[key]
    return length > 1 and bool(hand.setting.choose(of_chain(kind), (0, 1)))


def stands_on(hand: Hand, kind: str, length: int, stands: int) -> None:
    """A turning chain that counts stands on the first stitch and uses it, or in the gap it begins in."""
    if stands_in_gap(hand):
        hand.add(Cell(kind, chain=length, stands=stands))
        hand.begun_in = hand.made[-1]
        hand.beginning = (length, stands, True)
        return
    begun = hand.last is not None and hand.last >= 0
    at = hand.last if begun and hand.last is not None else hand.pos
    foot = hand.cells[at] if at < len(hand.cells) else None
    hand.add(Cell(kind, chain=length, stands=stands, foot=foot))
    hand.begun_in = hand.made[-1]
    hand.beginning = (length, stands, True)
    if not hand.cells:
        return
    whole = hand.whole(Target("space"), at) if begun else [at]
    uses = hand.uses
    for cell in whole:
        if cell < len(hand.cells):
            hand.status[cell] = hand.status[cell] if hand.status[cell] == USED else FREE
            hand.mark(cell, USED)
    hand.uses = min(hand.uses, uses + 1)  # the chains of an arch are one place
    hand.pos = max(hand.pos, whole[-1] + 1)
    hand.last = at


def skipped_chains(hand: Hand, step: Work | Group, number: int, rest: Sequence[Step]) -> None:
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
    stitch, _ = next(stitches(hand, (step,)), (None, False))
    own = hand.setting.own_chains.get(stitch.kind, 0) if stitch is not None else 0
    if stitch is None or not skipped or not own:
        return
    says = any(key in hand.setting.counts for key in (stitch.kind, ""))
    a_block = hand.setting.blocks or skipped in hand.setting.named_later  # the next row names its space
    if a_block and not (says and stands(hand, stitch.kind, skipped)):
        hand.add(Cell("space", length=skipped))
        return
    if stitch.kind == "special" or not stands(hand, stitch.kind, skipped):
        return
    space = _bridged(hand, skipped - own, rest)
    if not space:
        hand.add(Cell(stitch.kind, chain=skipped, stands=skipped, usual=own))
    else:
        hand.add(Cell(stitch.kind, chain=skipped, stands=own, under=skipped - own - space))
        hand.add(Cell("space", length=space))
    hand.beginning = (skipped, own if space else skipped, True)


def _bridged(hand: Hand, over: int, rest: Sequence[Step]) -> int:
    """`dc in 8th ch from hook, *ch 2, sk 2 chs, dc in next ch`: of seven chains three stand for the stitch,
    two are the space, and two lie under it. Gives the space; 0 where the repeats bridge nothing so.
    """
    for chain, skip in bridges(rest):
        length, passed = hand.setting.number(chain.length) or 0, hand.setting.number(skip.count) or 0
        if length + passed == over:
            return length
    return 0


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
            case Group() | Repeat() | Passage():
                yield from stitches(hand, step.steps)
