"""Looking along the edge: the next places of a kind, and what to say when there are none."""

from dataclasses import replace

from ..notation.tree import STITCH, Amount, Span, Target, Until
from .edge import Edge, Found, is_of
from .grouped import group_at, is_bare_shell, last_gap, shells
from .hand import Hand
from .worked import Made, Place

Into = tuple[Place, ...]
"""What one stitch goes into: one place, or one for each of its legs."""


def number(hand: Hand, amount: Amount) -> int:
    """The amount for the size in work; 0 where the size skips it."""
    return amount.of(hand.setting.size) or 0


def find_next(hand: Hand, target: Target, count: int, span: Span | None) -> list[Found]:
    """The next `count` places of a kind, not yet used; what doesn't fit is works-past-the-end or
    no-such-place."""
    edge = hand.edge
    if is_bare_shell(target):
        return _next_shells(hand, target, count, span)
    found: list[Found] = []
    at = edge.pos
    while len(found) < count:
        one = edge.find(target, at)
        if one is None:
            raise missing(hand, target, count, len(found), span)
        found.append(one)
        at = one.after
    return found


def _next_shells(hand: Hand, target: Target, count: int, span: Span | None) -> list[Found]:
    """The next shells that no name was given to, each with its middle for its place."""
    edge = hand.edge
    groups = shells(edge)
    found = [Found(group[len(group) // 2], at, at + len(group)) for at, group in groups if at >= edge.pos]
    if len(found) < count:
        raise missing(hand, target, count, len(found), span)
    return found[:count]


def missing(hand: Hand, target: Target, needed: int, available: int, span: Span | None) -> Exception:
    """The trouble of a place that isn't there: the edge has none of the kind, or no more of it."""
    whole = Edge(hand.edge.places)
    whole.counted = hand.edge.counted
    if whole.find(target, 0) is None and not (target == STITCH and hand.edge.places):
        return hand.stuck("no-such-place", span, what=describe(target), there=hand.edge.describe())
    there = max(available, 0)
    return hand.stuck("works-past-the-end", span, needed=needed, available=there, what=describe(target))


def describe(target: Target) -> str:
    """A target as a neutral key: `stitch`, `space 2`, `corner`, `double`, `special shell`."""
    if target.stitch is not None:
        unnamed = "post" if target.stitch.post and not target.stitch.form else "group"
        name = target.stitch.name or target.stitch.kind or unnamed
        return f"special {name}" if target.stitch.kind == "special" else name
    return f"{target.kind} {target.length}" if target.length else target.kind


def bound(hand: Hand, until: Until, span: Span | None) -> int:
    """Where on the edge an `until` stops: an index, at most the limit."""
    edge = hand.edge
    if until.before is not None:
        short = bound(hand, replace(until, before=None), span) - number(hand, until.before)
        if short < edge.pos:
            raise missing(
                hand, STITCH, number(hand, until.before), short + number(hand, until.before) - edge.pos, span
            )
        return short
    if until.kind == "end":
        return edge.limit
    if until.kind == "to-last":
        wanted = hand.kept_back = number(hand, until.count)
        if is_bare_shell(until.target) and (there := shells(edge)) and 0 < wanted <= len(there):
            return max(there[-wanted][0], edge.pos)
        gap = last_gap(edge) if until.target == Target("space") and wanted == 1 else -1
        if gap >= 0:
            return gap
        at = edge.side_end()
        while wanted and at > edge.pos:
            at -= 1
            if edge.begins(at, until.target) and not _goes_on_before(edge, at, until.target):
                wanted -= 1
        if wanted:
            needed = number(hand, until.count)
            raise missing(hand, until.target, needed, needed - wanted, span)
        return at
    if until.kind == "marker":
        for at in range(edge.pos, edge.limit):
            if edge.places[at] in hand.markers:
                return at
        raise hand.stuck("no-such-place", span, what="marker", there=edge.describe())
    if until.kind == "next":
        ahead = edge.find(until.target, edge.pos, len(edge.places))
        if ahead is None:
            raise missing(hand, until.target, 1, 0, span)
        return min(ahead.at, edge.limit)
    if until.kind == "centre" and until.names_group:
        return _middle_of_the_next(hand, until.target, span)
    if until.kind == "centre":
        return _middle(hand, until.target, span)
    if until.kind == "tch":
        return chain_at_the_end(hand)
    corner = edge.find(Target("corner"), edge.pos)
    if corner is not None and corner.at == 0 and edge.sided:  # the corner that the side begins with
        corner = edge.find(Target("corner"), 1)
    return edge.limit if corner is None else corner.at


def _middle(hand: Hand, target: Target, span: Span | None) -> int:
    """Where the middle stitch of the row stands, of those of a kind."""
    edge = hand.edge
    there = [at for at in range(edge.limit) if edge.matches(edge.places[at], target)]
    if len(there) % 2 == 0:
        raise hand.stuck("no-such-place", span, what="centre", there=[f"{len(there)}"])
    return max(there[len(there) // 2], edge.pos)


def _middle_of_the_next(hand: Hand, target: Target, span: Span | None) -> int:
    """Where the middle stitch of the next group stands."""
    edge = hand.edge
    groups = ((at, group_at(edge, at, target)) for at in range(edge.pos, edge.limit))
    start, group = next(((at, group) for at, group in groups if group), (0, []))
    if not group:
        raise missing(hand, target, 1, 0, span)
    if len(group) % 2 == 0:
        raise hand.stuck("no-such-place", span, what="centre", there=[f"{len(group)}"])
    return start + len(group) // 2


def _goes_on_before(edge: Edge, at: int, target: Target) -> bool:
    """Whether the group that a target names (`to last sh`) begins before this stitch of it."""
    stitch = target.stitch
    if stitch is None or (stitch.kind != "special" and stitch.form not in ("shell", "v-stitch")):
        return False
    unit = getattr(edge.places[at], "unit", 0)
    return bool(unit) and at > edge.pos and getattr(edge.places[at - 1], "unit", 0) == unit


def chain_at_the_end(hand: Hand) -> int:
    """Where the row's last place stands if that is the turning chain of the row below; else the limit."""
    edge = hand.edge
    last = edge.places[edge.limit - 1] if edge.limit > edge.pos else None
    return edge.limit - (isinstance(last, Made) and last.role == "turning")


def take(hand: Hand, found: list[Found]) -> list[Into]:
    """Use places up, one stitch into each."""
    for one in found:
        hand.use(one.at, one.after, one.place)
    return [(one.place,) for one in found]


def use_first(hand: Hand, place: Place) -> None:
    """Use up the edge's first place, or its first space where chains count, if this is it or one of its
    chains."""
    edge = hand.edge
    if edge.pos or not edge.places:
        return
    space = edge.find(Target("space"), 0) if edge.counted else None
    if space is not None and is_of(place, space.place):
        hand.use(space.at, space.after, space.place)
    elif is_of(place, edge.places[0]):
        hand.use(0, 1, edge.places[0])
