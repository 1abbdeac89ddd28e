"""Looking for the groups of an edge: the next one, the one last worked into, the last."""

from ..notation.tree import Span, Target
from .grouped import group_at, is_bare_shell, is_shell
from .hand import Hand
from .seek import describe, missing
from .worked import Place

Group = tuple[int, list[Place]]
"""Where a group begins on the edge, and its places."""


def next_group(hand: Hand, target: Target, span: Span | None, whole: bool = False) -> Group:
    """The next group: a special stitch's stitches, or several stitches in one place."""
    edge = hand.edge
    at = edge.pos
    while at < edge.limit:
        group = group_at(edge, at, target, whole)
        if group and (not is_bare_shell(target) or is_shell(group)):
            return at, group
        at += 1
    raise missing(hand, target, 1, 0, span)


def this_group(hand: Hand, target: Target, span: Span | None, whole: bool = False) -> Group:
    """The group last worked into."""
    edge = hand.edge
    for at in range(min(edge.pos, edge.limit - 1), -1, -1):
        group = group_at(edge, at, target, whole)
        if hand.last in group:
            return at, group
    raise hand.stuck("no-such-place", span, what=describe(target), there=edge.describe())


def last_group(hand: Hand, target: Target, start: int, group: list[Place], whole: bool) -> Group:
    """The last group of the edge; a group that lies between is passed over as stitches left."""
    edge = hand.edge
    at = start + len(group)
    while at < edge.limit:
        later = group_at(edge, at, target, whole)
        if later:
            start, group = at, later
        at += max(len(later), 1)
    return start, group
