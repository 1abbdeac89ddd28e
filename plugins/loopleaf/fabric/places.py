"""Finding the places that an instruction names, and using them up."""

from collections.abc import Callable
from typing import Any

from ..notation.tree import (
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
    JustMade,
    Last,
    Marked,
    Next,
    Over,
    RowEnds,
    Same,
    Skipped,
    Span,
    Within,
)
from ..notation.tree import Place as NamedPlace
from ..notation.tree import Ring as InRing
from .along import legs, same
from .along_rows import evenly, row_ends
from .earlier import along_round
from .gaps import in_gaps
from .gaps_beneath import in_gap_beneath
from .hand import Hand
from .inside import between, corresponding, from_hook, here, in_chain_of, in_ring, in_skipped, marked, within
from .own_side import along_the_rest, lay_own_side
from .passed_silently import watch_the_way
from .seek import Into
from .whole_groups import each_one, first_one, last_one, next_ones


def resolve(hand: Hand, place: NamedPlace, span: Span | None) -> list[Into]:
    """The places that `place` names from where the hook is, used up in order."""
    where = getattr(place, "span", None) or span
    beneath = in_gap_beneath(hand, place, where)
    if beneath is not None:
        return beneath
    place = along_round(hand, along_the_rest(hand, place), where)
    if hand.way_round or isinstance(place, Evenly | RowEnds | Next):
        lay_own_side(hand, place)
    gaps = in_gaps(hand, place, where)
    if gaps is not None:
        hand.gap = gaps[-1]
        return gaps
    before = hand.edge.pos
    found = _FINDERS[type(place)](hand, place, where)
    watch_the_way(hand, place, before, found, where)
    return found


_FINDERS: dict[type, Callable[[Hand, Any, Span | None], list[Into]]] = {
    Next: next_ones,
    First: first_one,
    Last: last_one,
    Same: same,
    JustMade: same,
    Each: each_one,
    Here: here,
    InRing: in_ring,
    FromHook: from_hook,
    ChainOf: in_chain_of,
    Within: within,
    Between: between,
    Marked: marked,
    Skipped: in_skipped,
    Over: legs,
    RowEnds: row_ends,
    Evenly: evenly,
    Corresponding: corresponding,
}
