"""Going back to stitches that earlier rows left: `join yarn in next unworked st of row 1`."""

from dataclasses import replace

from ..notation.tree import STITCH, JoinYarn, Next, Skip, Step, Target
from .hand import Hand
from .worked import Made


def with_skip_of_unworked(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`sk 10 sts for neck, join yarn in next unworked st`: those are unworked too. Else the same steps."""
    match steps:
        case (Skip(which="next", target=target) as skip, JoinYarn(place=Next() as place), *_):
            if target == STITCH and place.target.unworked:
                return (replace(skip, target=place.target), *steps[1:])
    return steps


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


def take_up_those_of(hand: Hand, at: int) -> bool:
    """Lay what is still unworked of an earlier round: `sk next 8 sts of row 10` goes on behind those that
    later rows have worked. False where they left none of it. at: the round's index."""
    own = hand.unworked[hand.taken_up :]
    places = own or hand.unworked_back[::-1]
    if not places or any(place.round != at for place in places):
        return False
    return take_up_unworked(hand)


def take_up_behind(hand: Hand, own: int) -> None:
    """A row that has gone over the gap at its end, `sc2tog, sc in next st, turn` of a turned heel: what it
    has worked of the stitches left there is taken up, and the edge ends before the others.

    A decrease over both sides closes such a gap; a row without one has only run on. own: how many places lie
    before the gap.
    """
    edge = hand.edge
    beside = tuple(edge.places[own - 1 : own + 1])
    gathered = [one.into for one in hand.made if isinstance(one, Made) and one.form == "tog"]
    closed = any(into[at : at + 2] == beside for into in gathered for at in range(len(into) - 1))
    if not closed:
        needed = max(edge.pos, own + 1)
        hand.trouble("works-past-the-end", None, needed=needed, available=own, what="stitch")
    hand.taken_up = max(edge.pos - own, 0)
    edge.keep(max(edge.pos, own))


def worked_now(target: Target) -> Target:
    """The places by their kind alone, once they lie before the hook."""
    return replace(target, unworked=False)
