"""Along the other side of a foundation chain, or back around the tip of a new one."""

from ..notation.tree import Each, Next, OtherSide, Over, Span
from ..notation.tree import Place as NamedPlace
from .hand import Hand, Leaf
from .own_side import goes_on_below
from .worked import Made

AROUND_A_TIP = 3
"""So many stitches in the chain begun with go around its end: the other side stops before it."""


def go_along_other_side(hand: Hand, step: OtherSide) -> None:
    """`working along other side of foundation ch`, `… of ch`."""
    if step.of == "chain" and hand.leaf is not None:
        leaf = hand.leaf
        first = max(leaf.first, 0)
        hand.leaf = Leaf(list(reversed(leaf.loops[first : leaf.pos - 1])), span=step.span)
        return
    edge = hand.edge
    if goes_on_below(hand):
        return
    if not hand.other_side:
        raise hand.stuck("no-such-place", step.span, what="other side", there=edge.describe())
    if edge.pos < edge.limit:
        raise hand.stuck("stitches-left-over", step.span, left=edge.rest(), target="chain")
    at_the_tip = [one for one in hand.new if isinstance(one, Made) and one.into == (edge.places[-1],)]
    hand.tip_open = len(at_the_tip) == 1
    behind = hand.other_side[max(hand.first_worked, 0) :][::-1]
    edge.places = edge.places + behind[not (hand.setting.reading.tip and hand.tip_open) :]
    begun_in = edge.places[max(hand.first_worked, 0)]
    into_first = sum(1 for one in hand.made if isinstance(one, Made) and one.into == (begun_in,))
    hand.turned_tip = edge.places[-1] if len(behind) > 1 and into_first >= AROUND_A_TIP else None
    edge.limit = len(edge.places)
    hand.turned_at = edge.pos
    hand.other_side = []


_AT_A_TIP = 2
"""Stitches that the end chain takes at the least where the work goes around it."""


def turn_unsaid(hand: Hand, place: NamedPlace, span: Span | None) -> None:
    """`4 sc in last ch, sc in next 2 ch`, where the chain is to be worked on both sides and the first is used
    up: only the other can be meant.
    """
    edge = hand.edge
    if not hand.other_side or hand.setting.rows or hand.leaf is not None:
        return
    if not isinstance(place, Next | Over | Each):
        return
    target = place.targets[0] if isinstance(place, Each) else place.target
    if target.kind not in ("stitch", "chain") or target.stitch or edge.pos < len(edge.places):
        return
    tip = [one for one in hand.new if isinstance(one, Made) and one.into == (edge.places[-1],)]
    if len(tip) >= _AT_A_TIP:
        go_along_other_side(hand, OtherSide(span=span))
