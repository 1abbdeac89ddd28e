"""Along a chain made in the same round: between two legs it is worked from above, and later from below."""

from ..notation.tree import Next
from .edge import loops_of
from .hand import Hand
from .worked import Made, Place, Space

Loops = list[tuple[Place, ...]]


def own_chain(hand: Hand, place: Next, count: int) -> Loops:
    """`sc in next 3 chs`, `sc in other side of next 3 chs`: the chains, where the edge has none of its own.

    The chain is a space no more: its stitches are the places. Empty where the round made no such chain.
    """
    if hand.depth or (not place.far and hand.edge.find(place.target, hand.edge.pos) is not None):
        return []
    chains = [one for one in hand.made if isinstance(one, Space) and one.chains == count]
    chain = next((one for one in reversed(chains) if place.far == _worked_above(hand, one)), None)
    if chain is None:
        return []
    chain.back = True
    hand.new[:] = [one for one in hand.new if one is not chain]
    loops = loops_of(chain)
    if not place.far:  # back along it
        loops.reverse()
    hand.last = loops[-1]
    return [(loop,) for loop in loops]


def _worked_above(hand: Hand, chain: Space) -> bool:
    feet = (one.into[0] for one in hand.made if isinstance(one, Made) and one.into)
    return any(getattr(foot, "role", "") == "loop" and getattr(foot, "into", ()) == (chain,) for foot in feet)
