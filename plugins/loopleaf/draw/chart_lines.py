"""A chart laid out: its rounds one by one, and the places that they offer to the next."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import copysign
from typing import NamedTuple

from ..fabric import Made
from ..fabric.worked import Place
from .arch import Arch
from .canvas import Point
from .chart_begin import Beginning
from .chart_ground import Ground, Inward, opened
from .chart_things import Thing, Whole
from .signs import UNIT

STAYS = 0.5
"""Beside another open seam a round's own is opened so far, of all, towards the side that is away from it."""


class Top(NamedTuple):
    """A place as the next round finds it: a share along its round's way, `level` out, and its height.

    drawn: the same share once the round's seam is open. wide: how much room feet have on it. order: its
    number along its round's way. arch: of a chain space. corner: it is one of a
    polygon.
    """

    ground: Ground
    along: float
    drawn: float
    level: float
    out: float
    wide: float
    order: int
    arch: Arch | None = None
    corner: bool = False

    def carried(self, to: float) -> float:
        """The share of the way so far out that lies straight outside; from a corner, in the corner."""
        return self.along if self.corner else self.ground.carried(self.along, self.level, to)

    def point(self, out: float, aside: float = 0.0) -> Point:
        """The point so far out above it, and so far aside."""
        along = self.drawn if self.corner else self.ground.carried(self.drawn, self.level, out)
        return self.ground.at(out, along + aside / self.ground.way(out))


@dataclass(slots=True)
class Line:
    """A round or row laid out. things: along its way. backward: made against the way. corners: the things, by
    their ids, that lie in a polygon's corners. gap: the room at its start.
    room: how wide a straight row is laid at least.

    xs, outs: how far along its way and how far out the head of each thing lies. feet, heads: of each stitch,
    by its id, y up. arches: of each space. chains: that only its own stitches stand on: the middle of each,
    and its direction. leads: of a layer's stitches, where the places lie that they go into. deep: the
    stitches, by their ids, that go into rounds further down than the one below: spikes. beyond: how far what
    is drawn around it reaches. start: the share along the way of the first thing made, and seam of the gap
    before it, `level` out. low, high: how far out its lower and upper edge lie there.
    made_first: the first thing made, counted or not. beside_lines: stitches of a later row go down beside its
    start. arrow: how far before its first stitch its arrow stands between such stitches, 0 beside its number.
    around: the place that all of a first row goes into. petals: those whose sides are chains.
    leaf: how far before its first stitch a leaf rises that is made before that; 0 without one.
    passed: the share of its way above the seam of the round below where it passes over that, and how far it
    is open there. lean: the share of the way from the head of its first stitch on to its foot. crowded: it
    holds more than there is room for above its places.
    firm: of each of its things, along its way, the share that it lies at and the one that it is drawn at,
    where these are known. waves: it both grows and shrinks. left: how many stitches it begins to the left of
    the row below, where it is shaped at its ends alone.
    """

    ground: Ground
    things: Sequence[Thing]
    backward: bool
    corners: frozenset[int] = frozenset()
    gap: float = 0.0
    room: float = 0.0
    xs: Sequence[float] = ()
    outs: Sequence[float] = ()
    feet: dict[int, list[Point]] = field(default_factory=dict)
    heads: dict[int, Point] = field(default_factory=dict)
    arches: dict[int, Arch] = field(default_factory=dict)
    chains: list[tuple[Point, Point]] = field(default_factory=list)
    leads: dict[int, list[Point]] = field(default_factory=dict)
    deep: frozenset[int] = frozenset()
    beyond: float = 0.0
    start: float = 0.0
    seam: float = 0.0
    level: float = 0.0
    low: float = 0.0
    high: float = UNIT
    made_first: Thing | None = None
    beside_lines: bool = False
    arrow: float = 0.0
    around: Place | None = None
    petals: Sequence[Whole] = ()
    leaf: float = 0.0
    passed: tuple[float, float] = (0.0, 0.0)
    lean: float = 0.0
    crowded: bool = False
    firm: Sequence[tuple[float, float]] = ()
    waves: bool = False
    left: float | None = None

    def into(self, thing: Made) -> Sequence[Place]:
        """What a stitch goes into; a chain that counts as one, where all the others do."""
        return thing.into or (() if self.around is None else (self.around,))

    def opened(self, along: float, closed: bool = False) -> float:
        """A share of its way once its seam is open; closed: as it was before."""
        if closed:
            return along
        if self.firm:
            return between_known(self.firm, along)
        seam, (passed, gap) = self.seam, self.passed
        if not gap:
            return opened(self.ground, self.level, seam, along, self._gap_opened)
        # What lies between both seams stays above its places.
        side = copysign(STAYS / 2, (seam - passed + 0.5) % 1.0 - 0.5)
        seam, along = (opened(self.ground, self.level, passed, one, gap) for one in (seam, along))
        near = 1 - 2 * abs((along - seam + 0.5) % 1.0 - 0.5)
        along = opened(self.ground, self.level, seam, along, self._gap_opened)
        return along + side * near * self._gap_opened / self.ground.way(self.level)

    @property
    def spare(self) -> float:
        """The room between two of its things that they don't need."""
        return self.ground.way(self.level) / max(len(self.things), 1) - UNIT

    @property
    def _gap_opened(self) -> float:
        """How far the seam opens: less on the far side of a ball, whose stitches often stand far apart."""
        return self.gap if not isinstance(self.ground, Inward) else max(self.gap - max(self.spare, 0.0), 0.0)

    def point(self, x: float, out: float, closed: bool = False, drawn: float | None = None) -> Point:
        """The point so far along its way, in units, and so far out. closed: its seam isn't open yet. drawn:
        the share of the way that it is drawn at, else it follows from x.
        """
        share = self.opened(x / self.ground.way(self.level), closed) if drawn is None else drawn
        return self.ground.at(max(out, 0.0), self.ground.carried(share, self.level, max(out, 0.1)))

    def in_the_corner(self, x: float, out: float) -> Point:
        """The same of what stands in a polygon's corner: there it is as high as the way is long."""
        return self.ground.at(max(out, 0.0), self.opened(x / self.ground.way(self.level)))

    def before(self, away: float, up: float) -> Point:
        """A point beside its start: so far before its first stitch, so far up (0 to 1)."""
        aside = away / self.ground.way(self.level) * (1 if self.backward else -1)
        aside += self.lean * max(1 - up, 0.0)
        out = self.low + (self.high - self.low) * up
        return self.ground.at(
            out, self.ground.carried(self.opened(self.start) + aside, self.level, max(out, 0.1))
        )


def between_known(known: Sequence[tuple[float, float]], along: float) -> float:
    """Where a share of a way is drawn, between those for which that is known, in order."""
    turns, part = divmod(along - known[0][0], 1.0)
    share = known[0][0] + part
    ends = [*known, (known[0][0] + 1.0, known[0][1] + 1.0)]
    for (low, drawn), (high, after) in pairwise(ends):
        if share <= high and high > low:
            return turns + drawn + (after - drawn) * (share - low) / (high - low)
    return turns + ends[-1][1]


@dataclass(slots=True)
class Layout:
    """A chart laid out. tops: where everything that can be worked into lies. rims: the circles that the
    closing rounds of a ball begin at, with the index of the round whose tops lie there. sills: the same of
    the rows that a tube is cut open to: their lower edge. outline: of what a border goes around.
    """

    ground: Ground
    begin: Beginning
    lines: list[Line]
    tops: dict[Hashable, Top]
    rims: list[tuple[Point, float, int]] = field(default_factory=list)
    sills: list[tuple[Point, Point, int]] = field(default_factory=list)
    outline: list[tuple[Point, Point]] = field(default_factory=list)

    def top(self, place: Hashable) -> Point | None:
        """Where a place lies, by its key; None for what isn't in the chart."""
        top = self.tops.get(place)
        return None if top is None else top.point(top.out)
