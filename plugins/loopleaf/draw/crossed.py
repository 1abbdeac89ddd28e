"""Stitches that cross: worked in another order than their places lie, with their heads side by side."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ..fabric import Made
from .chart_ground import is_closed
from .chart_lines import Line, Top
from .chart_things import ROOM
from .section import Oval
from .signs import height_of

MOST = 12
"""So many stitches cross at most: six over six. More in another order are no crossing."""

STEEP, LONGEST = 1.05, 1.12
"""Legs that cross rise so many times as far as they reach aside, but no further than so many times their own
height.
"""

FEWEST = 4
"""Of fewer in a whole round, one that goes back to the place passed first crosses the others."""


def uncrossed(below: Sequence[Sequence[Top]]) -> list[Sequence[Top]]:
    """The places that the heads of a round lie above: of stitches that cross, the same places in their order
    along the way, for their heads stand side by side while their legs lie across each other.

    below: the places of each thing, none for a space.
    """
    found = list(below)
    standing = [at for at, tops in enumerate(below) if tops]
    if _ends_where_it_begins([below[at] for at in standing]):
        standing.pop()
    for block in _blocks([min(top.order for top in below[at]) for at in standing]):
        crossing = [standing[at] for at in block]
        if crossing == standing and _begun_elsewhere([below[at] for at in crossing]):
            continue
        if 2 <= len(crossing) <= MOST and _side_by_side([below[at] for at in crossing]):
            ordered = sorted((below[at] for at in crossing), key=lambda tops: tops[0].order)
            for at, tops in zip(crossing, ordered, strict=True):
                found[at] = tops
    return found


def _blocks(orders: Sequence[int]) -> Iterator[range]:
    """The shortest runs of which none has a number below one of the runs before it."""
    least = list(orders)
    for at in range(len(orders) - 2, -1, -1):
        least[at] = min(least[at], least[at + 1])
    start, most = 0, -1
    for at, order in enumerate(orders):
        most = max(most, order)
        if at + 1 == len(orders) or most <= least[at + 1]:
            yield range(start, at + 1)
            start = at + 1


def _begun_elsewhere(places: Sequence[Sequence[Top]]) -> bool:
    """Whether a whole round about a middle goes on in order from another place than the one below began at,
    as one that was turned does: its last stitches stand on the first places.
    """
    orders = [tops[0].order for tops in places]
    falls = sum(after < one for one, after in pairwise([*orders, *orders[:1]]))
    return is_closed(places[0][0].ground) and len(orders) >= FEWEST and falls == 1


def _ends_where_it_begins(places: Sequence[Sequence[Top]]) -> bool:
    """Whether the last stitch of a round about a middle goes into the place of the first, which closes it."""
    return len(places) >= FEWEST and is_closed(places[0][0].ground) and places[0] == places[-1]


def _side_by_side(places: Sequence[Sequence[Top]]) -> bool:
    """Whether each stitch has one place, no two the same, all in one round."""
    return (
        all(len(tops) == 1 for tops in places)
        and len({tops[0].order for tops in places}) == len(places)
        and len({tops[0].level for tops in places}) == 1
    )


def least_for(line: Line, below: Sequence[Sequence[Top]], level: float) -> float:
    """How far out a round about a middle lies, at least, so that the legs of stitches that cross don't lie
    down; 0 where none cross. level: how far out it lies without them.
    """
    if not isinstance(line.ground, Oval) or line.ground.spine:
        return 0.0
    rise = 0.0
    for thing, own, above in zip(line.things, below, uncrossed(below), strict=True):
        if own is not above and isinstance(thing, Made):
            aside = abs((own[0].along - above[0].along + 0.5) % 1.0 - 0.5) * line.ground.way(level)
            rise = max(rise, min(STEEP * aside, LONGEST * height_of(thing.kind)))
    floors = [tops[0].out for tops in below if tops]
    return sum(floors) / len(floors) + ROOM + rise if rise else 0.0
