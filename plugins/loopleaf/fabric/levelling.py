"""A spiral's last stitches, worked into its own first ones: they level the edge, or move the start on."""

from ..notation.tree import First, Next, Target, Work
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
