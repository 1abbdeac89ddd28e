"""Rows of flat work that gain and lose stitches at their ends alone, as triangles and sleeves do.

All their other stitches stand straight above those of the row below: so an edge without shaping is one
upright line, and an edge with it slants evenly.
"""

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from ..fabric import Made
from .chart_lines import Line
from .chart_things import Thing, place_key

ENDS = 3
"""So many stitches at either end may share a place or take up several: further in, each has its own."""

MOST = 2
"""An end gains or loses at most so many stitches in a row: more of them are a fan, or places left free."""

KNOWN = 0.5
"""At least this share of a row stands on the row below."""

EVEN = 0.5
"""The stitches of a row are evenly apart where each lies within this, in units, of where it then would."""


def lefts_of(rows: Sequence[Sequence[Thing]]) -> list[float | None]:
    """How many stitches each row begins to the left of the row below (less than 0: to the right of it); None
    for one that isn't shaped at its ends alone, and for all where none is.
    """
    found = [None, *(_grown(below, things) for below, things in pairwise(rows))]
    told = [one for one in found if one is not None and one[0] is not None]
    at_left, at_right = (any(one[side] for one in told) for side in (0, 1))
    if not (at_left or at_right):
        return [None] * len(rows)
    # Where a row is so short that both ends may have grown, it goes as the others do.
    share = 0.5 if at_left and at_right else 1.0 if at_left else 0.0
    return [None if one is None else one[0] if one[0] is not None else one[1] * share for one in found]


def _grown(below: Sequence[Thing], things: Sequence[Thing]) -> tuple[float | None, float] | None:
    """By how many stitches a row grows at its left and its right end; where its stitches don't tell, None and
    by how many in all. None where it grows elsewhere too.
    """
    if not below or not things or not all(isinstance(thing, Made) for thing in (*below, *things)):
        return None
    where = {place_key(thing): at for at, thing in enumerate(below)}
    on = [
        sorted(where[key] for place in thing.into if (key := place_key(place)) in where) for thing in things
    ]
    if sum(map(bool, on)) < KNOWN * len(on):
        return None
    used = Counter(place for places in on for place in places)
    alone = {at: at - k[0] for at, k in enumerate(on) if len(k) == 1 and used[k[0]] == 1}
    inner = {left for at, left in alone.items() if ENDS <= at < len(on) - ENDS}
    lefts = inner or {*alone.values()}
    more = len(things) - len(below)
    if len(inner) > 1 or abs(more) > 2 * MOST:
        return None
    left = min(lefts) if len(lefts) == 1 else None
    if not _in_order(on, more / 2 if left is None else left):
        return None
    if left is None:
        return (None, more)
    return (left, more - left) if max(abs(left), abs(more - left)) <= MOST else None


def _in_order(on: Sequence[Sequence[int]], left: float) -> bool:
    """Whether each stitch but those at the ends goes into the place below it, and those into some near it."""
    for at, places in enumerate(on):
        if ENDS <= at < len(on) - ENDS:
            if [*places] not in ([], [at - left]):  # a spike goes further down
                return False
        elif any(abs(at - left - place) > MOST for place in places):
            return False
    return all(b >= a for a, b in pairwise(place for places in on for place in places))


def straight_above(line: Line, below: Line | None) -> list[float] | None:
    """Where along its way the heads of a row lie that is shaped at its ends, straight above the row below;
    None for others, and where that isn't even itself.
    """
    if line.left is None or line.petals or below is None or not below.xs:
        return None
    many = len(below.xs)
    first = below.xs[0]
    step = (below.xs[-1] - first) / (many - 1) if many > 1 else line.room / len(line.things)
    if any(abs(x - first - at * step) > EVEN for at, x in enumerate(below.xs)):
        return None
    return [first + (at - line.left) * step for at in range(len(line.things))]
