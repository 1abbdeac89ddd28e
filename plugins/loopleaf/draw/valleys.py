"""Where rows of a ripple dip: they grow at their crests, and pass over stitches in their valleys.

The stitches on both sides of places passed over draw together, so that the cloth closes over them.
"""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Protocol

from ..fabric import Made
from .chart_things import Thing

CLOSE = 1e-6
"""Nothing lies between two places whose ends are nearer to each other, in shares of their row."""


class Stand(Protocol):
    """Where a place lies along its row, as shares of that."""

    @property
    def start(self) -> float: ...
    @property
    def end(self) -> float: ...


def passed_over(orders: Sequence[Sequence[int]]) -> list[bool]:
    """Whether places lie between those of each thing and of the next. orders: the numbers, along the row
    below, of each thing's places; none for a space.
    """
    return [bool(a and b) and max(min(b) - max(a), min(a) - max(b)) > 1 for a, b in pairwise(orders)]


def valleys(things: Sequence[Thing], passed: Sequence[bool]) -> frozenset[int]:
    """The valleys of a row, each by the number of the thing before it: between single stitches that go on
    side by side away from it, where the row grows elsewhere. What is passed over beside a fan is the room
    that the fan spreads over.

    passed: of each thing and the next, whether places lie between theirs.
    """
    if not _grows(things):
        return frozenset()
    return frozenset(
        at
        for at, over in enumerate(passed)
        if over and _goes_on(things, passed, at, -1) and _goes_on(things, passed, at + 1, 1)
    )


def waves(things: Sequence[Thing], passed: Sequence[bool]) -> bool:
    """Whether a row both grows and shrinks."""
    gathers = any(isinstance(one, Made) and one.form == "tog" and len(one.into) > 1 for one in things)
    return (gathers and _grows(things)) or bool(valleys(things, passed))


def closed_over(things: Sequence[Thing], feet: Mapping[int, Stand]) -> dict[int, tuple[float, float]]:
    """From where to where the stitches beside a row's valleys stand, by their ids: halfway over what is
    passed between them. feet: where each thing stands, by its id.
    """
    stands = [feet.get(id(thing)) for thing in things]
    passed = [a is not None and b is not None and b.start - a.end > CLOSE for a, b in pairwise(stands)]
    found: dict[int, tuple[float, float]] = {}
    for at in valleys(things, passed):
        left, right = feet[id(things[at])], feet[id(things[at + 1])]
        middle = (left.end + right.start) / 2
        found[id(things[at])] = (left.start, middle)
        found[id(things[at + 1])] = (middle, right.end)
    return found


def _grows(things: Sequence[Thing]) -> bool:
    """Whether several of its stitches share a place, chains between them or none."""
    stitches = [thing for thing in things if isinstance(thing, Made)]
    return any(a.into == b.into for a, b in pairwise(stitches))


def _goes_on(things: Sequence[Thing], passed: Sequence[bool], at: int, way: int) -> bool:
    """Whether a stitch has one beside it, away from what is passed, in the place beside its own."""
    beside = at + way
    if not 0 <= beside < len(things):
        return False
    own, other = things[at], things[beside]
    over = passed[min(at, beside)]
    return isinstance(own, Made) and isinstance(other, Made) and own.into != other.into and not over
