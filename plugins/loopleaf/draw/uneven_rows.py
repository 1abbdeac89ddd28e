"""Rows that don't all go from edge to edge: each is laid on the cloth where it was worked.

The tops of the cloth are kept as a line from left to right. A row begins where its stitches have their
places, as wide as it is, and lifts that line there: so short rows stand at the side that they were worked at,
parts stand side by side, and what is added at one edge alone makes that edge lean. A short row that a later
row goes over eases down to the cloth beside it (`short_rows.py`), and that row lies along the slope.
"""

from collections.abc import Mapping, Sequence

from ..fabric import Made
from ..measure.size import RoundSize
from .canvas import Point
from .items import Item, Spot, feet_of, foundation, rows_of_items
from .laid_row import Corner, LaidRow, Tops
from .once import once
from .short_rows import End, Lying, Ramp, ramps
from .slanting_sides import PASSED, slanting
from .standing import row_begins
from .subject import Subject

SHIFTED = 1.5
"""Rows whose middles lie so many stitch widths apart lean to one side."""

DEEP = 0.6
"""A stitch whose place lies so much of its row's height below the top of the cloth is worked over others."""

DRAWN_OUT = 0.5
"""Beside the end of a short row that lies over it a stitch stands so much of the gap higher, and is longer by
the rest.
"""

CLOSE = 0.01
"""Ends that lie within so many mm of those of another row lie above them."""

FINE = 3
"""Ends are in thousandths of a millimetre, so that what lies above one another meets."""


@once
def laid_unevenly(subject: Subject) -> list[LaidRow] | None:
    """The rows where each was worked; None for a piece whose rows all go from edge to edge and grow alike at
    both, or one of them is empty.
    """
    if not all(size.stitches and size.length_mm for size in subject.sizes):
        return None
    plain = _Laying(subject)
    plain.lay()
    if plain.unsure and plain.still is not None:
        plain = _Laying(subject, still=plain.still)
        plain.lay()
    if not plain.uneven:
        return None
    if plain.closed:
        lying = [
            Lying(row.left, row.right, size.rise_mm)
            for row, size in zip(plain.found, subject.sizes, strict=True)
        ]
        again = _Laying(subject, plain.closed, ramps(plain.closed, lying, plain.wide))
        again.lay()
        return again.found
    return [*slanting(plain.found, subject)]


class _Laying:
    """Lays row upon row. eased: the ends of short rows that come down to the cloth beside them, each by the
    index of the row that goes over it. slopes: how each comes down. still: the end that the first rows keep
    if they can't tell, True the left one.
    """

    def __init__(
        self,
        subject: Subject,
        eased: Mapping[End, int] | None = None,
        slopes: Mapping[End, Ramp] | None = None,
        still: bool | None = None,
    ) -> None:
        self.subject, self.eased, self.slopes = subject, eased or {}, slopes or {}
        self.wide = subject.scale.width_mm
        self.tops = Tops()
        self.spots: dict[int, Spot] = {}
        self.found: list[LaidRow] = []
        self.still, self.unsure = still, False
        self.ends: list[tuple[float, float]] = []
        self.uneven, self.closed = bool(subject.parts), dict[End, int]()
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
                if all(isinstance(item.thing, Made) for item in (*items, *self.found[-1].items)):
                    self._narrowed(feet, size.length_mm)
            left = self._left(at, items, feet, size.length_mm) if at else -first / 2
            self.found.append(self._row(at, items, feet, left, size))
            self.ends.append((left, left + size.length_mm))
        middles = [(row.left + row.right) / 2 for row in self.found]
        self.uneven = self.uneven or max(middles) - min(middles) > SHIFTED * self.wide

    def _reaches(self, at: int, feet: Mapping[int, Spot]) -> tuple[bool, bool]:
        """Whether a row goes to the left and to the right end of the one below."""
        below = self.found[at - 1]
        low = min((spot.start for spot in feet.values()), default=below.left)
        high = max((spot.end for spot in feet.values()), default=below.right)
        return low - below.left < PASSED * self.wide, below.right - high < PASSED * self.wide

    def _narrowed(self, feet: Mapping[int, Spot], long: float) -> None:
        """Notes whether a row is narrower than the one below as it leaves a stitch of it at an end."""
        below = self.found[-1]
        low = min((spot.start for spot in feet.values()), default=below.left)
        high = max((spot.end for spot in feet.values()), default=below.right)
        left_over = max(low - below.left, below.right - high)
        self.uneven |= left_over > DEEP * self.wide and long < below.right - below.left - self.wide / 2

    def _left(self, at: int, items: Sequence[Item], feet: Mapping[int, Spot], long: float) -> float:
        """Where a row begins: its stitches stand above their places."""
        below = self.found[at - 1]
        whole = at not in self.subject.parts and all(self._reaches(at, feet))
        begins, self.still = row_begins(
            items, feet, long, (below.left, below.right), self.wide, whole, self.still
        )
        self.unsure |= self.still is None
        same = (
            one for one in self.ends if abs(one[0] - begins) < CLOSE or abs(one[1] - begins - long) < CLOSE
        )
        left, right = next(same, (begins, begins + long))
        return left if abs(left - begins) < CLOSE else right - long

    def _compare(self, at: int, items: Sequence[Item], feet: Mapping[int, Spot]) -> None:
        """Notes whether a row leaves an end of the one below, or goes down to earlier ones beside it."""
        if not feet:
            return
        if not all(self._reaches(at, feet)):
            self.uneven = True
        into: dict[int, list[Spot]] = {}
        for item in items:
            if isinstance(item.thing, Made) and not item.thing.post and id(item.thing) in feet:
                for place in item.thing.into:
                    stitch = isinstance(place, Made) and place.role in ("stitch", "turning")
                    if stitch and id(place) in self.rows and self._bare(feet, item):
                        into.setdefault(self.rows[id(place)], []).append(feet[id(item.thing)])
        if min(into, default=at) >= at - 1 or len(into) < 2:
            self.uneven |= min(into, default=at) < at - 1
            return
        self.uneven = True
        if not all(isinstance(item.thing, Made) for item in items):
            return  # arches hang as they will
        for end, (apart, deep) in self._beside(into, at).items():
            if apart < PASSED * self.wide and deep > self.wide * DEEP:
                self.closed.setdefault(end, at)

    def _beside(self, into: Mapping[int, Sequence[Spot]], at: int) -> dict[End, tuple[float, float]]:
        """The ends of rows that a row goes down beside, with how far from there and how much deeper, in mm,
        the nearest of its places are. into: the places that it goes into, by their row.
        """
        found: dict[End, tuple[float, float]] = {}
        for place_row, spots in into.items():
            for row in range(place_row + 1, at):
                one = self.found[row]
                for right, corner in ((False, one.corners[0]), (True, one.corners[-1])):
                    for spot in spots:
                        apart = spot.start - one.right if right else one.left - spot.end
                        if apart > -self.wide / 2:
                            deep = corner.tops[int(right)][1] - spot.top
                            found[End(row, right)] = min(
                                found.get(End(row, right), (apart, deep)), (apart, deep)
                            )
        return found

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
        edges = [*begins, ends[-1]]
        share = [self._share(at, x) for x in edges]
        lift = [(self._lift(at, x, False) + self._lift(at, x, True)) / 2 for x in edges]
        lift[0], lift[-1] = self._lift(at, edges[0], True), self._lift(at, edges[-1], False)
        corners = []
        for i, item in enumerate(items):
            up = [base[i + by] + lift[i + by] + rise * share[i + by] * item.tops[by] for by in (0, 1)]
            (x, y), (other, also) = under = self._standing(item, feet, begins[i], ends[i], rise)
            gap = lift[i] * DRAWN_OUT, lift[i + 1] * DRAWN_OUT
            tops = (begins[i], up[0]), (ends[i], up[1])
            corners.append(
                Corner(((x, y + gap[0]), (other, also + gap[1])), tops, under if any(gap) else None)
            )
        for item, corner in zip(items, corners, strict=True):
            (x, y), (other, also) = corner.tops
            self.spots[id(item.thing)] = Spot(x, other, min(y, also))
        self.tops.cover([top for corner in corners for top in corner.tops])
        return LaidRow(items, corners, begins[0], ends[-1])

    def _share(self, at: int, x: float) -> float:
        """How much of a row's height it has there."""
        slopes = (self.slopes.get(End(at, right)) for right in (False, True))
        return min((slope.left_at(x) for slope in slopes if slope is not None), default=1.0)

    def _lift(self, at: int, x: float, from_left: bool) -> float:
        """How much higher than on the cloth a row lies that goes over the ends of short rows: on their slope.

        from_left: whether what lies to the right of x counts.
        """
        more = 0.0
        for end, over in self.eased.items():
            row = self.found[end.row] if over == at else None
            if row is None:
                continue
            beyond = x > row.right or (x == row.right and from_left)
            before = x < row.left or (x == row.left and not from_left)
            if beyond if end.right else before:
                more += self.subject.sizes[end.row].rise_mm * self.slopes[end].left_at(x)
        return more

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
