"""Rows that don't all go from edge to edge: each is laid on the cloth where it was worked.

The tops of the cloth are kept as a line from left to right. A row begins where its stitches have their
places, as wide as it is, and lifts that line there: so short rows stand at the side that they were worked at,
parts stand side by side, and what is added at one edge alone makes that edge lean. A short row that a later
row goes over comes down to the cloth beside it, as the last stitches before a turn are drawn in.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from statistics import median
from typing import NamedTuple

from ..fabric import Made
from ..measure.size import RoundSize
from .canvas import Canvas, Point
from .in_rows import ROW_LAYERS
from .items import Item, Spot, feet_of, foundation, rows_of_items
from .once import once
from .stitchwork import Patch, Placed, between, draw_row, straight
from .subject import Subject
from .worked_back import draw_leaf_on, goes_on, in_line, leaves_of, standing_out

PASSED = 1.6
"""A row that leaves fewer stitch widths than this at an end goes to that end: turning chains are left so."""

SHIFTED = 1.5
"""Rows whose middles lie so many stitch widths apart lean to one side."""

DEEP = 0.6
"""A stitch whose place lies so much of its row's height below the top of the cloth is worked over others."""

FINE = 3
"""Ends are in thousandths of a millimetre, so that what lies above one another meets."""

DRAWN_IN = (0.3, 0.75)
"""The end of a short row that is worked over later has so much of its height, and one stitch further in."""


class Corner(NamedTuple):
    """Of an item's patch: its two feet and its two tops, from left to right."""

    feet: tuple[Point, Point]
    tops: tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class LaidRow:
    """A row laid on the cloth below. corners: of each item. left, right: its two ends, in mm."""

    items: Sequence[Item]
    corners: Sequence[Corner]
    left: float
    right: float


@dataclass(slots=True)
class Tops:
    """The tops of the cloth from left to right; where they step up or down two points have the same x."""

    xs: list[float] = field(default_factory=list)
    ys: list[float] = field(default_factory=list)

    def at(self, x: float, from_left: bool) -> float:
        """The height there; at a step, of the side that one comes from; beyond the ends, of the end."""
        after = bisect_left(self.xs, x) if from_left else bisect_right(self.xs, x)
        if not self.xs:
            return 0.0
        if not 0 < after < len(self.xs):
            return self.ys[min(after, len(self.xs) - 1)]
        (a, b), (low, high) = self.xs[after - 1 : after + 1], self.ys[after - 1 : after + 1]
        return low + (high - low) * (x - a) / ((b - a) or 1.0)

    def cover(self, points: Sequence[Point]) -> None:
        """The tops of a row over what lies there."""
        left, right = points[0][0], points[-1][0]
        edges = [(left, self.at(left, True))] if self.xs and left > self.xs[0] else []
        after = [(right, self.at(right, False))] if self.xs and right < self.xs[-1] else []
        kept = [*zip(self.xs, self.ys, strict=True)]
        whole = [
            *(one for one in kept if one[0] < left), *edges, *points, *after,
            *(one for one in kept if one[0] > right),
        ]  # fmt: skip
        self.xs, self.ys = [x for x, _ in whole], [y for _, y in whole]


@once
def laid_unevenly(subject: Subject) -> list[LaidRow] | None:
    """The rows where each was worked; None for a piece whose rows all go from edge to edge and grow alike at
    both, or one of them is empty.
    """
    if not all(size.stitches and size.length_mm for size in subject.sizes):
        return None
    plain = _Laying(subject)
    plain.lay()
    if not plain.uneven:
        return None
    if not plain.over:
        return plain.found
    again = _Laying(subject, plain.over)
    again.lay()
    return again.found


class _End(NamedTuple):
    """One end of a row, by its index."""

    row: int
    right: bool


class _Laying:
    """Lays row upon row. drawn_in: the ends that come down to the cloth beside them."""

    def __init__(self, subject: Subject, drawn_in: frozenset[_End] = frozenset()) -> None:
        self.subject, self.drawn_in = subject, drawn_in
        self.wide = subject.scale.width_mm
        self.tops = Tops()
        self.spots: dict[int, Spot] = {}
        self.found: list[LaidRow] = []
        self.uneven, self.over = bool(subject.parts), frozenset[_End]()
        self.rows = {id(made): at for at, one in enumerate(subject.worked) for made in one.made}

    def lay(self) -> None:
        """All rows from the first."""
        mirrored = [work.side != "WS" for work in self.subject.piece.rounds]
        worked, sizes = self.subject.worked, self.subject.sizes
        start = self.subject.piece.starts[0] if self.subject.piece.starts else []
        first = sizes[0].length_mm
        for key, spot in foundation(worked[0], start, mirrored[0]).items():
            self.spots[key] = Spot((spot.start - 0.5) * first, (spot.end - 0.5) * first, 0.0)
        rows = rows_of_items(worked, mirrored, self.subject.scale, {})
        for at, (items, back, size) in enumerate(zip(rows, mirrored, sizes, strict=True)):
            feet = dict(feet_of(items, self.spots, back))
            if at in self.subject.parts:
                feet = _uncrossed(items, feet)
            if at:
                self._compare(at, items, feet)
            left = self._left(at, items, feet, size.length_mm) if at else -first / 2
            self.found.append(self._row(at, items, feet, left, size))
        middles = [(row.left + row.right) / 2 for row in self.found]
        self.uneven = self.uneven or max(middles) - min(middles) > SHIFTED * self.wide

    def _reaches(self, at: int, feet: Mapping[int, Spot]) -> tuple[bool, bool]:
        """Whether a row goes to the left and to the right end of the one below."""
        below = self.found[at - 1]
        low = min((spot.start for spot in feet.values()), default=below.left)
        high = max((spot.end for spot in feet.values()), default=below.right)
        return low - below.left < PASSED * self.wide, below.right - high < PASSED * self.wide

    def _left(self, at: int, items: Sequence[Item], feet: Mapping[int, Spot], long: float) -> float:
        """Where a row begins: most of its stitches stand above their places. One that is as long as the
        row below and goes from end to end of it lies on it.
        """
        below = self.found[at - 1]
        on_it = at not in self.subject.parts and all(self._reaches(at, feet))
        if on_it and abs(long - (below.right - below.left)) < self.wide / 2:
            return below.left
        offs = [
            (spot.start + spot.end) / 2 - item.middle * long
            for item in items
            if (spot := feet.get(id(item.thing))) is not None
        ]
        return median(offs) if offs else below.left

    def _compare(self, at: int, items: Sequence[Item], feet: Mapping[int, Spot]) -> None:
        """Notes whether a row leaves an end of the one below, or goes down to earlier ones beside it."""
        if not feet:
            return
        if not all(self._reaches(at, feet)):
            self.uneven = True
        into = {
            self.rows[id(place)]: feet[id(item.thing)]
            for item in items
            if isinstance(item.thing, Made) and not item.thing.post and id(item.thing) in feet
            for place in item.thing.into
            if id(place) in self.rows
            and isinstance(place, Made)
            and place.role in ("stitch", "turning")
            and self._bare(feet, item)
        }
        deepest, spot = min(into.items(), default=(at - 1, None))
        if spot is None or deepest >= at - 1:
            return
        self.uneven = True
        for row in range(deepest + 1, at if len(into) > 1 else 0):
            middle = (self.found[row].left + self.found[row].right) / 2
            self.over |= {_End(row, spot.start > middle)}

    def _bare(self, feet: Mapping[int, Spot], item: Item) -> bool:
        """Whether nothing lies over a stitch's place."""
        spot = feet[id(item.thing)]
        return self.tops.at((spot.start + spot.end) / 2, True) - spot.top < self.wide * DEEP

    def _row(
        self, at: int, items: Sequence[Item], feet: Mapping[int, Spot], left: float, size: RoundSize
    ) -> LaidRow:
        """One row laid down; its stitches are then places, and its tops those of the cloth."""
        long, rise = size.length_mm, size.rise_mm
        if not items:
            return LaidRow(items, [], left, left + long)
        begins = [round(left + item.start * long, FINE) for item in items]
        ends = [round(left + item.end * long, FINE) for item in items]
        low = [self.tops.at(x, False) for x in begins]
        high = [self.tops.at(x, True) for x in ends]
        base = [low[0], *((a + b) / 2 for a, b in zip(high, low[1:], strict=False)), high[-1]]
        share = self._shares(at, len(base))
        corners = []
        for i, item in enumerate(items):
            up = [base[i + by] + rise * share[i + by] * item.tops[by] for by in (0, 1)]
            corners.append(
                Corner(
                    self._standing(item, feet, begins[i], ends[i], rise),
                    ((begins[i], up[0]), (ends[i], up[1])),
                )
            )
        for item, corner in zip(items, corners, strict=True):
            (x, y), (other, also) = corner.tops
            self.spots[id(item.thing)] = Spot(x, other, min(y, also))
        self.tops.cover([top for corner in corners for top in corner.tops])
        return LaidRow(items, corners, begins[0], ends[-1])

    def _shares(self, at: int, many: int) -> list[float]:
        """How much of a row's height each side of its items has, from left to right."""
        share = [1.0] * many
        for right in (False, True):
            if _End(at, right) in self.drawn_in:
                for by, part in enumerate(DRAWN_IN):
                    if by < many:
                        share[-1 - by if right else by] = min(part, share[-1 - by if right else by])
        return share

    def _standing(
        self, item: Item, feet: Mapping[int, Spot], begin: float, end: float, rise: float
    ) -> tuple[Point, Point]:
        """Its feet: on its place, on the tops of the cloth there; a spike's on the place itself."""
        spot = feet.get(id(item.thing))
        start, stop = (begin, end) if spot is None else (round(x, FINE) for x in (spot.start, spot.end))
        low, high = self.tops.at(start, False), self.tops.at(stop, True)
        if spot is not None and self.tops.at((start + stop) / 2, True) - spot.top > DEEP * rise:
            low = high = spot.top
        return (start, low), (stop, high)


def _uncrossed(items: Sequence[Item], feet: Mapping[int, Spot]) -> dict[int, Spot]:
    """The feet of the first row of a part, from left to right as its stitches are. Its places are counted as
    the row below was made; a row that shows the same side is made from their other end.
    """
    spots = [spot for item in items if (spot := feet.get(id(item.thing))) is not None]
    if not spots or spots[0].start <= spots[-1].start:
        return dict(feet)
    both = min(spot.start for spot in spots) + max(spot.end for spot in spots)
    return {key: Spot(both - spot.end, both - spot.start, spot.top) for key, spot in feet.items()}


def draw_unevenly(canvas: Canvas, subject: Subject, rows: Sequence[LaidRow]) -> None:
    """The rows from the first up, their right side to the viewer."""
    for at, (row, work) in enumerate(zip(rows, subject.piece.rounds, strict=True)):
        placed = [
            Placed(item, _patch(corner), 1.0, work.side == "WS", True)
            for item, corner in zip(row.items, row.corners, strict=True)
        ]
        draw_row(canvas, ROW_LAYERS * at, placed, subject.colours)
        canvas.outline([*_edge(row)])
        tops = {id(item.thing): corner.tops for item, corner in zip(row.items, row.corners, strict=True)}
        for leaf in leaves_of(subject.worked[at]):
            (x, y), (other, also) = tops[id(leaf.on)]
            if goes_on(subject.worked[at]):
                surface = in_line(*((x, y, -1) if work.side != "WS" else (other, also, 1)))
            else:
                surface = standing_out((x + other) / 2, (y + also) / 2)
            draw_leaf_on(canvas, ROW_LAYERS * (len(rows) + 1), leaf, surface, subject.scale, subject.colours)


def _patch(corner: Corner) -> Patch:
    return between(straight(*corner.feet), straight(*corner.tops))


def _edge(row: LaidRow) -> Iterator[Point]:
    """Around a row: along its feet and back along its tops."""
    for corner in row.corners:
        yield from corner.feet
    for corner in reversed(row.corners):
        yield from reversed(corner.tops)
