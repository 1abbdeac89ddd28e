"""Groups named as places, `V-st in next V-st`: each is one place, its chain space or its middle stitch."""

from ..notation.tree import Each, First, Last, Next, Span, Target
from .along import each_place, first_places, last_places, next_places
from .hand import Hand
from .seek import Into, bound, number
from .worked import Made, Place, Space


def next_ones(hand: Hand, place: Next, span: Span | None) -> list[Into]:
    """`in next 3 sts`, `in next V-st`: a group's stitches aren't places one by one."""
    if place.piece or place.below or place.target.unworked or hand.leaf is not None:
        return next_places(hand, place, span)
    groups = _groups(hand, place.target, hand.edge.limit, number(hand, place.count))
    return _into(hand, groups) if groups else next_places(hand, place, span)


def first_one(hand: Hand, place: First, span: Span | None) -> list[Into]:
    """`in first 2 sts`, `in first V-st`."""
    if hand.edge.pos == 0 or (hand.stood and hand.edge.pos == 1):
        groups = _groups(hand, place.target, hand.edge.limit, number(hand, place.count))
        if groups:
            return _into(hand, groups)
    return first_places(hand, place, span)


def last_one(hand: Hand, place: Last, span: Span | None) -> list[Into]:
    """`in last 2 sts`, `in last sh`."""
    count = number(hand, place.count)
    groups = _groups(hand, place.target, hand.edge.limit, None) if hand.leaf is None else []
    if count and len(groups) == count:  # those before it would be left over
        return _into(hand, groups)
    return last_places(hand, place, span)


def each_one(hand: Hand, place: Each, span: Span | None) -> list[Into]:
    """`in each st across`, `in each V-st across`."""
    target = place.targets[0]
    if len(place.targets) > 1 or place.every > 1 or target.unworked or hand.leaf is not None:
        return each_place(hand, place, span)
    if target.stitch is None:
        return each_place(hand, place, span)
    groups = _groups(hand, target, bound(hand, place.until, span), None)
    return _into(hand, groups) if groups else each_place(hand, place, span)


Group = tuple[int, int, Place]
"""Where a group begins on the edge, where the cursor stands after it, and where the hook goes in."""


def _groups(hand: Hand, target: Target, end: int, count: int | None) -> list[Group]:
    """The next groups of a name, so many or all; none where it doesn't name groups, or one has no middle."""
    stitch = target.stitch
    if target.kind != "stitch" or stitch is None or stitch.post:
        return []
    if stitch.kind != "special" and stitch.form not in ("shell", "v-stitch"):
        return []
    edge = hand.edge
    groups: list[Group] = []
    begun = edge.begun.get(stitch.name, 0)  # the last one, if the row below was begun with it
    at = edge.pos
    while count is None or len(groups) < count:
        found = edge.find(target, at, end)
        if found is None and at <= end - begun < end == len(edge.places):
            middle = _middle(edge.places[end - begun :])
            if middle is None:
                return []
            groups.append((end - begun, end, middle))
            at = end
            continue
        if found is None:
            return groups if count is None else []
        unit = getattr(found.place, "unit", 0)
        after = found.at + 1
        while after < end and unit and getattr(edge.places[after], "unit", 0) == unit:
            after += 1
        at = after
        if found.at and unit and getattr(edge.places[found.at - 1], "unit", 0) == unit:
            continue  # worked into or passed before: `next` is another
        middle = _middle(edge.places[found.at : after])
        if not unit or middle is None:
            return []
        groups.append((found.at, after, middle))
    return groups


def _middle(group: list[Place]) -> Place | None:
    spaces = [one for one in group if isinstance(one, Space)]
    tops = [one for one in group if isinstance(one, Made) and one.role != "picot"]
    if len(spaces) == 1:
        return spaces[0]
    return tops[len(tops) // 2] if len(tops) % 2 and not spaces else None


def _into(hand: Hand, groups: list[Group]) -> list[Into]:
    for at, after, middle in groups:
        hand.use(at, after, middle)
    return [(middle,) for _, _, middle in groups]
