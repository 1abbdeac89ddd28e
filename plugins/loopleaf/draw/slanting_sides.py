"""The two sides of rows that each begin and end a little further in or out: one line each, without steps.

The first of such rows is as long as it should be along its foot, the last one along its top; what lies
between eases from the one to the other, so that a side that changes alike is straight from corner to corner.
"""

from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import accumulate, groupby, pairwise

from ..fabric import Made
from .canvas import Point
from .laid_row import Corner, LaidRow
from .subject import Subject

STEADY = 4.0
"""Where every row ends within so many stitch widths of the one below, the sides are lines from row to row."""

PASSED = 1.6
"""A row that leaves fewer stitch widths than this at an end goes to that end: turning chains are left so."""

STRAIGHT = 0.6
"""A side that keeps within so many stitch widths of a straight line is one."""

EVEN = 1.5
"""Beside a side that changes in every few rows it is upright where it goes on for so many times as many."""


def slanting(rows: Sequence[LaidRow], subject: Subject) -> Iterator[LaidRow]:
    """The rows between the lines that are their sides: in each run of rows that end near the one below."""
    wide = subject.scale.width_mm
    begins = [
        at
        for at in range(len(rows))
        if not at or at in subject.parts or not _goes_on(rows[at], rows[at - 1], wide)
    ]
    rises = [size.rise_mm for size in subject.sizes]
    for start, stop in pairwise([*begins, len(rows)]):
        run = rows[start:stop]
        if all(row.corners for row in run):
            run = [*_run(run, rises[start:stop], STRAIGHT * wide)]
        for row in run:
            yield replace(row, slanting=len(begins) == 1)


def eased(lengths: Sequence[float], rises: Sequence[float], wide: float) -> list[tuple[float, float]]:
    """How wide the foot and the top of each row are where rows change alike at both ends. wide: a stitch."""
    if max(lengths) - min(lengths) <= 0.0:
        return [(one, one) for one in lengths]
    side = _side([one / 2 for one in lengths], rises, 0.0, STRAIGHT * wide)
    levels = [2 * _at(side, high) for high in accumulate(rises, initial=0.0)]
    return [*pairwise(levels)]


def is_steady(lengths: Sequence[float], wide: float) -> bool:
    """Whether each row ends near the one below at both ends. wide: a stitch."""
    return all(abs(b - a) <= 2 * STEADY * wide for a, b in pairwise(lengths))


def _side(ends: Sequence[float], rises: Sequence[float], base: float, off: float) -> list[Point]:
    """Where rows end: each is as long as it should be at a height of its own, the first one at its foot, the
    last one at its top.
    """
    levels = [*accumulate(rises, initial=base)]
    last = max(len(ends) - 1, 1)
    own = [levels[at] + rises[at] * at / last for at in range(len(ends))]
    return _straightened(_sloped([*zip(ends, own, strict=True)]), off)


def _sloped(side: Sequence[Point]) -> list[Point]:
    """A side that goes the same way in every few rows, through the middles of the rows that are alike."""
    alike = [[*group] for _, group in groupby(side, lambda point: round(point[0], 3))]
    ways = [1 if b[0][0] > a[0][0] else -1 for a, b in pairwise(alike)]
    found: list[Point] = []
    for at, rows in enumerate(alike):
        around = ways[max(at - 1, 0) : at + 1] if 0 < at < len(ways) else (ways[:2] if not at else ways[-2:])
        beside = len(alike[1 if not at else -2]) if len(alike) > 2 else 0
        (x, low), (_, high) = rows[0], rows[-1]
        if len(alike) < 3 or len({*around}) > 1:
            found += [(x, low), (x, high)]
        elif 0 < at < len(ways):
            found.append((x, (low + high) / 2))
        elif len(rows) <= EVEN * beside:
            found.append((x, high if at else low))
        else:
            found += [(x, low), (x, high)]
    return found


def _goes_on(row: LaidRow, below: LaidRow, wide: float) -> bool:
    """Whether a row goes from end to end of the one below, and ends near there. wide: a stitch."""
    if not row.corners or not below.corners:
        return False
    feet = _feet(row, below)
    left_over = max(feet[0] - below.left, below.right - feet[1])
    out = max(abs(row.left - below.left), abs(row.right - below.right))
    return left_over < PASSED * wide and out <= STEADY * wide


def _feet(row: LaidRow, below: LaidRow) -> tuple[float, float]:
    """From where to where a row stands on the one below; of arches, from end to end of it."""
    if not all(isinstance(item.thing, Made) for item in (*row.items, *below.items)):
        return below.left, below.right
    xs = [x for corner in row.corners for x, _ in corner.feet]
    return min(xs), max(xs)


def _run(rows: Sequence[LaidRow], rises: Sequence[float], off: float) -> Iterator[LaidRow]:
    base = max(y for corner in rows[0].corners for _, y in corner.tops) - rises[0]
    levels = [base + high for high in accumulate(rises, initial=0.0)]
    left = _side([row.left for row in rows], rises, base, off)
    right = _side([row.right for row in rows], rises, base, off)
    below = rows[0]
    for row, low, high in zip(rows, levels, levels[1:], strict=False):
        foot = _moved(_feet(row, below), (_at(left, low), _at(right, low)))
        top = _moved((row.left, row.right), (_at(left, high), _at(right, high)))
        corners = [
            Corner((foot(one.feet[0]), foot(one.feet[1])), (top(one.tops[0]), top(one.tops[1])))
            for one in row.corners
        ]
        yield replace(row, corners=corners)
        below = row


def _moved(ends: tuple[float, float], to: tuple[float, float]) -> Callable[[Point], Point]:
    """Where a point between two ends comes to be when these come to be there."""
    scale = (to[1] - to[0]) / ((ends[1] - ends[0]) or 1.0)
    return lambda point: (to[0] + (point[0] - ends[0]) * scale, point[1])


def _straightened(side: Sequence[Point], off: float) -> list[Point]:
    """A side's corners alone: the points that lie further than that from the line between those kept (the
    usual way to thin out a line, named after Douglas and Peucker).
    """
    if len(side) < 3:
        return [*side]
    first, last = side[0], side[-1]
    away = [abs(x - _at((first, last), y)) for x, y in side[1:-1]]
    furthest = max(range(len(away)), key=away.__getitem__) + 1
    if away[furthest - 1] <= off:
        return [first, last]
    return [*_straightened(side[: furthest + 1], off)[:-1], *_straightened(side[furthest:], off)]


def _at(side: Sequence[Point], y: float) -> float:
    after = bisect_right([high for _, high in side], y)
    if not 0 < after < len(side):
        return side[min(after, len(side) - 1)][0]
    (x0, low), (x1, high) = side[after - 1], side[after]
    return x0 + (x1 - x0) * (y - low) / ((high - low) or 1.0)
