"""Rounds that go on from the stitch joined to without a beginning of their own, and come back to it last."""

from collections.abc import Sequence

from loopleaf.notation.tree import FastenOff, First, Group, Next, Repeat, Same, Step, Stitch, Turn, Work

from .counts import PETAL
from .hand import Hand
from .setting import ONWARD


def goes_on(hand: Hand, steps: Sequence[Step]) -> None:
    """`*ch 4, sc in next sc; rep from * around, working last sc in first sc`: the stitch joined to is the
    last place of the round. A slip stitch there is a join instead where the round makes such a stitch itself.
    """
    of = hand.setting
    worked = [step for step in steps if not isinstance(step, FastenOff | Turn)]
    if not hand.edge.at_hook or not hand.cells or of.rows or of.spiral:
        return
    match worked:
        case [Repeat(ending=(Work(places=(First(target=target),)) as last,)) as own] if not _back(own.steps):
            own_kind = target.stitch is None or target.stitch.kind in hand.kinds
            clear = hand.counted or last.stitch.kind != "slip" or not own_kind
            if clear and hand.fits(target, hand.cells[0]) and of.choose(ONWARD, (0, 1)):
                hand.lay([*hand.cells[1:], hand.cells[0]])
                hand.onward = True


def _back(steps: Sequence[Step]) -> bool:
    """Whether something goes into the place where the yarn is."""
    places = [place for step in steps if isinstance(step, Work | Group) for place in step.places]
    return any(isinstance(place, Same | First) for place in places)


def once_more(hand: Hand, step: Repeat) -> bool:
    """`*(ch 3, 2 dc, ch 3, sl st) in same st, sl st in next st; rep from * around`: the last place has been
    come to and has no petal yet; its slip stitch then goes into the first one.
    """
    if step.ending or step.omitting or step.stop_at is not None:
        return False
    match step.steps:
        case (Group(places=(Same(),)), *_, Work(stitch=Stitch(kind="slip"), places=(Next(),))):
            circle = hand.edge.shape == "circle" and not hand.setting.spiral and not hand.setting.rows
            petals = len(hand.made) > 1 and hand.made[-1].form == hand.made[-2].form == PETAL
            return circle and petals
    return False
