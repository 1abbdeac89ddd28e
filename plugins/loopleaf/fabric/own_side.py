"""Down the side of the piece itself: a row worked into the ends of the rows before it."""

from ..notation.tree import Evenly, RowEnds
from .around import row_end, ways
from .hand import Hand
from .worked import Made


def lay_own_side(hand: Hand, place: Evenly | RowEnds) -> None:
    """Lay the row ends of the side where the hook is, from the last row down, where the line goes into such
    and none lies before it. A row that turns aside at its own end has its end there too."""
    edge = hand.edge
    named = isinstance(place, RowEnds) or place.along == "row ends"
    if not named or not hand.setting.rows or not hand.earlier or (hand.new and edge.rest()):
        return
    if any(getattr(one, "role", "") == "row-end" for one in edge.places):
        return
    gone = ways(hand.earlier)
    aside = bool(hand.new)
    ends = [
        row_end(row, at, hand.setting.size, first=(gone[at] == gone[-1]) == aside)
        for at, row in enumerate(hand.earlier)
    ]
    last = next((one for one in reversed(hand.new) if isinstance(one, Made)), None)
    if last is not None:
        ends.append(Made(last.kind, (last,), last.round, last.yarn, "row-end", len(hand.earlier) + 1))
    edge.lay([end for end in reversed(ends) if end is not None])
    hand.standing = hand.last = None
