"""Stitches of several kinds, or not side by side, gathered into one at their tops."""

from collections.abc import Callable
from functools import cache

from .. import trade
from ..notation.tree import Here, Step, Stitch, Together
from .hand import Hand
from .places import resolve
from .worked import Made

Perform = Callable[[Hand, tuple[Step, ...]], None]


def together(hand: Hand, step: Together, perform: Perform) -> None:
    """Work the legs, then leave one stitch of them: as tall as the tallest, leaning on all their places."""
    begun, numbered, new = len(hand.made), hand.numbered, len(hand.new)
    outer = hand.here
    if step.place is not None and not isinstance(step.place, Here):
        hand.here = hand.last = resolve(hand, step.place, step.span)[0][0]
    hand.begun = True
    hand.depth += 1
    try:
        perform(hand, step.steps)
    finally:
        hand.here = outer
        hand.depth -= 1
    legs = [one for one in hand.made[begun:] if isinstance(one, Made)]
    del hand.made[begun:], hand.new[new:]
    hand.numbered = numbered
    tallest = max(legs, key=lambda leg: _tallness().get(leg.kind, 0), default=None)
    if tallest is None:
        return
    stitch = Stitch(tallest.kind, "tog", len(legs))
    into = tuple(place for leg in legs for place in leg.into)
    hand.put(stitch, into, step.span, special=tallest.special)
    if step.counts is not None and step.counts.stitch is not None:
        hand.made[-1].special = step.counts.stitch.name


@cache
def _tallness() -> dict[str, int]:
    """How tall each kind is against the others: the table of stitches goes from low to tall."""
    return {row.key: at for at, row in enumerate(trade.stitches())}
