"""Rows in an arc that grow along a few lines lie evenly along it.

So a yoke with a few raglan lines is round, and its lines fan out: left to stand above their places, the
stitches between two of them would come to lie close together there and far apart elsewhere.
"""

from collections import Counter
from collections.abc import Sequence
from itertools import accumulate, pairwise

from ..fabric import Made
from .chart_ground import Fan
from .chart_lines import Line, Top
from .chart_things import wide_of
from .signs import UNIT

FEW = 0.25
"""A row grows along a few lines where at most this share of the places has more than one stitch."""

FURTHEST = 1.5
"""What stands in one place lies so far from it, in the mean, of a stitch's width, at most: a row that grows
on one side alone would else be pulled over to the other.
"""


def along_the_arc(line: Line, below: Sequence[Sequence[Top]], xs: Sequence[float]) -> list[float] | None:
    """Where along its way the heads of such a row lie; None for others. below: the places of each thing.
    xs: where they would lie above these.
    """
    if type(line.ground) is not Fan or line.petals or not _grows_along_few(line, below):
        return None
    way = line.ground.way(line.level)
    low, high = (share * way for share in _reach(line, below))
    ends = [*accumulate(map(wide_of, line.things), initial=0.0)]
    even = [low + (a + b) / 2 / ends[-1] * (high - low) for a, b in pairwise(ends)]
    by_place: dict[int, list[float]] = {}
    for x, tops in zip(even, below, strict=True):
        for top in tops:
            by_place.setdefault(top.order, []).append(x - top.carried(line.level) * way)
    furthest = max(abs(sum(aways) / len(aways)) for aways in by_place.values())
    share = min(FURTHEST * UNIT / furthest, 1.0) if furthest else 1.0
    return [x + (other - x) * share for x, other in zip(xs, even, strict=True)]


def _grows_along_few(line: Line, below: Sequence[Sequence[Top]]) -> bool:
    """Whether a row of stitches alone passes over none of the places between its first and its last one, and
    has several stitches in a few of them.
    """
    if not all(isinstance(thing, Made) for thing in line.things):
        return False
    on = [[top.order for top in tops] for tops in below if tops]
    if len(on) < len(below) - 1 or not all(0 <= min(b) - max(a) <= 1 for a, b in pairwise(on)):
        return False
    many = Counter(place for places in on for place in places)
    return 0 < sum(number > 1 for number in many.values()) <= FEW * len(many)


def _reach(line: Line, below: Sequence[Sequence[Top]]) -> tuple[float, float]:
    """The shares of the way between which a row lies: as far as its places, and what stands on none beside
    them.
    """
    tops = [top for places in below for top in places]
    first, last = min(tops, key=lambda top: top.order), max(tops, key=lambda top: top.order)
    low, high = first.carried(line.level), last.carried(line.level)
    each = (high - low) / (last.order - first.order)
    before, after = (not below[0], not below[-1])
    return low - each * (0.5 + before), high + each * (0.5 + after)
