"""Places named by where they are, a corner, the centre, the underside of an opening's chains: to come to one
past stitches that nothing skips is a mistake, as it is none to pass other kinds by for the next of a kind.
"""

from collections.abc import Iterator, Sequence

from ..notation.tree import Next, Span
from ..notation.tree import Place as NamedPlace
from .along import begun_on_stitches
from .edge import Edge, solid_corners
from .hand import Hand
from .seek import Into
from .worked import Made, Place, Space

_NEAR = 2
"""So many stitches beside the centre the line means that one, and has miscounted on its way there."""


def watch_the_way(
    hand: Hand, place: NamedPlace, before: int, intos: Sequence[Into], span: Span | None
) -> None:
    """Report what a step has passed over without a word, on its way to such a place.

    before: where on the edge the hook was.
    """
    if not isinstance(place, Next) or place.piece or place.below or hand.on_round is not None or not intos:
        return
    edge = hand.edge
    into = intos[0][0]
    at = next((at for at in range(before, edge.pos) if edge.places[at] is into), None)
    if at is None:
        return
    if place.centre:
        _look_for_the_centre(hand, at, span)
        return
    passed = [one for one in edge.places[before:at] if _is_passed(hand, place, one, into)]
    corners = edge.corners() if passed and place.target.kind == "corner" else ()
    behind = [one for one in range(max(before - _NEAR, 0), before) if id(edge.places[one]) in corners]
    if behind and before - behind[-1] <= len(passed):
        _tell(hand, before, behind[-1], span, "corner")
    elif passed:
        chains = getattr(passed[0], "role", "") == "loop"
        target = "chain" if chains else "stitch"
        hand.trouble("stitches-left-over", span, left=len(passed), target=target, on_the_way=True)


def _is_passed(hand: Hand, place: Next, passed: Place, into: Place) -> bool:
    """Whether one of the places between is passed over silently: before a corner stitch any that no chain
    arches over; around an opening the rest of its stitches, or of its chains."""
    if isinstance(passed, Made) and isinstance(into, Space):
        return begun_on_stitches(hand)  # of an opening, before the chains over it
    if not isinstance(passed, Made) or not isinstance(into, Made):
        return False
    if place.target.kind == "corner":
        return hand.uses > 1 and not isinstance(hand.made[-1], Space) and into.role != "loop"
    if passed.role == "row-end" or not begun_on_stitches(hand):
        return False
    if place.target.kind == "chain":
        return into.role == "loop" != passed.role
    return place.target.unworked and hand.uses > len(hand.new[:1]) and passed.role == "loop"


def _look_for_the_centre(hand: Hand, at: int, span: Span | None) -> None:
    """`3 sc in centre st` a stitch or two beside the middle of the row, or of a corner."""
    edge = hand.edge
    if edge.places[at] in hand.markers:
        return
    centres = set(_centres(edge))
    near = [one for one in centres if abs(one - at) <= _NEAR]
    if at in centres or not near:
        return
    _tell(hand, at, min(near, key=lambda one: abs(one - at)), span, "centre")


def _tell(hand: Hand, at: int, meant: int, span: Span | None, what: str) -> None:
    """Report that the hook has come to one place where another beside it is meant."""
    come_to, number = (hand.edge.count(0, one) + 1 for one in (at, meant))
    hand.trouble("no-such-place", span, what=what, there=[], at=come_to, meant=number, on_the_way=True)


def _centres(edge: Edge) -> Iterator[int]:
    """Where the middle of the row, of what lies between spaces, and of three or more in one place stand."""
    places = edge.places
    tops = [at for at, one in enumerate(places) if isinstance(one, Made) and one.role != "picot"]
    if not edge.circle and len(tops) % 2:
        yield tops[len(tops) // 2]
    run: list[int] = []
    for at, one in enumerate([*places, None]):
        if isinstance(one, Made):
            run.append(at)
        elif run:
            if len(run) % 2 and len(run) < len(tops):
                yield run[len(run) // 2]
            run = []
    where = {id(one): at for at, one in enumerate(places)}
    for corner in solid_corners(places):
        yield where[id(corner[len(corner) // 2])]
