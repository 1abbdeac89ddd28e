"""Along a chain made in the same round: between two legs it is worked from above, and later from below."""

from collections.abc import Sequence

from ..notation.tree import Next
from .edge import loops_of
from .hand import Hand
from .worked import Made, Place, Space

Loops = list[tuple[Place, ...]]


def own_chain(hand: Hand, place: Next, count: int) -> Loops:
    """`sc in next 3 chs`, `sc in other side of next 3 chs`: the chains, where the edge has none of its own.

    The chain is a space no more: its stitches are the places. Empty where neither the round nor, for the
    other side, the one before it made such a chain.
    """
    if hand.depth or (not place.far and hand.edge.find(place.target, hand.edge.pos) is not None):
        return []
    chain = _chain(hand.made, count, place.far)
    if chain is None and place.far and hand.earlier:
        before = hand.earlier[-1].sizes[hand.setting.size]
        chain = _chain(before.made, count, True) if before is not None else None
    if chain is None:
        return []
    chain.back = True
    hand.new[:] = [one for one in hand.new if one is not chain]
    loops = loops_of(chain)
    if not place.far:  # back along it
        loops.reverse()
    hand.last = loops[-1]
    return [(loop,) for loop in loops]


def _chain(made: Sequence[Made | Space], count: int, above: bool) -> Space | None:
    """The last chain of so many that was made and then, or not, worked into from above."""
    chains = [one for one in made if isinstance(one, Space) and one.chains == count]
    return next((one for one in reversed(chains) if above == _worked_above(made, one)), None)


def _worked_above(made: Sequence[Made | Space], chain: Space) -> bool:
    feet = (one.into[0] for one in made if isinstance(one, Made) and one.into)
    return any(getattr(foot, "role", "") == "loop" and getattr(foot, "into", ()) == (chain,) for foot in feet)
