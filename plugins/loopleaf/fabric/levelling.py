"""A spiral's last stitches, worked into its own first ones: they level the edge, or move the start on."""

from itertools import takewhile

from ..notation.tree import FastenOff, First, Next, Step, Target, Work
from .hand import Hand
from .seek import Into, number
from .worked import Made


def past_the_marker(hand: Hand, step: Work) -> list[Into]:
    """A spiral's slip stitches past its marker level it: they go into the round's own first stitches and
    don't count.

    Other stitches go past it only where the line moves the marker."""
    edge = hand.edge
    slips = step.stitch.kind == "slip"
    if (
        not hand.setting.spiral
        or edge.pos < len(edge.places)
        or hand.depth
        or not (slips or hand.moves_marker)
    ):
        return []
    match step.places:
        case (Next(count=count, target=Target(kind="stitch")),) | (
            First(count=count, target=Target(kind="stitch")),
        ):
            wanted = number(hand, count)
            own = [p for p in hand.new if isinstance(p, Made)][hand.moved : hand.moved + wanted]
            hand.levelling = slips
            hand.moved += wanted
            return [(p,) for p in own]
        case _:
            return []


FEW = 3
"""A spiral's step is levelled over a few stitches: never over more than a third of its round."""


def only_levels(hand: Hand, steps: tuple[Step, ...]) -> bool:
    """`sl st in next 2 sts, fasten off` as a line of its own: it levels the end of a spiral, and the rest of
    the round below stays as it is."""
    works = list(takewhile(lambda step: isinstance(step, Work), steps))
    last = works[-1] if works else None
    if not hand.setting.spiral or not hand.setting.index or not isinstance(last, Work):
        return False
    ends = any(isinstance(step, FastenOff) for step in steps[len(works) : len(works) + 1])
    few = hand.edge.pos * FEW <= len(hand.edge.places) and hand.edge.pos == len(hand.made)
    return ends and few and last.stitch.kind == "slip"
