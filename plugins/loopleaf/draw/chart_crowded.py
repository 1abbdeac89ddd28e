"""Rounds that hold more than fits where their stitches would stand: what gives way, and in what order.

Loops that are longer than their base bulge outwards over it instead of widening the round. Then stitches
stand closer, then tall ones are drawn longer; only what still has no room moves the whole round out. So a
stitch stands on its place, and its height says its kind.
"""

from bisect import bisect
from collections.abc import Sequence
from typing import NamedTuple

from ..fabric import Made, Space
from .chart_across import room_for
from .chart_lines import Line, Top
from .chart_things import ROOM, Thing, groups_of, tall_of, wide_of
from .section import Half, Oval, Polygon, Rectangle
from .signs import UNIT, is_cross

EASY = 3.0
"""A round may move so far out without more ado."""

NARROWEST_BASE = 5.0
"""A loop leaves the stitches beside it so far apart, beyond their own widths."""

CLOSEST, CROSSES_CLOSEST, LONGEST = 0.75, 0.84, 1.4
"""Tall stitches stand so close, of their widths, and crosses, before any are drawn longer; and become so
long, of their heights, before the round moves out.
"""

NARROWEST_GAP = 0.7
"""The gap at its start becomes so narrow, of what it would be."""

SQUARE = 4
"""The corners of the commonest motif, whose sides are straight whatever stands in them."""

STEPS = 24
"""So many halvings find how much gives way."""


class Fit(NamedTuple):
    """How a crowded round is laid. level: how far out; wides: how much of its way each thing takes. stretch:
    how many times their heights tall stitches are; gap: the room at its start; lift: how far all move out
    beyond what they stand on.
    """

    level: float
    wides: Sequence[float]
    gap: float
    stretch: float
    lift: float


def is_crowded(line: Line, things: Sequence[Thing], below: Sequence[Sequence[Top]], level: float) -> bool:
    """Whether a round about a middle would have to move far out, to `level`, to hold its things as wide as
    they are. Not one that stands on no places of the chart, or begins with a leaf.
    """
    ground = line.ground
    if not isinstance(ground, Oval | Polygon) or isinstance(ground, Half | Rectangle) or line.leaf:
        return False
    if isinstance(ground, Oval) and ground.spine:
        return False
    crowd = _Crowd(line, things, below, 0.0)
    return crowd.stands and level - crowd.level(1.0) > EASY


def has_points(line: Line) -> bool:
    """Whether a crowded round has points, not sides: more than a square has, most of its things stand in the
    places that they stand in, and some are crosses, lower than those.
    """
    groups = groups_of(line.things, [True] * len(line.things))
    found = [group for group in groups if any(id(line.things[at]) in line.corners for at in group)]
    crosses = any(isinstance(thing, Made) and is_cross(thing.kind) for thing in line.things)
    return (
        line.crowded
        and len(line.corners) > SQUARE
        and crosses
        and sum(map(len, found)) > len(line.things) / 2
    )


def fit_of(line: Line, things: Sequence[Thing], below: Sequence[Sequence[Top]], gap: float) -> Fit:
    """How a crowded round is laid in circles. gap: the room at its start."""
    crowd = _Crowd(line, things, below, gap)
    short, long = 0.0, 3.0
    while not crowd.fits(crowd.at(long)):
        short, long = long, 2 * long
    if crowd.fits(crowd.at(short)):
        return crowd.at(short)
    for _ in range(STEPS):
        middle = (short + long) / 2
        short, long = (short, middle) if crowd.fits(crowd.at(middle)) else (middle, long)
    return crowd.at(long)


class _Crowd:
    """A round's things with what they stand on."""

    def __init__(
        self, line: Line, things: Sequence[Thing], below: Sequence[Sequence[Top]], gap: float
    ) -> None:
        self.line, self.things, self.gap = line, things, gap
        self.floors = [sum(top.out for top in tops) / len(tops) if tops else None for tops in below]
        self.tall = [tall_of(thing) for thing in things]
        self.cross = [isinstance(thing, Made) and is_cross(thing.kind) for thing in things]
        self.hung = [isinstance(thing, Space) for thing in things]

    @property
    def stands(self) -> bool:
        """Whether all its stitches stand on places of the chart."""
        pairs = zip(self.floors, self.hung, strict=True)
        return not all(self.hung) and all(floor is not None for floor, hung in pairs if not hung)

    def outs(self, stretch: float) -> list[float]:
        """How far out each head would lie; a loop's ends where its neighbours' heads do."""
        found = [
            None if floor is None else floor + ROOM + tall * (1.0 if cross else stretch)
            for floor, tall, cross in zip(self.floors, self.tall, self.cross, strict=True)
        ]
        known = [at for at, out in enumerate(found) if out is not None]
        return [self._beside(found, known, at) if out is None else out for at, out in enumerate(found)]

    def _beside(self, outs: Sequence[float | None], known: Sequence[int], at: int) -> float:
        """The mean of the nearest that are known, before a thing and behind it."""
        next_one = bisect(known, at)
        pair = (outs[known[next_one - 1]], outs[known[next_one % len(known)]])
        return sum(out or 0.0 for out in pair) / 2

    def level(self, stretch: float) -> float:
        """How far out its heads would lie in the mean."""
        outs = [out for out, hung in zip(self.outs(stretch), self.hung, strict=True) if not hung]
        return sum(outs) / len(outs)

    def at(self, given: float) -> Fit:
        """How it is laid when so much has given way: 1 the loops, 2 the room between stitches, 3 their
        heights; more moves it out.
        """
        loops, closer, longer = (min(max(given - step, 0.0), 1.0) for step in range(3))
        stretch, lift = 1 + (LONGEST - 1) * longer, UNIT * max(given - 3, 0.0)
        level, outs = self.level(stretch) + lift, [out + lift for out in self.outs(stretch)]
        closest = [1 - (1 - (CROSSES_CLOSEST if cross else CLOSEST)) * closer for cross in self.cross]
        wides = [
            wide_of(thing) * (1.0 if hung else close) * level / (out - (UNIT / 2 if cross else 0.0))
            for thing, out, cross, hung, close in zip(
                self.things, outs, self.cross, self.hung, closest, strict=True
            )
        ]
        for at in [at for at, hung in enumerate(self.hung) if hung]:
            wides[at] += min(NARROWEST_BASE - wides[at], 0.0) * loops
        gap = self.gap * (1 - (1 - NARROWEST_GAP) * closer)
        return Fit(level, wides, gap, stretch, lift)

    def fits(self, fit: Fit) -> bool:
        """Whether the round has room so."""
        need = room_for(self.line.ground, self.things, self.line.corners, fit.gap, fit.wides)
        return need <= self.line.ground.way(fit.level)
