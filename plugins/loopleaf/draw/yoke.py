"""Rows around four corners, begun at a neck: the yoke of a garment open in front, laid flat around it."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from .canvas import Point
from .foundation_edge import foot_mm
from .items import Item, items_of_rows
from .subject import Subject

CORNERS = 4

FEWEST = 3
"""Fewer rows than this are a band."""

GROWS = (1.2, 3.2)
"""What a row grows by at each corner, of its height: 2 makes a right angle."""

STRAIGHT = 0.25
"""A front that grows at its edge by less than this, of what it grows by at its corner, has an upright one."""

OPEN = 0.5
"""The fronts leave at least so many stitch widths open between them."""


@dataclass(frozen=True, slots=True)
class Yoke:
    """corners: of the neck, from the end of one front around the back to that of the other, in mm. levels:
    the heights of the neck and of each row's tops; knots: at each of them where the corners are, as shares.
    leans: by how much of its height the edge of either front comes in, as at a V-neck.
    """

    corners: Sequence[Point]
    levels: Sequence[float]
    knots: Sequence[Sequence[float]]
    leans: tuple[float, float] = (0.0, 0.0)

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: rows of any width are eased between their corners; at a height in mm."""
        after = min(bisect_left(self.levels, high), len(self.levels) - 1)
        level = after if not after or self.levels[after] - high < high - self.levels[after - 1] else after - 1
        ways = [0.0, *self.knots[level], 1.0]
        side = min(max(bisect_left(ways, along) - 1, 0), CORNERS)
        part = (along - ways[side]) / ((ways[side + 1] - ways[side]) or 1.0)
        (x0, y0), (x1, y1) = self.corner(side, high), self.corner(side + 1, high)
        return (x0 + (x1 - x0) * part, y0 + (y1 - y0) * part)

    def corner(self, number: int, high: float) -> Point:
        """A corner so far away from the neck, or the end of a front."""
        x, y = self.corners[number]
        left, other = self.leans
        right, up = ((left, -1), (-1, -1), (-1, 1), (1, 1), (1, -1), (-other, -1))[number]
        return (x + right * high, y + up * high)

    def edge(self, high: float) -> list[Point]:
        """From end to end so far away from the neck."""
        return [self.corner(number, high) for number in range(len(self.corners))]


def yoke_of(subject: Subject) -> Yoke | None:
    """The yoke that rows are; None for any others."""
    if not subject.in_rows or len(subject.worked) < FEWEST or len(subject.sizes) != len(subject.worked):
        return None
    mirrored = [work.side != "WS" for work in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, mirrored, subject.scale, start)
    knots = _knots(rows)
    neck, last = foot_mm(subject), subject.sizes[-1]
    if not knots or not neck:
        return None
    levels = [*accumulate((size.rise_mm for size in subject.sizes), initial=0.0)]
    low, high = GROWS
    first, then = (
        [part * mm for part in _parts(at)] for at, mm in ((knots[0], neck), (knots[-1], last.length_mm))
    )
    grown = [(b - a) / levels[-1] for a, b in zip(first, then, strict=True)]
    half = sum(grown[1:-1]) / (2 * (CORNERS - 1))
    if not low <= 2 * half <= high:
        return None
    leans = [more / half - 1 for more in (grown[0], grown[-1])]
    wide, deep = first[2], (first[1] + first[3]) / 2
    room = (wide - OPEN * subject.scale.width_mm) / 2
    x, y, front, other = wide / 2, deep / 2, min(first[0], room), min(first[-1], room)
    corners = [(front - x, -y), (-x, -y), (-x, y), (x, y), (x, -y), (x - other, -y)]
    left, right = (
        min(lean, (room - own) / levels[-1]) if lean > STRAIGHT else 0.0
        for lean, own in zip(leans, (front, other), strict=True)
    )
    return Yoke(corners, levels, knots, (left, right))


def _parts(knots: Sequence[float]) -> list[float]:
    return [b - a for a, b in pairwise([0.0, *knots, 1.0])]


def _knots(rows: Sequence[Sequence[Item]]) -> list[list[float]]:
    """Where the corners are along what the rows begin on, and along each row; none where rows have other
    than four. In a row without any they are above those of the row below.
    """
    own = [[item.middle for item in row if item.corner] for row in rows]
    first = next((at for at, knots in enumerate(own) if knots), None)
    if first is None or not all(rows) or any(len(knots) not in (0, CORNERS) for knots in own):
        return []
    under = own[first]
    found: list[list[float]] = []
    for row in reversed(rows[: first + 1]):
        found.insert(0, under)
        under = [_foot(min(row, key=lambda item: abs(item.middle - at))) for at in under]
    found.insert(0, under)
    for row, knots in zip(rows[first + 1 :], own[first + 1 :], strict=True):
        above = [min(row, key=lambda item: abs(_foot(item) - at)).middle for at in found[-1]]
        found.append(knots or above)
    ordered = all(a < b for knots in found for a, b in pairwise([0.0, *knots, 1.0]))
    return found if ordered and sum(map(bool, own)) * 2 >= len(rows) else []


def _foot(item: Item) -> float:
    return (item.foot[0] + item.foot[1]) / 2
