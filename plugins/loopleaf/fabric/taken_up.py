"""Going back to stitches that earlier rows left: `join yarn in next unworked st of row 1`."""

from dataclasses import replace

from ..notation.tree import Target
from .hand import Hand


def take_up_unworked(hand: Hand) -> bool:
    """Lay what was left unworked before the hook in place of the row below; False where nothing was.

    What a row going this way left comes in its order; what only rows going the other way left, from the far
    end. True too where it lies there already.
    """
    if hand.laid:
        return True
    own = hand.unworked[hand.taken_up :]
    places = own or hand.unworked_back[::-1]
    if not places:
        return False
    hand.edge.lay(list(places))
    hand.laid = True
    if own:
        hand.taken_up = len(hand.unworked)
    else:
        hand.taken_back = True
    return True


def worked_now(target: Target) -> Target:
    """The places by their kind alone, once they lie before the hook."""
    return replace(target, unworked=False)
