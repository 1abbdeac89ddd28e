"""How a round ends: what it joins to, and that nothing is left over that nobody spoke of."""

from dataclasses import dataclass, field

from loopleaf.notation.tree import ChainOf, First, Place

from .cells import Misfit
from .hand import FREE, USED, Hand


def check_join(hand: Hand, place: Place | None) -> None:
    """The join goes into something that is there and counts."""
    match place:
        case ChainOf():
            if hand.beginning is None:
                raise Misfit("join", "the round doesn't begin with a chain")
            length, stands, counted = hand.beginning
            if not counted:
                raise Misfit("join", "the chain doesn't count")
            if place.length not in (0, length):
                raise Misfit("join", f"the round begins with a chain of {length}")
            if place.number and place.number != stands:
                raise Misfit("join", f"{stands} of its chains stand for the stitch")
        case First():
            first = next((cell for cell in hand.made if cell.top or hand.fits(place.target, cell)), None)
            if first is None or not hand.fits(place.target, first):
                raise Misfit("join", "the round doesn't begin with such a stitch")


def finish(hand: Hand, names_spaces: bool) -> None:
    """After the last step: the whole edge must be used, passed, left, or bridged."""
    if hand.edge.ring and not hand.cells and not hand.ring_used:
        raise Misfit("fit", "nothing is worked into the ring")
    if hand.edge.other:
        raise Misfit("fit", "the other side of the chain is left over")
    left = hand.free(0, len(hand.cells))
    if names_spaces:
        last = max((at for at, how in enumerate(hand.status) if how != FREE), default=-1)
        left += [
            at
            for at in range(last + 1, len(hand.cells))
            if hand.status[at] == FREE and hand.cells[at].kind == "space"
        ]
    if not left:
        return
    bridged = hand.made and hand.made[-1].kind == "space" and hand.joined and not hand.setting.rows
    runs = _passed_over(hand)
    if bridged and all(at > runs.last_used for at in left) and runs.at_the_end in runs.between:
        return
    raise Misfit("fit", f"{len(left)} left over")


@dataclass
class _Runs:
    """How many tops in a row no stitch went into: between stitches, and after the last one."""

    last_used: int = -1
    between: set[int] = field(default_factory=set)
    at_the_end: int = 0


def _passed_over(hand: Hand) -> _Runs:
    runs = _Runs()
    for at, (cell, how) in enumerate(zip(hand.cells, hand.status, strict=True)):
        if how == USED:
            runs.between.add(runs.at_the_end)
            runs.at_the_end = 0
            runs.last_used = at
        elif cell.top:
            runs.at_the_end += 1
    return runs
