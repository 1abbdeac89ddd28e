"""Into the ends of rows, and evenly along a stretch of an edge."""

from ..notation.tree import STITCH, Evenly, RowEnds, Span, Target
from .edge import Found
from .hand import Hand
from .seek import Into, bound, find_next, missing, number, take
from .worked import Made


def row_ends(hand: Hand, place: RowEnds, span: Span | None) -> list[Into]:
    """`in end of each row`: the ends of rows along an edge."""
    edge = hand.edge
    target = Target("row-end", stitch=place.stitch)
    if place.side and edge.rest() and not edge.matches(edge.places[edge.pos], target):
        raise hand.stuck("stitches-left-over", span, left=edge.side_end() - edge.pos, target="stitch")
    if place.count is not None:
        count, left = number(hand, place.count), edge.side_end() - edge.pos
        if edge.sided and 0 < left < count and edge.matches(edge.places[edge.pos], Target("row-end")):
            raise hand.stuck("works-past-the-end", span, needed=count, available=left, what="row-end")
        return take(hand, find_next(hand, target, count, span))
    end = bound(hand, place.until, span)
    found: list[Found] = []
    at = edge.pos
    while at < end:
        made = edge.places[at]
        fits = isinstance(made, Made) and made.role == "row-end"
        if not fits:
            if found:
                break
        elif place.stitch is None or (isinstance(made, Made) and made.kind == place.stitch.kind):
            found.append(Found(made, at, at + 1))
        at += 1
    if not found:
        kinds = {one.kind for one in edge.places if isinstance(one, Made) and one.role == "row-end"}
        if place.stitch is not None and kinds and place.stitch.kind not in kinds:
            there = [f"row-end {kind}" for kind in sorted(kinds)]
            raise hand.stuck("no-such-place", span, what=f"row-end {place.stitch.kind}", there=there)
        raise missing(hand, target, 1, 0, span)
    return take(hand, found)


def evenly(hand: Hand, place: Evenly, span: Span | None) -> list[Into]:
    """All that is left to the corner or the end, as one stretch; the caller spreads its stitches over it."""
    edge = hand.edge
    end = bound(hand, place.until, span)
    stretch = edge.places[edge.pos : end]
    if not stretch:
        raise missing(hand, STITCH, 1, 0, span)
    hand.uses += len(stretch)
    edge.pos = end
    hand.last = stretch[-1]
    return [(p,) for p in stretch]
