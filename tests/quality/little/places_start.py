"""Where a piece or a point begins: a ring, a foundation chain, a chain made inside the round."""

from loopleaf.notation.tree import Target

from .below import NOWHERE, PASSED, SKIPPED, USED
from .cells import Misfit
from .hand import Hand


def on_leaf(hand: Hand, target: Target) -> bool:
    """Whether `in next ch` stays on the chain made inside the round."""
    if hand.leaf is None:
        return False
    if target.kind == "chain" and hand.leaf.left:
        return True
    hand.leaf = None
    return False


def ring(hand: Hand) -> int:
    if not hand.edge.ring:
        raise Misfit("place", "there is no ring")
    if not hand.ring_used:
        if SKIPPED in hand.status:
            raise Misfit("fit", "chains of the ring are skipped and then the ring is worked")
        hand.ring_used = True
        for at in range(len(hand.cells)):
            hand.status[at] = PASSED
        hand.uses = 1
        hand.pos = len(hand.cells)
    hand.last = NOWHERE
    return NOWHERE


def from_hook(hand: Hand, number: int) -> int:
    if hand.leaf is not None and hand.leaf.at == 0:
        if number > hand.leaf.length:
            raise Misfit("place", f"a chain of {hand.leaf.length} has no {number}th")
        hand.leaf.at = number
        hand.uses += hand.leaf.grows
        return NOWHERE
    if not hand.edge.foundation or hand.pos:
        raise Misfit("place", "no chain at the hook")
    if number > len(hand.cells):
        raise Misfit("place", f"the foundation chain has no {number}th")
    for at in range(number - 1):
        hand.mark(at, PASSED)
    at = number - 1
    hand.mark(at, USED)
    hand.pos = number
    hand.last = at
    return at
