"""Groups on the edge: the author's stitches of several, or several stitches made in one place."""

from ..notation.tree import Span, Target
from .edge import Edge
from .hand import Hand
from .seek import describe, missing
from .worked import Made, Place, Space

Group = tuple[int, list[Place]]
"""Where a group begins on the edge, and its places."""


def next_group(hand: Hand, target: Target, span: Span | None, whole: bool = False) -> Group:
    """The next group: a special stitch's stitches, or several stitches in one place."""
    edge = hand.edge
    at = edge.pos
    while at < edge.limit:
        group = _group_at(edge, at, target, whole)
        if group:
            return at, group
        at += 1
    raise missing(hand, target, 1, 0, span)


def this_group(hand: Hand, target: Target, span: Span | None, whole: bool = False) -> Group:
    """The group last worked into."""
    edge = hand.edge
    for at in range(min(edge.pos, edge.limit - 1), -1, -1):
        group = _group_at(edge, at, target, whole)
        if hand.last in group:
            return at, group
    raise hand.stuck("no-such-place", span, what=describe(target), there=edge.describe())


def last_group(hand: Hand, target: Target, start: int, group: list[Place], whole: bool) -> Group:
    """The last group of the edge; a group that lies between is passed over as stitches left."""
    edge = hand.edge
    at = start + len(group)
    while at < edge.limit:
        later = _group_at(edge, at, target, whole)
        if later:
            start, group = at, later
        at += max(len(later), 1)
    return start, group


def has_groups(edge: Edge) -> bool:
    """Whether the edge has two groups at least, and so a gap between two."""
    return sum(len(_group_at(edge, at, Target("group"))) > 2 for at in range(len(edge.places))) > 1


def _group_at(edge: Edge, at: int, target: Target, whole: bool = False) -> list[Place]:
    """The group that begins there, none where none does. whole: spaces inside it don't part it."""
    first = edge.places[at]
    before = at - 1
    if whole and at and getattr(edge.places[before], "corner", False):  # a space inside a group
        before -= 1
    if not isinstance(first, Made) or (at and same_group(edge.places[before], first)):
        return []
    if first.unit and (target.stitch is None or is_unit(first, target)):
        end = at
        while end < edge.limit and getattr(edge.places[end], "unit", 0) == first.unit:
            end += 1
        return edge.places[at:end]
    if first.unit or (target.stitch is not None and target.stitch.kind == "special"):
        return []
    end = at + 1
    while end < edge.limit and _goes_on(edge.places, end, first, whole):
        end += 1
    return edge.places[at:end] if end - at > 1 else []


def _goes_on(places: list[Place], at: int, first: Made, whole: bool) -> bool:
    """Whether a group made in one place goes on here: with a stitch, or with a space and a stitch behind."""
    if isinstance(places[at], Space):
        after = at + 1
        return whole and after < len(places) and getattr(places[after], "into", None) == first.into
    return getattr(places[at], "into", None) == first.into


def same_group(one: Place, other: Place) -> bool:
    """Whether two neighbours belong to one group, so that the second doesn't begin it."""
    if isinstance(other, Made) and other.unit:
        return getattr(one, "unit", 0) == other.unit
    return isinstance(one, Made) and bool(one.into) and one.into == getattr(other, "into", None)


def is_unit(made: Made, target: Target) -> bool:
    """Whether a stitch belongs to the group that a target names."""
    stitch = target.stitch
    assert stitch is not None
    if stitch.kind == "special":
        return made.special == stitch.name
    return made.kind == stitch.kind or stitch.form in ("shell", "v-stitch")
