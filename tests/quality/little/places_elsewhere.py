"""Places that are none of the edge's next ones: lower down, left by an earlier row, on another piece."""

from loopleaf.notation.tree import Next, Target

from .below import NOWHERE, USED
from .cells import Misfit
from .hand import Hand


def left_before(hand: Hand, target: Target) -> int:
    """A stitch that an earlier row left unworked."""
    for cell in hand.unworked:
        if hand.fits(target, cell):
            hand.unworked.remove(cell)
            hand.uses += 1
            return NOWHERE
    raise Misfit("fit", "no more unworked stitches")


def of_piece(hand: Hand, place: Next) -> int:
    cells = hand.setting.pieces.get(place.piece)
    if cells is None:
        raise Misfit("place", f"no piece {place.piece} yet")
    at = hand.elsewhere.get(place.piece, 0)
    while at < len(cells) and not hand.fits(place.target, cells[at]):
        at += 1
    if at >= len(cells):
        raise Misfit("fit", f"{place.piece} has no more")
    hand.elsewhere[place.piece] = at + 1
    hand.uses += 1
    return NOWHERE


def stands_before(hand: Hand, target: Target, below: int) -> int:
    """A spike goes in lower down and uses up the place that it stands in front of or behind."""
    if below > hand.setting.rounds:
        raise Misfit("place", f"there is no round {below} below")
    if hand.passed_by:
        hand.passed_by = False
        return NOWHERE
    if target.stitch is not None or target.kind != "stitch":
        return hand.take(target)
    for at in range(hand.pos, hand.limit):
        if hand.cells[at].kind != "picot":
            hand.mark(at, USED)
            hand.pos = at + 1
            hand.last = at
            return NOWHERE
    raise Misfit("fit", "nothing left to stand before")
