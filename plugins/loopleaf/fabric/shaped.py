"""A plain row with its increases or decreases spread evenly, `sc around, increasing 6 sts evenly`, or at a
spot, `decreasing 1 st at neck edge`.
"""

from ..notation.tree import STITCH, Leave, Shaping, Stitch, Work
from .hand import Hand
from .seek import Into, missing, number
from .stitches import make
from .worked import NUMBERED, Made


def shape(hand: Hand, step: Work, shaping: Shaping, intos: list[Into]) -> None:
    """A stitch in each place, but for those where two are made in one, or one over two."""
    places = len(intos)
    change = number(hand, shaping.count)
    worked = 0
    if shaping.total:
        worked = sum(1 for one in hand.made if isinstance(one, Made) and one.role in NUMBERED)
        change = change - worked - places if shaping.how == "inc" else places + worked - change
    asked = change if shaping.how == "inc" else 2 * change
    if change < 0:
        asked = number(hand, shaping.count)
        raise hand.stuck("works-past-the-end", step.span, needed=asked, available=places, shaping=shaping.how)
    if asked > places:
        raise missing(hand, STITCH, max(asked, places + 1), places, step.span)
    whole = places if shaping.how == "inc" else places - change
    stitch, at = step.stitch, 0
    gathered = Stitch(stitch.kind, "tog", 2, stitch.loop)
    aside = whole // 2 if _in_the_middle(shaping.spot) else 0
    first = not aside and _at_the_beginning(hand, shaping)
    for one in range(aside, whole + aside):
        nth = whole - 1 - one if first else one
        shaped = (nth + 1) * change // whole > nth * change // whole
        if not shaped or shaping.how == "inc":
            for _ in range(2 if shaped else 1):
                make(hand, stitch, intos[at], step.span)
            at += 1
        else:
            make(hand, gathered, (*intos[at], *intos[at + 1]), step.span)
            at += 2


def _in_the_middle(spot: str) -> bool:
    """Whether a spot is the row's middle: `center back`."""
    return any(word in ("center", "centre", "middle") for word in spot.split())


_EDGES = frozenset({"neck", "neckline", "armhole", "front", "shoulder"})


def _at_the_beginning(hand: Hand, shaping: Shaping) -> bool:
    """Whether an edge is where the row begins: it works on to the end from there, or an earlier row has left
    stitches at its end for it, and the work has been turned since. Else the last stitch is shaped: which end
    the edge is at depends on the piece."""
    if shaping.first or not shaping.spot or hand.setting.worked != "rows":
        return shaping.first
    named = _EDGES & set(shaping.spot.split())
    for since, row in enumerate(reversed(hand.earlier), 1):
        steps = row.line.steps if row.line is not None else ()
        left = [one for one in steps if isinstance(one, Leave)]
        if any(named & set(one.purpose.lower().split()) for one in left):
            return since % 2 == 1
    return False
