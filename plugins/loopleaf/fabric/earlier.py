"""Stitches of an earlier round, worked into past those between: `BPsc around next sc of round 1`."""

from dataclasses import replace
from typing import Any

from ..notation.tree import STITCH, Next, Span, Target
from .hand import Hand
from .taken_up import take_up_those_of


def along_round(hand: Hand, place: Any, span: Span | None) -> Any:
    """The place as one along the named round's own edge, which the hand now stands at; else as it is."""
    target = getattr(place, "target", None)
    targets = getattr(place, "targets", ())
    named = target or (targets[0] if targets else None)
    if not isinstance(named, Target) or not named.round or named.kind == "free-loop":
        return place
    at = next((i for i, one in enumerate(hand.earlier) if one.plan.number == named.round), None)
    beneath = isinstance(place, Next) and (place.skipped or is_midway(hand))
    if beneath and at is not None:
        return replace(place, target=replace(named, round=0), below=hand.setting.index - at)
    lay_round(hand, at, replace(named, round=0), span)
    if target is not None:
        return replace(place, target=replace(target, round=0))
    return replace(place, targets=tuple(replace(one, round=0) for one in targets))


def is_midway(hand: Hand) -> bool:
    """Whether some of the round just below is worked, and some isn't: what is further down lies beneath the
    next of it."""
    return bool(hand.edge.pos and hand.edge.rest()) and hand.on_round is None and not hand.on_free


def lay_round(hand: Hand, at: int | None, target: Target, span: Span | None) -> None:
    """Lay an earlier round before the hand as its edge, in the order that it is met now, if it doesn't lie
    there already. at: its index in the piece. target: what of it is worked into, all of which has to be.
    """
    edge = hand.edge
    if at is not None and hand.on_round == at:
        return
    if edge.pos and edge.rest():
        raise hand.stuck("stitches-left-over", span, left=edge.rest(), target="stitch")
    there = at is not None and 0 <= at < len(hand.earlier)
    worked = hand.earlier[at].sizes[hand.setting.size] if there and at is not None else None
    if at is None or worked is None:
        raise hand.stuck("no-such-place", span, what="rounds below", there=[])
    back = hand.setting.worked == "rows" and (hand.setting.index - at) % 2 == 0
    if not take_up_those_of(hand, at):
        edge.lay(worked.edge[::-1] if back else list(worked.edge))
    hand.on_round, hand.round_target = at, target
    hand.standing = hand.last = None


def left_of_round(hand: Hand) -> int:
    """How many of the places that the line goes into along an earlier round it leaves."""
    edge = hand.edge
    target = hand.round_target or STITCH
    return sum(edge.matches(one, target) for one in edge.places[edge.pos : edge.limit])
