"""What stands behind a beginning chain, and so says what that is."""

from ..notation.tree import ONE, First, Next, Over, Step, Stitch, Work
from .hand import Hand
from .seek import number


def goes_into_the_first(step: Step | None) -> bool:
    """Whether one stitch goes into the first, on which a chain that counts stands as well."""
    match step:
        case Work(each=each, places=(First(count=count, target=target),)):
            return each == count == ONE and target.kind == "stitch"
    return False


def slips_to_a_space(step: Step | None) -> bool:
    """Whether a slip stitch goes on to a space: the row begins there."""
    match step:
        case Work(stitch=Stitch(kind="slip"), places=(First(target=target) | Next(target=target),)):
            return target.kind in ("space", "loop")
    return False


def is_a_leg(hand: Hand, follow: Work) -> bool:
    """`ch 2, dc2tog over next 2 sts (counts as dc3tog)`: the chain is the leg that is left."""
    whole = follow.counts.stitch if follow.counts is not None else None
    if whole is None or not whole.number or not all(isinstance(one, Next | Over) for one in follow.places):
        return False
    return (
        sum(number(hand, one.count) for one in follow.places if isinstance(one, Next | Over)) + 1
        == whole.number
    )
