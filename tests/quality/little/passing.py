"""What a line passes by: skipped, left unworked, or done with as it goes on to a chain's other side."""

from loopleaf.notation.tree import ONE, STITCH, Last, Leave, OtherSide, Skip, Target, WorkingOver

from .below import FREE, NOWHERE, PASSED, SKIPPED, USED
from .cells import Misfit, chains
from .hand import Hand, Leaf
from .places import spots
from .places_start import on_leaf
from .setting import BEHIND


def skip(hand: Hand, step: Skip | WorkingOver) -> None:
    if isinstance(step, WorkingOver) and (step.what or step.made):  # only how the work lies
        return
    if isinstance(step, Skip) and step.which in ("behind", "all"):  # used up by the long stitch; no places
        return
    if isinstance(step, Skip) and step.until is not None:
        _skip_up_to(hand, step.target, hand.bound(step.until))
        return
    number = hand.setting.number(step.count or ONE) or 0
    if step.target == STITCH and 0 < number <= hand.stood and hand.setting.choose(BEHIND, (0, 1)):
        return
    if isinstance(step, Skip) and step.which == "first" and step.target.kind != "space":
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
    if isinstance(step, Skip) and step.which == "first":
        behind = any(hand.counts_for(step.target, at) for at in range(hand.pos))
        if behind:
            raise Misfit("fit", "the first space lies behind")
    if isinstance(step, Skip) and step.bare and number == 1 and _may_be_below(hand):
        return
    worked_into = hand.last
    hand.uneven = False  # what the repeats leave is said to be skipped
    hand.skipped_at_once = number
    number -= _passed_at_the_start(hand, step.target, number)
    for _ in range(number):
        hand.skipped.append(hand.take(step.target, SKIPPED))
    hand.last = worked_into


def _skip_up_to(hand: Hand, target: Target, bound: int) -> None:
    """`sk all dc to next ch-2 sp`: however many there are."""
    there = [at for at in range(hand.pos, bound) if hand.counts_for(target, at)]
    if not there:
        raise Misfit("fit", f"no {target} to skip")
    worked_into = hand.last
    hand.uneven = False
    hand.skipped_at_once = len(there)
    for _ in there:
        hand.skipped.append(hand.take(target, SKIPPED))
    hand.last = worked_into


def _may_be_below(hand: Hand) -> bool:
    """`ch 3, sk 1 st`: the stitch below a chain that counts, if that is how it comes out. What a repeat skips
    is the same in every pass.
    """
    stands = hand.beginning is not None and hand.beginning[2] and hand.pos == 1 and hand.last == 0
    return stands and not hand.repeating and bool(hand.setting.choose("the stitch below the chain", (0, 1)))


def _passed_at_the_start(hand: Hand, target: Target, number: int) -> int:
    """`sl st in next 2 sts, *(sc, ch 3, sc) in next ch-2 sp, ch 4, sk 6 sts`: what the round passed before
    its first place is counted in the last skip, or not. Gives how much of it was.
    """
    if hand.setting.rows or target.kind != "stitch" or USED not in hand.status:
        return 0
    ahead = [at for at in range(hand.pos, len(hand.cells)) if hand.counts_for(target, at) and hand.open(at)]
    before = range(hand.status.index(USED))
    passed = sum(hand.status[at] == PASSED and hand.counts_for(target, at) for at in before)
    return passed if ahead and number - len(ahead) == passed else 0


def leave(hand: Hand, step: Leave) -> None:
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


def other_side(hand: Hand, step: OtherSide) -> None:
    """The other side begins after the chain at the tip; a lone stitch leaves that free to be worked again."""
    if step.of == "chain" and hand.leaf is not None:
        hand.leaf = Leaf(hand.leaf.length, grows=hand.leaf.grows, far=True)
        return
    if not hand.edge.foundation or hand.edge.shape == "circle" or hand.far_side:
        raise Misfit("place", "the chain has no other side to work on")
    if hand.free(0, len(hand.cells)):
        raise Misfit("fit", "chains are left on the first side")
    first = next((at for at, how in enumerate(hand.status) if how == USED), 0)
    lone = bool(hand.made) and not hand.made[-1].bunches
    again = hand.setting.choose("the tip from its other side", (0, 1)) if lone else 0
    foot = hand.made[0].foot if hand.made else None
    around = foot is not None and sum(cell.foot is foot for cell in hand.made) > 2
    worked = hand.setting.choose("three in the first chain go around it", (0, 1)) if around else 0
    hand.lay(chains(len(hand.cells) - first - 1 + again - worked))  # to the chain worked first
    hand.far_side = True
    hand.last = NOWHERE
