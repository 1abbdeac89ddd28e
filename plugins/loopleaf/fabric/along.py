"""Places along the edge: the next ones, the first, the last, each, and the legs of a gathered stitch."""

from dataclasses import replace
from typing import cast

from ..notation.tree import (
    ONE,
    STITCH,
    Each,
    First,
    JustMade,
    Last,
    Next,
    Over,
    Same,
    Span,
    Target,
)
from .beneath import free_beneath, further_down, stacked_spaces
from .earlier import is_midway
from .edge import Edge, Found
from .free import along_free, free_loops
from .hand import Hand
from .markers import in_made
from .of_piece import each_of_piece, lies_here, of_piece
from .own_chain import below_own_chain, own_chain
from .passed import left_before
from .seek import Into, bound, find_next, missing, number, take, use_first
from .worked import Made, Space
from .worked import Place as MadePlace


def next_places(hand: Hand, place: Next, span: Span | None) -> list[Into]:
    """`in next 3 sts`: the next places of a kind, on the edge, on a leaf's chain, or on another piece."""
    count = number(hand, place.count)
    if place.target.unworked:
        if place.target.kind == "free-loop":
            if is_midway(hand) and (there := free_loops(hand, place.target.loop, place.target.round)):
                return free_beneath(hand, there, count, span)
            return next_places(hand, cast(Next, along_free(hand, place, span)), span)
        if not (hand.laid or begun_on_stitches(hand)):
            return _unworked(hand, count, span)
    if place.piece and place.piece != hand.setting.begun_on:
        if not (place.target.unworked and lies_here(hand, place.piece)):
            return of_piece(hand, place, count, span)
        place = replace(place, target=replace(place.target, unworked=False))
    if hand.leaf is not None:
        if place.target.kind == "chain" and place.target.stitch is None:
            if len(hand.leaf.loops) - hand.leaf.pos >= count:
                return [(p,) for p in hand.next_leaf(count, span)]
            if hand.edge.find(Target("chain"), hand.edge.pos) is None:
                return [(p,) for p in hand.next_leaf(count, span)]
        hand.leaf = None
    if place.stacked:
        return stacked_spaces(hand, place, span)
    if place.below > 1:
        return further_down(hand, place, count, span)
    edge = hand.edge
    if edge.plain and place.target == STITCH:
        if count > edge.limit - edge.pos:
            raise missing(hand, place.target, count, edge.limit - edge.pos, span)
        stretch = edge.places[edge.pos : edge.pos + count]
        edge.pos += count
        hand.uses += count
        hand.since = 0
        if stretch:
            hand.last = stretch[-1]
        return [(p,) for p in stretch]
    if place.target.kind == "chain" and count == 1 and _only_the_chain_left(edge):
        return take(hand, [Found(edge.places[edge.limit - 1], edge.limit - 1, edge.limit)])
    if place.far or place.target.kind == "chain":
        own = own_chain(hand, place, count)
        if not own and edge.find(place.target, edge.pos) is None:
            own = below_own_chain(hand, place, count)
        if own:
            return own
    if place.any and hand.edge.circle and not hand.begun:
        found = find_next(hand, place.target, count, span)
        hand.edge.rotate(found[0].at)
    return take(hand, find_next(hand, place.target, count, span))


def _only_the_chain_left(edge: Edge) -> bool:
    """Whether all that is left of a row is the turning chain at its end: `sk next ch, dc in next ch`."""
    return edge.rest() == 1 and getattr(edge.places[edge.limit - 1], "role", "") == "turning"


def begun_on_stitches(hand: Hand) -> bool:
    """Whether this is the first round of a piece begun on another's stitches, or around an opening: they are
    the unworked ones."""
    places, index = hand.edge.places, hand.setting.index
    stitches = [place for place in places if isinstance(place, Made)]
    founded = any(one.role == "foundation" for one in stitches)
    if len(stitches) < len(places):  # with the chains of an opening as one space
        spaces = len(places) == len(stitches) + 1 and any(isinstance(place, Space) for place in places)
        return spaces and not founded and all(one.round < index - 1 for one in stitches)
    older = any(one.round < index - 1 for one in stitches)
    opening = older and any(one.role == "loop" for one in stitches)
    return (index == 0 or opening) and not founded


def _unworked(hand: Hand, count: int, span: Span | None) -> list[Into]:
    """`in next 6 unworked sts`: what an earlier row going the same way left, once this row's own edge is
    used up.
    """
    edge = hand.edge
    if edge.rest():
        raise hand.stuck("stitches-left-over", span, left=edge.rest(), target="stitch")
    there = len(hand.unworked) - hand.taken_up
    if not there:
        raise hand.stuck("no-such-place", span, what="unworked", there=edge.describe())
    if count > there:
        raise hand.stuck("works-past-the-end", span, needed=count, available=there, what="unworked")
    places = hand.unworked[hand.taken_up : hand.taken_up + count]
    hand.taken_up += count
    hand.uses += count
    hand.last = places[-1]
    return [(p,) for p in places]


def first_places(hand: Hand, place: First, span: Span | None) -> list[Into]:
    """`in first st`: at the start the edge's first place; after a chain that stands on it, that same;
    late in a round, the space that it began in, or its own first stitch."""
    count = number(hand, place.count)
    edge = hand.edge
    if hand.setting.reading.onward and edge.pos:  # the stitch joined to, which comes last
        return last_places(hand, Last(place.count, place.target), span)
    if edge.pos in (0, hand.turned_at):
        return take(hand, find_next(hand, place.target, count, span))
    if hand.stood and edge.pos == 1 and count == 1:
        if place.target.kind in ("space", "loop") and not edge.matches(edge.places[0], place.target):
            return take(hand, find_next(hand, place.target, count, span))
        if place.target.stitch is not None and edge.find(place.target, 0) is None:
            raise missing(hand, place.target, count, 0, span)
        hand.last = edge.places[0]
        return [(edge.places[0],)]
    if hand.setting.rows and place.target == STITCH:
        raise hand.stuck("no-such-place", span, what="first", there=edge.describe())
    ahead = edge.find(place.target, 0) if place.target != STITCH else None
    if ahead is not None and ahead.at >= edge.pos and not hand.joined:  # none of that kind lies behind it
        return take(hand, find_next(hand, place.target, count, span))
    begun_in = edge.places[0] if edge.circle and edge.places else None
    if isinstance(begun_in, Space) and edge.matches(begun_in, place.target):
        hand.last = begun_in
        return [(begun_in,)]
    own = Edge(list(hand.new))
    found = own.find(place.target, 0)
    if found is None:
        raise missing(hand, place.target, count, 0, span)
    return [(found.place,)]


def last_places(hand: Hand, place: Last, span: Span | None) -> list[Into]:
    """`in last 2 sts`: the last places of a kind; what would be left between is stitches-left-over."""
    count = number(hand, place.count)
    if not count:
        return []
    if hand.leaf is not None and place.target.kind == "chain":
        left = len(hand.leaf.loops) - hand.leaf.pos
        if left == count:
            return [(p,) for p in hand.next_leaf(count, span)]
    edge = hand.edge
    if count == 1 and place.target.kind == "stitch" and _leans_on_the_last(hand):
        hand.shared_open = True
        if hand.setting.reading.shared:
            return [(edge.places[-1],)]
    at = edge.side_end()
    wanted = count
    while wanted and at > edge.pos:
        at -= 1
        if edge.begins(at, place.target):
            wanted -= 1
    if wanted:
        raise missing(hand, place.target, count, count - wanted, span)
    left = left_before(hand, place.target, at)
    if left and hand.depth:
        raise hand.stuck("stitches-left-over", span, left=left, target="stitch")
    if left:
        hand.trouble("stitches-left-over", span, left=left, target="stitch")
    found: list[Found] = []
    for _ in range(count):
        one = edge.find(place.target, at)
        assert one is not None
        found.append(one)
        at = one.after
    return take(hand, found)


def _leans_on_the_last(hand: Hand) -> bool:
    """Whether the stitch just made has a leg in the row's last one, which the next stitch may go into too."""
    last = next((one for one in reversed(hand.made) if isinstance(one, Made)), None)
    places = hand.edge.places
    return isinstance(last, Made) and last.form == "tog" and bool(places) and last.into[-1:] == (places[-1],)


def same(hand: Hand, place: Same | JustMade, span: Span | None) -> list[Into]:
    """`in same st`: the place last worked into; at a round's start the one that it was joined to."""
    if isinstance(place, JustMade) and place.number:
        return in_made(hand, place, span)
    edge = hand.edge
    begun = place.begun if isinstance(place, Same) else ""
    if begun in ("first", "chain") and place.target.kind == "chain" and edge.pos and edge.rest() == 1:
        return last_places(hand, Last(ONE, place.target), span)  # an oval comes round to it again
    if hand.last is None and hand.standing is None and edge.places and edge.pos == 0:
        hand.standing = edge.places[0]
    same = hand.last if hand.last is not None else hand.standing
    if isinstance(place, Same) and place.begun and hand.last is not None:
        same = _begun_in(hand, place.begun) or same
    if same is not None and place.target.kind == "space" and hand.gap and hand.gap[0] is same:
        if edge.circle and edge.pos == 0:  # the round begins in this gap, and comes no more to it
            use_first(hand, same)
            hand.gaps = True
        hand.last = same
        return [hand.gap]
    given = bool(hand.opening[1])  # the author's own stitch goes where its name is placed
    if same is None or (
        place.target.kind == "space" and not given and not _is_space(same, place.target.length)
    ):
        long = place.target.length if same is not None and _is_space(same, 0) else 0
        what = f"space {long}" if long else "same"
        raise hand.stuck("no-such-place", span, what=what, there=edge.describe())
    use_first(hand, same)
    hand.last = same
    return [(same,)]


def _begun_in(hand: Hand, by: str) -> MadePlace | None:
    """The place that the round's first stitch stands in; where it was joined, if this is what is said."""
    if by == "join" and hand.standing is not None:
        return hand.standing
    first = (one.into[0] for one in hand.made if isinstance(one, Made) and one.into and one.role in _STANDS)
    return next(first, hand.standing)


_STANDS = frozenset({"stitch", "turning"})


def _is_space(place: MadePlace, length: int) -> bool:
    """Whether it is a space, or one's chain, and, where a length is said, so long."""
    space = place.into[0] if isinstance(place, Made) and place.role == "loop" and place.into else place
    if isinstance(space, Space):
        return length in (0, space.chains)
    return not isinstance(place, Made) or place.role in ("loop", "picot")


def _may_be_none(hand: Hand, place: Each) -> bool:
    """Whether `in each st to end` is no stitch in this size, where others have some, by its reading."""
    hand.none_open = hand.setting.several and place.until.kind == "end"
    return hand.none_open and hand.setting.reading.none


def _none_lies_between(hand: Hand, place: Each, end: int) -> bool:
    """Whether `each sc to last 2 sc` is none where a tip is shaped: the hook stands at these two."""
    told_twice = hand.filled_to == (hand.edge.pos, place.until)
    return place.until.kind == "to-last" and end == hand.edge.pos and not told_twice


def _is_a_top(place: MadePlace) -> bool:
    return isinstance(place, Made) and place.role not in ("row-end", "loop")


def each_place(hand: Hand, place: Each, span: Span | None) -> list[Into]:
    """`in each st around`: every place of the kinds named, up to where the `each` ends."""
    if place.targets[0].unworked:
        if place.targets[0].kind == "free-loop":
            return each_place(hand, cast(Each, along_free(hand, place, span)), span)
        if not (hand.laid or begun_on_stitches(hand)):
            return _unworked(hand, len(hand.unworked) - hand.taken_up, span)
    if place.piece and place.piece != hand.setting.begun_on:
        return each_of_piece(hand, place, span)
    if hand.leaf is not None:
        if place.targets[0].kind == "chain" and len(hand.leaf.loops) > hand.leaf.pos:
            return list(zip(hand.next_leaf(len(hand.leaf.loops) - hand.leaf.pos, span), strict=True))
        hand.leaf = None
    edge = hand.edge
    end = bound(hand, place.until, span)
    if place.evenly and not all(map(_is_a_top, edge.places[edge.pos : end])):
        raise hand.stuck("no-such-place", span, what="even number", there=[])
    if edge.plain and place.targets == (STITCH,) and place.every == 1:
        stretch = edge.places[edge.pos : end]
        told_twice = hand.filled_to == (edge.pos, place.until)
        if not stretch and (place.until.kind == "end" or told_twice):
            if not told_twice and _may_be_none(hand, place):
                return []
            raise missing(hand, STITCH, 1, 0, span)
        edge.pos = end
        hand.uses += len(stretch)
        hand.since = 0
        if stretch:
            hand.last = stretch[-1]
            hand.filled_to = (end, place.until)
        return list(zip(stretch, strict=True))
    found: list[Found] = []
    at = edge.pos
    while at < end:
        ones = [one for t in place.targets if (one := edge.find(t, at, end)) is not None]
        if not ones:
            break
        nearest = min(ones, key=lambda one: one.at)
        found.append(nearest)
        at = nearest.after
    if not found and (_may_be_none(hand, place) or _none_lies_between(hand, place, end)):
        return []
    if not found:
        raise missing(hand, place.targets[0], 1, 0, span)
    if place.every > 1:
        hand.uses += len(found) - len(found[:: place.every])
        skipped, found = found, found[:: place.every]
        taken = take(hand, found)
        edge.pos = max(edge.pos, skipped[-1].after)
        return taken
    taken = take(hand, found)
    left = edge.count(edge.pos, end)
    if left == 0 or (place.until.kind != "end" and left in hand.runs):
        edge.pos = end  # `each sc to last st`: the dc before that is passed as the others were
        hand.filled_to = (end, place.until)
    return taken


def legs(hand: Hand, place: Over, span: Span | None) -> list[Into]:
    """`over next 5 sts`: the places that one gathered stitch leans on."""
    count = number(hand, place.count)
    if hand.leaf is not None:
        if len(hand.leaf.loops) - hand.leaf.pos >= count:
            return [tuple(hand.next_leaf(count, span))]
        hand.leaf = None
    if place.which == "last":
        legs = last_places(hand, Last(place.count, place.target), span)
    elif place.which == "first" and hand.edge.pos:
        raise hand.stuck("no-such-place", span, what="first", there=hand.edge.describe())
    else:
        legs = take(hand, find_next(hand, place.target, count, span))
    return [tuple(leg[0] for leg in legs)]
