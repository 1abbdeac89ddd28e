"""How the stem of a spike is led down past the rows between: beside what stands there, not over it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import dist, hypot
from typing import NamedTuple

from ..fabric import Space
from .canvas import Point
from .chart_ground import outward
from .chart_lines import Layout, Line
from .chart_numbers import Inked, off_ink
from .shapes import short
from .signs import CHAIN_THICK, CROSS_REACH, HEAD, UNIT, bars, height_of, is_cross

CLEAR = 1.1
"""So far from the middle of a stem other ink lies, in units."""

ASIDES = (5.0, -5.0, 4.2, -4.2, 6.0, -6.0)
"""A stem is led so far aside: in the middle between two stitches, or near that."""

BENDS_ABOVE, BENDS_BELOW = 3.6, 1.6
"""A stem bends aside from so far above its own row's lower edge until so far below it."""

BENDS_BACK, FOOT_FREE = 4.0, 2.6
"""It bends back so far above its foot; so near to it other ink is no matter: there lies its place."""

FOOT_ASIDE = 0.3
"""It comes to its place from the side: so much of the way aside is left there."""

STEPS, CELL = 8, 20.0
"""A bend is drawn in so many parts; ink is looked up in cells so wide."""

HEAD_LEAST, BAR_LEAST = 4.0, 2.4
"""Between the head of a short stem and its first bar, and between two of its bars, at least."""


class Stem(NamedTuple):
    """How a stem goes from a head down to its foot. aside: how far it is led aside, 0 for a straight one.
    begins, ends: how far below the head it bends. long: from head to foot.
    """

    aside: float
    begins: float
    ends: float
    long: float

    def path(self, start: float) -> str:
        """What lies so far below the head and further down, as a path about the head, the foot straight below
        it.
        """
        a, back = self.aside, self.long - BENDS_BACK
        there, down = self.ends - self.begins, BENDS_BACK
        return (
            f"M0 {short(start)}V{short(self.begins)}"
            f"C0 {short(self.begins + there / 3)} {short(a)} {short(self.ends - there / 3)} {short(a)} "
            f"{short(self.ends)}V{short(back)}"
            f"C{short(a)} {short(back + down / 3)} {short(a * FOOT_ASIDE)} {short(self.long - down / 3)} "
            f"{short(a * FOOT_ASIDE)} {short(self.long)}"
        )

    def points(self, head: Point, foot: Point) -> Iterator[Point]:
        """The same as points on it."""
        if not self.aside:
            yield from (head, foot)
            return
        x, y = (foot[0] - head[0]) / self.long, (foot[1] - head[1]) / self.long
        bends = ((self.begins, self.ends, False), (self.long - BENDS_BACK, self.long, True))
        yield head
        for low, high, back in bends:
            for step in range(STEPS + 1):
                share = step / STEPS
                eased = share * share * (3 - 2 * share)
                deep, by = (
                    low + (high - low) * share,
                    self.aside * (1 - (1 - FOOT_ASIDE) * eased if back else eased),
                )
                yield (head[0] + x * deep - y * by, head[1] + y * deep + x * by)


@dataclass(slots=True)
class Passed:
    """The ink of the rounds of a chart, taken up round by round as it is asked for."""

    layout: Layout
    _cells: dict[tuple[int, int], list[Inked]] = field(default_factory=lambda: defaultdict(list))
    _rounds: int = 0

    def stem(self, at: int, head: Point, foot: Point) -> Stem:
        """How the stem of a stitch in the round of that index goes: straight where nothing stands between,
        else beside it.
        """
        for line in self.layout.lines[self._rounds : at]:
            self._take(line)
        self._rounds = max(self._rounds, at)
        line = self.layout.lines[at]
        long, own = dist(head, foot), line.high - line.low
        best = Stem(0.0, own - BENDS_ABOVE, own + BENDS_BELOW, long)
        most = self._clear(best, head, foot)
        for aside in ASIDES if long - own >= 2 * BENDS_BACK else ():
            if most >= CLEAR:
                break
            bowed = best._replace(aside=aside)
            clear = self._clear(bowed, head, foot)
            if clear > most:
                best, most = bowed, clear
        return best

    def _take(self, line: Line) -> None:
        for stroke in _ink(line):
            (x, y), (to_x, to_y), _ = stroke
            for share in (0.0, 0.5, 1.0):
                cell = _cell((x + (to_x - x) * share, y + (to_y - y) * share))
                if stroke not in self._cells[cell]:
                    self._cells[cell].append(stroke)

    def _clear(self, stem: Stem, head: Point, foot: Point) -> float:
        """How far the nearest ink lies from a stem, between its own row and its foot."""
        points = [
            point
            for point in _points([*stem.points(head, foot)])
            if dist(point, foot) > FOOT_FREE and dist(point, head) > stem.begins
        ]
        near = (off_ink(point, *stroke) for point in points for stroke in self._near(point))
        return min(near, default=stem.long)

    def _near(self, point: Point) -> Iterator[Inked]:
        column, row = _cell(point)
        for across in (-1, 0, 1):
            for up in (-1, 0, 1):
                yield from self._cells.get((column + across, row + up), ())


def own_part(kind: str, high: float) -> str:
    """The head of a tall stitch and its stem as far as its own row reaches, from (0, 0) upwards, with all of
    its bars.
    """
    many = len(bars(kind))
    step = min(4.2, max((high - HEAD_LEAST) / max(many, 1), BAR_LEAST))
    first = min(0.28 * height_of(kind), max(high - 1.5 - step * (many - 1), HEAD_LEAST / 2))
    slants = "".join(f"M-2.4 {first + step * at - high + 1.1:.1f}l4.8 -2.2" for at in range(many))
    return f"M0 0V{0.6 - high:.1f}{slants}M-{HEAD} {0.6 - high:.1f}h{2 * HEAD}"


def _ink(line: Line) -> Iterator[Inked]:
    """What a round has drawn: of a cross all within its arms, of a tall stitch its stem and its head."""
    for thing in line.things:
        if isinstance(thing, Space):
            for bead in line.arches[id(thing)].beads:
                yield (bead.middle, bead.middle, CHAIN_THICK / 2 + 0.6)
            continue
        head, foot = line.heads[id(thing)], line.feet[id(thing)][0]
        across, up = outward(line.ground, head)
        if is_cross(thing.kind):
            half = UNIT / 2
            middle = (head[0] - across * half, head[1] - up * half)
            yield (middle, middle, CROSS_REACH)
        else:
            yield (foot, head, 0.5)
            long = hypot(head[0] - foot[0], head[1] - foot[1]) or 1.0
            bar = ((head[1] - foot[1]) / long * HEAD, (foot[0] - head[0]) / long * HEAD)
            yield ((head[0] - bar[0], head[1] - bar[1]), (head[0] + bar[0], head[1] + bar[1]), 0.5)


def _points(way: Sequence[Point]) -> Iterable[Point]:
    """Points on a way, no further than a unit or two from each other."""
    for start, end in pairwise(way):
        many = max(round(dist(start, end) / 1.5), 1)
        for at in range(many):
            share = at / many
            yield (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


def _cell(point: Point) -> tuple[int, int]:
    return round(point[0] / CELL), round(point[1] / CELL)
