"""What an `each` leaves to the step behind it, because that step names it."""

from ..notation.tree import ChainOf, Each, Step, Work
from .hand import Hand
from .seek import chain_at_the_end


def chain_kept(hand: Hand, step: Step, follow: Step | None) -> int:
    """1 where `dc in each dc across, dc in top of tch` stops before the turning chain; else 0."""
    if not hand.setting.rows or hand.depth or not isinstance(step, Work) or not isinstance(follow, Work):
        return 0
    match step.places[-1:], follow.places[:1]:
        case (Each(targets=(target, *_)),), (ChainOf(),) if not target.unworked:
            return hand.edge.limit - chain_at_the_end(hand)
    return 0
