"""The sides of a tube in its chart: cut open where its rounds begin, and laid as rows above the base."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import tau

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .chart_ground import Ground, Straight
from .chart_lines import Line, Top
from .chart_things import ROOM, Thing, lowest_height, place_key, wide_of
from .section import Oval
from .signs import UNIT

FEWEST = 4
"""So many rounds, at least, are laid as rows."""

AS_FULL = 1.05
"""From a round on which none that follows is fuller than so many times, but for an edge, a piece goes up."""

EDGE = 3
"""So many last rounds may be an edge."""

APART = 1.5
"""In a chart about a middle the last round would stand so many times wider than it is."""

ABOVE = 30.0
"""Between the base and the rows."""


@dataclass(frozen=True, slots=True)
class Unrolled(Straight):
    """Straight rows, the lowest beginning at a corner of the chart."""

    corner: Point = (0.0, 0.0)

    def at(self, out: float, along: float) -> Point:
        """The point so far to the right of the corner and above it."""
        return (self.corner[0] + along, self.corner[1] + out)


def goes_up_from(
    ground: Ground, rows: Sequence[Sequence[Thing]], worked: Sequence[WorkedRound]
) -> int | None:
    """The round from which on a piece goes up, by its index: no fuller than the one before it, and far too
    narrow for where it would lie about a middle. None for what lies flat, and where a round's stitches go
    back over where the one below it began.
    """
    if not isinstance(ground, Oval) or ground.spine or not all(rows):
        return None
    needs = [sum(_room_of(thing) for thing in row) for row in rows]
    first = next((at for at in range(len(rows)) if _full(needs, at)), len(rows))
    if first < 1 or len(rows) - first < FEWEST:
        return None
    reach = sum(lowest_height(row) + ROOM for row in rows)
    if tau * reach < APART * needs[-1]:
        return None
    return first if all(_in_order(below, one) for below, one in pairwise(worked[first - 1 :])) else None


def _room_of(thing: Thing) -> float:
    """How much of its round a thing takes; the chains over an opening as much as they pass."""
    wide = wide_of(thing)
    return max(wide, UNIT * len(thing.into)) if isinstance(thing, Space) else wide


def _full(needs: Sequence[float], at: int) -> bool:
    """Whether a round is as full as the one before it and as all after it, but for an edge."""
    if not at:
        return False
    base = needs[at - 1]
    return all(
        base / AS_FULL <= need <= base * AS_FULL for need in needs[at : max(len(needs) - EDGE, at + 1)]
    )


def _in_order(below: WorkedRound, one: WorkedRound) -> bool:
    order = {place_key(made): at for at, made in enumerate(below.made)}
    places = [
        order[place_key(place)]
        for made in one.made
        if isinstance(made, Made) and made.number
        for place in made.into
        if place_key(place) in order
    ]
    return all(a <= b for a, b in pairwise(places))


def laid_above(last: Line, room: float) -> tuple[Unrolled, Mapping[Hashable, Top]]:
    """The ground for the rows above all that there is so far, so wide; and the tops of the last round as
    places along its lower edge, from right to left in the order made.
    """
    high = max(y for _, y in last.heads.values())
    ground = Unrolled((-room / 2, high + ABOVE))
    things = list(last.things)[::-1] if not last.backward else list(last.things)
    wide = sum(wide_of(thing) for thing in things)
    tops: dict[Hashable, Top] = {}
    reached = 0.0
    for order, thing in enumerate(things):
        along = (reached + wide_of(thing) / 2) / wide * room
        tops[id(thing)] = Top(ground, along, along, 0.0, 0.0, UNIT, order)
        reached += wide_of(thing)
    return ground, tops
