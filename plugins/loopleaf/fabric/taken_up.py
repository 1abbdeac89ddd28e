"""Going back to stitches that earlier rows left: `join yarn in next unworked st of row 1`."""

from collections.abc import Sequence
from dataclasses import replace

from ..notation.tree import STITCH, Facing, JoinYarn, Next, Skip, Step, Target
from .hand import Hand
from .worked import Made, Place


def with_skip_of_unworked(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`sk 10 sts for neck, join yarn in next unworked st`: those are unworked too. Else the same steps."""
    match steps:
        case (Skip(which="next", target=target) as skip, JoinYarn(place=Next() as place), *_):
            if target == STITCH and place.target.unworked:
                return (replace(skip, target=place.target), *steps[1:])
    return steps


def skips_to_a_new_yarn(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`sk 8 sts at center, join yarn in next st` as said of the stitches that an earlier row left; ()
    where a line doesn't begin so."""
    match steps:
        case (Facing() as facing, *rest):
            later = skips_to_a_new_yarn(tuple(rest))
            return (facing, *later) if later else ()
        case (
            Skip(which="next", target=target, until=None) as skip,
            JoinYarn(place=Next() as place) as join,
            *_,
        ):
            if target == place.target == STITCH and not place.piece:
                left = replace(STITCH, unworked=True)
                return (
                    replace(skip, target=left),
                    replace(join, place=replace(place, target=left)),
                    *steps[2:],
                )
    return ()


def take_up_unworked(hand: Hand, of: int | None = None) -> bool:
    """Lay what was left unworked before the hook in place of the row below; False where nothing was.

    What a row going this way left comes in its order; what only rows going the other way left, from the far
    end. True too where it lies there already. of: the index of the round whose stitches alone are meant.
    """
    if hand.laid:
        return True
    ahead = hand.unworked[hand.taken_up :]
    own, aside = _parted(ahead, of)
    back, aside_back = _parted(hand.unworked_back, of)
    if not own and not back:
        return False
    hand.edge.lay(own or back[::-1])
    hand.laid = True
    if own:
        hand.unworked[hand.taken_up :] = own + aside
        hand.taken_up += len(own)
    else:
        hand.unworked_back = aside_back
    return True


def _parted(places: Sequence[Place], of: int | None) -> tuple[list[Place], list[Place]]:
    """The places that are meant, and those of other rounds."""
    meant = [one for one in places if of in (None, one.round)]
    return meant, [one for one in places if of not in (None, one.round)]


def take_up_those_of(hand: Hand, at: int) -> bool:
    """Lay what is still unworked of an earlier round: `sk next 8 sts of row 10` goes on behind those that
    later rows have worked; what other rows left, as at an armhole, is no part of it. False where they left
    none of it. at: the round's index."""
    return not hand.laid and take_up_unworked(hand, at)


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
