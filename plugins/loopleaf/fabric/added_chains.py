"""Chains added to the foundation by the line that is worked on it: `ch 1, 2 sc in 2nd ch from hook`."""

from ..notation.tree import Span
from .hand import Hand
from .worked import Made, Place


def begins_on_foundation(hand: Hand) -> bool:
    """Whether the line's first stitch goes into a foundation chain, from either side of it or in a row."""
    first = next(iter(hand.edge.places), None)
    founded = isinstance(first, Made) and first.role == "foundation" and bool(hand.other_side)
    return not hand.begun and not hand.depth and (hand.setting.rows or founded)


def lengthen(hand: Hand, chains: int, span: Span | None) -> None:
    """Put so many chains before the foundation's first; where it is worked along both sides, on both."""
    hand.edge.places = [*_chains(hand, chains, span), *hand.edge.places]
    hand.edge.limit += chains
    hand.begun = True
    if hand.other_side:
        hand.other_side = [*_chains(hand, chains, span), *hand.other_side]


def _chains(hand: Hand, chains: int, span: Span | None) -> list[Place]:
    index, yarn = hand.setting.index, hand.yarn
    return [Made("chain", (), index, yarn, "foundation", at, span=span) for at in range(1, chains + 1)]
