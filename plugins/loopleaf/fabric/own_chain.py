"""Along a chain made in the same round: between two legs it is worked from above, and later from below."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

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


def below_own_chain(hand: Hand, place: Next, count: int) -> Loops:
    """`sc in next 3 chs` again, `other side` unsaid: from below is all that is left of a chain whose every
    stitch has been worked into once.
    """
    chain = _chain(hand.made, count, True)
    if chain is None or len(list(_feet(hand.made, chain))) != count:
        return []
    return own_chain(hand, replace(place, far=True), count)


def _chain(made: Sequence[Made | Space], count: int, above: bool) -> Space | None:
    """The last chain of so many that was made and then, or not, worked into from above."""
    chains = [one for one in made if isinstance(one, Space) and one.chains == count]
    return next((one for one in reversed(chains) if above == _worked_above(made, one)), None)


def _worked_above(made: Sequence[Made | Space], chain: Space) -> bool:
    return any(True for _ in _feet(made, chain))


def _feet(made: Sequence[Made | Space], chain: Space) -> Iterator[Place]:
    """The loops of the chain that stitches stand in, one for each stitch."""
    feet = (one.into[0] for one in made if isinstance(one, Made) and one.into)
    yield from (
        foot for foot in feet if getattr(foot, "role", "") == "loop" and getattr(foot, "into", ()) == (chain,)
    )
