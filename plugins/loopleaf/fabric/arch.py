"""A tall stitch that closes a round as its last arch or the far end of it: `ch 2, dc in first sc` for a ch-5
sp, `hdc in top of ch-3` for a ch-2 sp.
"""

from dataclasses import replace

from ..notation.tree import (
    ONE,
    ChainOf,
    CountsAs,
    FastenOff,
    First,
    Join,
    Marker,
    Next,
    Step,
    Tally,
    Turn,
    Work,
)
from ..notation.tree import Place as Named
from .closed_arch import on_the_closing
from .hand import Hand
from .worked import Space

_AFTER = (Turn, FastenOff, Marker, Tally)
_NEARLY = 1
"""So many chains a stitch may be taller or shorter than those it stands for: print is no stricter."""


def closing_arch(hand: Hand, step: Step, following: tuple[Step, ...]) -> Work | None:
    """The step said clearly, `dc in first sc (counts as ch-5 sp)`; None where it closes no arch.

    Only the round's other arches tell how long the last one is.
    """
    if not hand.spaced or hand.setting.worked != "joined rounds" or hand.depth or hand.joined:
        return None
    place: Named
    match step:
        case Work(each=each, places=(First(count=count) as place,), counts=None) if each == count == ONE:
            alone = not hand.edge.rest()  # else `dc in first st` may be the first stitch of the round below
        case Work(each=each, places=(ChainOf() as place,), counts=None) if each == ONE:
            alone = hand.new[:1] != [] and getattr(hand.new[0], "role", "") == "turning"
        case Work(each=each, places=(Next() as named,), counts=None) if each == ONE:
            there = on_the_closing(hand, named)
            if there is None:
                return None
            place, alone, step = there, False, replace(step, places=(there,))
        case Join(place=First() | ChainOf() | None as named, how=""):
            place, alone = named or First(), True
        case _:
            return None
    if isinstance(step, Work) and not all(isinstance(one, _AFTER) for one in following):
        return None
    space = _arch(hand, hand.setting.heights.get(step.stitch.kind, 0), alone)
    if not space or step.stitch.form:
        return None
    if isinstance(step, Work):
        return replace(step, counts=CountsAs(space=space))
    return Work(step.stitch, places=(place,), counts=CountsAs(space=space), span=step.span)


def _arch(hand: Hand, height: int, alone: bool) -> int:
    """How many chains the arch before the last has, if the last one and a stitch so high make as many; alone:
    the stitch may be an arch by itself, where it is just as high.
    """
    last = hand.made[-1]
    arches = [one.chains for one in hand.made[:-1] if isinstance(one, Space)]
    if not arches or not height:
        return 0
    if not isinstance(last, Space):
        return height if alone and height > 1 and height in arches else 0
    nearly = abs(last.chains + height - arches[-1]) <= _NEARLY
    return arches[-1] if nearly and last.chains < arches[-1] else 0
