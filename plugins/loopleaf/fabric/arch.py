"""A tall stitch that closes a round as the far end of its last arch: `ch 2, dc in first sc` for a ch-5 sp."""

from dataclasses import replace

from ..notation.tree import (
    ONE,
    CountsAs,
    FastenOff,
    First,
    Join,
    Marker,
    Step,
    Tally,
    Turn,
    Work,
)
from .hand import Hand
from .worked import Space

_NEARLY = 1
"""So many chains a stitch may be taller or shorter than those it stands for: print is no stricter."""


def closing_arch(hand: Hand, step: Step, following: tuple[Step, ...]) -> Work | None:
    """The step said clearly, `dc in first sc (counts as ch-5 sp)`; None where it closes no arch.

    Only the round's other arches tell how long the last one is.
    """
    if hand.setting.worked != "joined rounds" or hand.depth or hand.joined:
        return None
    match step:
        case Work(each=each, places=(First(count=count) as place,), counts=None) if each == count == ONE:
            if not all(isinstance(one, Turn | FastenOff | Marker | Tally) for one in following):
                return None
        case Join(place=First() | None as named, how=""):
            place = named or First()
        case _:
            return None
    space = _arch(hand, hand.setting.heights.get(step.stitch.kind, 0))
    if not space or step.stitch.form:
        return None
    if isinstance(step, Work):
        return replace(step, counts=CountsAs(space=space))
    return Work(step.stitch, places=(place,), counts=CountsAs(space=space), span=step.span)


def _arch(hand: Hand, height: int) -> int:
    """How many chains the arch before the last has, if the last one and a stitch so high make as many."""
    last = hand.made[-1] if hand.made else None
    before = next((one for one in reversed(hand.made[:-1]) if isinstance(one, Space)), None)
    if not isinstance(last, Space) or before is None or not height or last.chains >= before.chains:
        return 0
    return before.chains if abs(last.chains + height - before.chains) <= _NEARLY else 0
