"""The form of a piece as it is measured: seen from the front or from above, by round or by row, in mm."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, dist, pi, sin, tau

from ..measure import Measured, amounts
from ..measure.finished import What
from .canvas import Point
from .items import Item
from .leaf import leaf_edge
from .once import once
from .profile import Ring, over_a_head
from .section import Oblong, Polygon, Rectangle
from .stand import Stand, is_leaf, stand_of
from .subject import Subject
from .top_edge import edge_of
from .worked_back import leaves_of

FOOT = 0.1
"""What lies within this share of a piece's height belongs to its base."""


@dataclass(frozen=True, slots=True)
class Form:
    """rings: the rounds, each so far out and so high. lying: it lies flat. corners: of a polygon, 0 for none.
    spine: between the two ends of an oval, 0 for none. edge: of the last round, seen from above, y away.
    filled: it is stuffed. worn: it fits a head, and is shown as it is worn, its beginning on top.
    rim: of one that stands, the edge of its last round, as (share of the way, share of its height); none
    where it is even. opening: of a rectangle, the edge that it begins at; none for others.
    """

    rings: Sequence[Ring]
    lying: bool
    corners: int
    spine: float
    edge: Sequence[Point]
    filled: bool
    worn: bool = False
    rim: Sequence[Point] = ()
    opening: Sequence[Point] = ()

    @property
    def widest(self) -> float:
        """The furthest that the piece reaches out."""
        return max((max(ring.out0, ring.out1) for ring in self.rings), default=0.0)

    @property
    def height(self) -> float:
        """How high it stands."""
        return max((ring.high1 for ring in self.rings), default=0.0)

    @property
    def beginning_mm(self) -> float:
        """How long the edge is that it begins at."""
        if self.opening:
            return sum(dist(a, b) for a, b in pairwise([*self.opening, self.opening[0]]))
        out = self.rings[0].out0
        return Polygon(self.corners).way(out) if self.corners else tau * out

    @property
    def grounded(self) -> int:
        """How many rounds make the flat base: up to the last one near the ground that goes outwards rather
        than up; 0 where they are fewer than two, or the piece is stuffed or worn.
        """
        low = FOOT * self.height
        flat = [
            at
            for at, ring in enumerate(self.rings, 1)
            if ring.out1 - ring.out0 > ring.high1 - ring.high0 and (self.lying or ring.high1 <= low)
        ]
        return flat[-1] if len(flat) > 1 and not (self.filled or self.worn) else 0

    @property
    def foot(self) -> float:
        """How far out the flat base reaches, 0 without one."""
        return self.rings[self.grounded - 1].out1 if self.grounded else 0.0

    def side(self) -> list[Point]:
        """The way up one side: where each round begins, and where the last one ends; from the middle outwards
        and up, the base drawn flat.
        """
        ends = [(self.rings[0].out0, self.rings[0].high0), *((ring.out1, ring.high1) for ring in self.rings)]
        sunk = ends[self.grounded][1]
        side = [
            (out + self.spine / 2, high - sunk if at > self.grounded else 0.0)
            for at, (out, high) in enumerate(ends)
        ]
        top = side[-1][1]
        return [(x, top - y) for x, y in side] if self.worn else side

    def front_edge(self) -> list[Point]:
        """The edge of the last round as it shows in front, from the right to the left; none where it is even.
        Seen from above rounds begin at the right and go away from the viewer: three quarters on is in front.
        """
        last, sunk = self.rings[-1], self.rings[self.grounded - 1].high1 if self.grounded else 0.0
        top = self.rings[-1].high1 - sunk
        found: list[Point] = []
        for along, share in sorted(((along % 1.0, share) for along, share in self.rim), reverse=True):
            if along < 0.5:
                continue
            out = last.out0 + (last.out1 - last.out0) * share
            high = last.high0 + (last.high1 - last.high0) * share - sunk
            found.append((out * cos(tau * along), top - high if self.worn else high))
        return found


@once
def form_of(subject: Subject) -> Form:
    """The form of a piece worked in rounds."""
    stand, rounds = stand_of(subject)
    if isinstance(stand.section, Rectangle):
        return _frame(stand, stand.section)
    corners = stand.section.corners if isinstance(stand.section, Polygon) else 0
    spine = 0.0 if isinstance(stand.section, Polygon) else stand.section.spine
    worn = "head" in subject.work.pattern.to_fit and not stand.from_above
    rings = over_a_head(subject.sizes, stand.section, stand.rings[0].out0) if worn else stand.rings
    open_ = not stand.from_above and not corners and not spine and stand.rings[-1].out1 > 0
    rim = edge_of(rounds[-1], subject.worked[-1], subject.scale, stand.rings[-1].rise) if open_ else []
    form = Form(rings, stand.from_above, corners, spine, [], subject.stuffed, worn, rim)
    if is_leaf(subject):
        return replace(form, edge=leaf_edge(subject, 2 * form.widest + spine, 2 * form.widest))
    if corners or spine or not stand.from_above:
        return replace(form, edge=outline_above(form.widest, corners, spine))
    rise = stand.rings[-1].rise
    points = edge_of(rounds[-1], subject.worked[-1], subject.scale, rise) if _has_points(subject) else []
    return replace(form, edge=_tops(stand, rounds[-1], points))


def _has_points(subject: Subject) -> bool:
    return any(leaves_of(subject.worked[-1]))


def _frame(stand: Stand, within: Rectangle) -> Form:
    """A border around others, or a rectangle of its own: the whole, lying with its longer side along x."""
    long, wide = (max(within.wide, within.high), min(within.wide, within.high))

    def edge(out: float) -> list[Point]:
        x, y = long / 2 + out, wide / 2 + out
        return [(-x, -y), (x, -y), (x, y), (-x, y)]

    opening = edge(0.0) if isinstance(within, Oblong) else []
    return Form(stand.rings, True, 0, long, edge(stand.rings[-1].out1), False, opening=opening)


def _tops(stand: Stand, items: Sequence[Item], edge: Sequence[Point]) -> list[Point]:
    """Over the tops of a round's stitches: the scallops of an edge show. edge: as it is known already."""
    ring, points = stand.rings[-1], []
    if edge:
        return [stand.section.at(ring.out0 + (ring.out1 - ring.out0) * high, along) for along, high in edge]
    for item in items:
        for part in (0.0, 0.25, 0.5, 0.75):
            top = item.tops[0] + (item.tops[1] - item.tops[0]) * part
            along = item.start + (item.end - item.start) * part
            points.append(stand.section.at(ring.out0 + (ring.out1 - ring.out0) * top, along))
    return points


def outline_above(out: float, corners: int = 0, spine: float = 0.0) -> list[Point]:
    """The outline seen from above, so far out from the middle: circle, oval (lying along x) or polygon."""
    if corners:
        reach = out / cos(pi / corners)
        turns = [pi / 2 + pi / corners + tau * at / corners for at in range(corners)]
        return [(reach * cos(turn), reach * sin(turn)) for turn in turns]
    half = spine / 2
    points: list[Point] = []
    for at in range(49):
        turn = -pi / 2 + pi * at / 48
        points.append((half + out * cos(turn), out * sin(turn)))
    return points + [(-x, -y) for x, y in points]


def said(measured: Measured, piece: str, what: What) -> str:
    """One measure of a piece in both units, one a size: as the author states it, else as worked out from the
    gauge (`about 13.5 cm (5¼ in)`); "" where it isn't known.
    """
    first = measured.pieces[0].name if measured.pieces else ""
    laid_out = measured.laid_out is not None
    for one in measured.stated:
        if one.what == what and (one.piece == piece or (not one.piece and piece == first and not laid_out)):
            return amounts.stated(one.lengths, measured.pattern.size_count)
    own = measured.piece(piece)
    bands = [size.get(what) for size in own.size] if own is not None else []
    return about([band.middle if band is not None else None for band in bands])


def about(sizes_mm: Sequence[float | None]) -> str:
    """A worked-out measure in both units; "" where no size has it."""
    if not any(sizes_mm):
        return ""
    return f"about {amounts.lengths(tuple(sizes_mm))}"
