"""Where a first chain stands that counts as nothing: before the first stitch, or in the narrow gap between
crosses at the end of a chain that the round goes about.
"""

from collections.abc import Iterator
from math import dist, hypot
from typing import NamedTuple

from ..fabric import Made, Space
from .canvas import Point
from .chart_ground import is_closed, outward
from .chart_lines import Line
from .chart_things import ROOM, STACKED, Thing
from .section import Oval, Polygon
from .signs import CHAIN_LONG, UNIT, height_of, is_cross

BESIDE = 8.5
"""A first chain that counts as nothing stands so far before the first stitch."""

BESIDE_A_LINE = 5.6
"""The same where stitches go down to earlier rows beside it."""

GATHERED, BESIDE_A_BELLY = ("bobble", "cluster", "popcorn", "puff"), 7.0
"""The same, measured where it stands, beside stitches that are gathered in one place."""

APART = 6.8
"""From the middle of such a chain to that of the next, at most: there they don't touch."""

JOINED, CROSS_MORE = 5.0, 2.0
"""A joining slip stitch lies so far before the top of the first stitch; so much further before a cross in a
polygon's corner, or at the end of a chain.
"""

UNDER_AN_ARCH, BELOW_A_HEAD = 6.0, 2.5
"""The same below the end of an arch, and how far below the top of the first stitch."""

NARROW = 26.5
"""A wider gap between the middles of its last cross and its first has room for a chain as anywhere."""

FURTHER_OUT = 2.0
"""Between crosses at an end it stands so much further out than they do: there the gap is wider."""


class Lying(NamedTuple):
    """A chain's middle and the direction that it lies in, y up."""

    middle: Point
    along: Point


def beside(line: Line, low: float, away: float = BESIDE) -> Lying:
    """The chain whose middle lies so far above the places that its round stands on."""
    high = max(line.high - line.low, 1.0)
    between = _between(line)
    if between is not None:
        return between
    away = BESIDE_A_LINE if line.beside_lines else away
    if begins_gathered(line):  # as far from its belly near the middle as further out
        there = line.ground.way(max(line.low + low, 0.1)) / line.ground.way(line.level)
        away = max(away, min(BESIDE_A_BELLY / there, line.gap + UNIT / 2))
    middle, above = (line.before(away, low / high + more) for more in (0.0, 0.1))
    return Lying(middle, (above[0] - middle[0], above[1] - middle[1]))


def first_chains(line: Line, chains: int) -> Iterator[Lying]:
    """A round's first chains that count as nothing, from below."""
    long = CHAIN_LONG * STACKED
    high = max(line.high - line.low, long)
    step = min(max((high - ROOM) / chains, long), APART) if chains > 1 else long
    for at in range(chains):
        yield beside(line, ROOM + step * (at + 0.5))


def at_an_end(line: Line) -> bool:
    """Whether a round about a chain begins and ends with crosses at that chain's end: little room."""
    return _between(line) is not None


def begins_gathered(line: Line) -> bool:
    """Whether a round about a middle begins with stitches gathered in one place: they are broad below too."""
    about_a_chain = isinstance(line.ground, Oval) and line.ground.spine
    if not isinstance(line.ground, Oval | Polygon) or about_a_chain or not line.things:
        return False
    first = line.things[-1 if line.backward else 0]
    return isinstance(first, Made) and first.form in GATHERED and len(first.into) < 2


def joined(line: Line) -> float:
    """How far before its first stitch a round is joined."""
    first = line.things[-1 if line.backward else 0] if line.things else None
    cross = isinstance(first, Made) and is_cross(first.kind)
    return JOINED + CROSS_MORE * (cross and (isinstance(line.ground, Polygon) or at_an_end(line)))


def join_spot(line: Line) -> Point:
    """Where the slip stitch that joins a round lies: beside the first stitch's top, below the end of an arch
    that reaches there.
    """
    last = line.things[0 if line.backward else -1] if line.things else None
    if isinstance(last, Space) and is_closed(line.ground) and not isinstance(line.ground, Polygon):
        return line.before(
            max(joined(line), UNDER_AN_ARCH), 1 - BELOW_A_HEAD / max(line.high - line.low, UNIT)
        )
    return line.before(joined(line), 1.0)


def _between(line: Line) -> Lying | None:
    """In the gap at such an end, as far from each cross, or as near to the first as elsewhere."""
    if not isinstance(line.ground, Oval) or not line.ground.spine or len(line.things) < 3:
        return None
    things = (line.things[0], line.things[-1])[:: -1 if line.backward else 1]
    if not all(isinstance(thing, Made) and is_cross(thing.kind) for thing in things):
        return None
    first, last = (_middle(line, thing) for thing in things)
    end = (line.ground.spine / 2 if first[0] > 0 else -line.ground.spine / 2, 0.0)
    if first[0] / (end[0] or 1.0) < 1 or last[0] / (end[0] or 1.0) < 1:
        return None  # not both at this end
    gap = dist(first, last)
    if gap > NARROW:
        return None
    share = min(BESIDE / (gap or 1.0), 0.5)
    one, other = dist(first, end), dist(last, end)
    x, y = (
        (first[axis] - end[axis]) / one * (1 - share) + (last[axis] - end[axis]) / other * share
        for axis in (0, 1)
    )
    long, reach = hypot(x, y) or 1.0, one * (1 - share) + other * share + FURTHER_OUT
    along = (x / long, y / long)
    return Lying((end[0] + along[0] * reach, end[1] + along[1] * reach), along)


def _middle(line: Line, thing: Thing) -> Point:
    head = line.heads[id(thing)]
    across, up = outward(line.ground, head)
    half = height_of("single") / 2
    return (head[0] - across * half, head[1] - up * half)
