"""Short rows: how their ends ease down to the cloth beside them, and the row over them lies on a slope."""

from collections.abc import Mapping, Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

ONE_STEP = 0.1
"""Rows whose ends lie within so many stitch widths end at one step."""

FLAT = 2.1
"""Beside a slope the cloth is flat only if it goes on for more than so many of its steps."""


class End(NamedTuple):
    """One end of a row, by its index."""

    row: int
    right: bool


class Ramp(NamedTuple):
    """Where a row is as high as it should be, and where nothing of it is left; in mm."""

    whole: float
    gone: float

    def left_at(self, x: float) -> float:
        """The share of its height that it has there."""
        return 1.0 - min(max((x - self.whole) / ((self.gone - self.whole) or 1.0), 0.0), 1.0)


class Lying(NamedTuple):
    """Of a laid row: its two ends and its height, in mm."""

    left: float
    right: float
    rise: float


def ramps(closed: Mapping[End, int], rows: Sequence[Lying], wide: float) -> dict[End, Ramp]:
    """The slope of each end of a short row. closed: the row that goes over each, by index. wide: a stitch.

    Steps beside each other make one straight slope as far as the cloth goes; where it goes on for long beyond
    them it is flat there.
    """
    found: dict[End, Ramp] = {}
    for over, right in dict.fromkeys((over, end.right) for end, over in closed.items()):
        way = 1 if right else -1
        ends = [end for end, row in closed.items() if (row, end.right) == (over, right)]

        def out(end: End) -> float:
            row = rows[end.row]
            return row.right if end.right else -row.left

        steps: list[list[End]] = []
        for end in sorted(ends, key=out):
            if steps and out(end) - out(steps[-1][0]) < ONE_STEP * wide:
                steps[-1].append(end)
            else:
                steps.append([end])
        shortest = rows[steps[0][0].row]
        inner = -shortest.right if way < 0 else shortest.left
        if End(steps[0][0].row, not right) in closed:
            inner = way * (shortest.left + shortest.right) / 2
        at = [inner, *(out(step[0]) for step in steps), out(End(over, right))]
        knots = _knots(at, [sum(rows[end.row].rise for end in step) for step in steps], wide)
        for step, (whole, gone) in zip(steps, pairwise(knots), strict=True):
            found.update({end: Ramp(way * whole, way * gone) for end in step})
    return found


def _knots(at: Sequence[float], deep: Sequence[float], wide: float) -> list[float]:
    """Where the slope of each step begins, and where that of the last one ends. at: from where the steps are
    seen, each step, and as far as the row over them goes. deep: how deep each step is. wide: a stitch.
    """
    treads = [b - a for a, b in pairwise(at)]
    if len(deep) == 1:
        first, last = (
            min(own, other if own > FLAT * other else own) for own, other in (treads, treads[::-1])
        )
    else:
        beside = ((treads[0], treads[1]), (treads[-1], treads[-2]))
        first, last = (own if own <= FLAT * step else _whole(step / 2, wide) for own, step in beside)
    begin, end = at[1] - first, at[-2] + last
    shares = [sum_ / (sum(deep) or 1.0) for sum_ in accumulate(deep, initial=0.0)]
    straight = [begin + (end - begin) * share for share in shares]
    treading = [*pairwise(at[1:-1])]
    off = ONE_STEP * wide
    if all(low - off < knot < high + off for knot, (low, high) in zip(straight[1:-1], treading, strict=True)):
        return straight
    return [begin, *((low + high) / 2 for low, high in treading), end]


def _whole(way: float, wide: float) -> float:
    """As many whole stitches, so that a slope begins between two."""
    return max(round(way / wide), 1) * wide
