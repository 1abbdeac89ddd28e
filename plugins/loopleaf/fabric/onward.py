"""Rounds that begin without a chain, on the stitch that the last one was joined to: petals and loops."""

from ..notation.tree import (
    STITCH,
    Chain,
    Facing,
    First,
    Group,
    JoinYarn,
    Lying,
    Next,
    Repeat,
    Same,
    Skip,
    Step,
    Stitch,
    Turn,
    Work,
    Yarn,
)
from .edge import Stuck
from .hand import Hand
from .last_pass import Perform
from .seek import number
from .worked import Made


def begins_without_chain(steps: tuple[Step, ...]) -> bool:
    """Whether a round begins with a repeat, whose `next` may be the stitch behind the one joined to."""
    for step in steps:
        match step:
            case Work(stitch=Stitch(kind="slip")) | JoinYarn():
                return False
            case Repeat(steps=inside):
                return any(isinstance(one, Work | Group | Skip) for one in inside)
            case Work() | Group() | Chain():
                return False
    return False


def begins_in_a_space(steps: tuple[Step, ...]) -> bool:
    """Whether a line's first stitch goes into a space, behind a beginning chain or without one."""
    for step in steps:
        match step:
            case Repeat(steps=inside):
                return begins_in_a_space(inside)
            case Work(places=(Next() | First() as place, *_)) | Group(places=(Next() | First() as place, *_)):
                return place.target.kind in ("space", "loop")
            case Chain() | Turn() | Yarn() | Facing() | Lying():
                continue
        return False
    return False


def ends_on_the_first(hand: Hand, step: Repeat, perform: Perform) -> bool:
    """Work a last pass whose slip stitch into the next stitch goes into the first one: petals all round."""
    edge = hand.edge
    match step.steps[-1]:
        case Work(stitch=Stitch(kind="slip"), places=(Next(target=target, below=0, piece=""),)) as slip:
            pass
        case _:
            return False
    if not edge.circle or target != STITCH or number(hand, slip.each) != 1 or hand.into_spaces:
        return False
    before = hand.mark()
    try:
        perform(hand, step.steps[:-1])
    except Stuck:
        hand.back_to(before)
        return False
    if edge.rest() or not isinstance(edge.places[0], Made):
        hand.back_to(before)
        return False
    hand.put(slip.stitch, (edge.places[0],), slip.span)
    return True


def stays_on_the_last(step: Repeat) -> bool:
    """Whether a pass begins where the last one ended: `*(…) in same st, sl st in next st`."""
    match step.steps:
        case (Work(places=(Same(), *_)) | Group(places=(Same(), *_)), *_):
            return True
    return False


def chains_of(step: Repeat) -> tuple[Step, ...]:
    """The chains that each pass begins with, if it is one stitch besides."""
    *chains, last = step.steps
    return tuple(chains) if isinstance(last, Work) and all(isinstance(one, Chain) for one in chains) else ()
