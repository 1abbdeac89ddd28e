"""Short rows and parts in a chart: their numbers stand clear of the lines that a later row draws down beside
them, and of the part beside them.
"""

from collections.abc import Sequence
from itertools import pairwise

from .canvas import Point
from .chart_lines import Layout, Line
from .chart_things import DIGIT_ROOM
from .subject import Subject

NUMBER_REACH = 45.0
"""A row's number and arrow lie within so much before it, in units."""

FOR_AN_ARROW = 7.0
"""Between two lines that are so far apart an arrow has room."""

IN_A_GAP = 39.0
"""From the first head of a row to the last of the part beside it a number of one digit needs so much room."""


def too_narrow(layout: Layout, subject: Subject) -> float:
    """How much wider the narrowest of the gaps between parts must be for the row numbers that stand in them;
    0 where they have room, or there are none.
    """
    shares = [
        (IN_A_GAP + DIGIT_ROOM * (len(work.plan.label) - 1)) / gap
        for line, work in zip(layout.lines, subject.piece.rounds, strict=True)
        if line.things and (gap := _gap(line, layout.lines))
    ]
    most = max(shares, default=0.0)
    return most if most > 1 else 0.0


def _gap(line: Line, lines: Sequence[Line]) -> float:
    """From a row's first head to what stands beside it, before it; 0 where nothing does within reach."""
    first, side = -1 if line.backward else 0, 1 if line.backward else -1
    start, middle = line.xs[first], (line.low + line.high) / 2
    gaps = [
        (x - start) * side
        for other in lines
        if other is not line and other.low < middle < other.high
        for x in other.xs
        if (x - start) * side > 0
    ]
    return min(gaps) if gaps and min(gaps) < NUMBER_REACH else 0.0


def clear_of_lines(layout: Layout) -> None:
    """Moves the numbers of rows out past stitches that go down beside them to earlier rows. Their arrows stay
    where the row begins, in the first gap between two such stitches.
    """
    for at, line in enumerate(layout.lines):
        ways = [way for later in layout.lines[at + 1 :] for way in _deep(later)]
        before = _before(line, ways)
        line.beside_lines = bool(before)
        line.beyond = max([line.beyond, *before])
        line.arrow = next(((a + b) / 2 for a, b in pairwise(before) if b - a > FOR_AN_ARROW), 0.0)


def _deep(line: Line) -> list[tuple[Point, Point]]:
    """Foot and head of each stitch that goes further down than the row below."""
    return [(line.feet[key][0], line.heads[key]) for key in line.deep if key in line.feet]


def _before(line: Line, ways: list[tuple[Point, Point]]) -> list[float]:
    """How far from a row's start those before it are, if the first is where its number would stand."""
    x, y = line.before(0.0, 0.5)
    side = 1 if line.backward else -1
    beside = [(head[0] - x) * side for foot, head in ways if foot[1] < y < head[1]]
    before = sorted(away for away in beside if away > 0)
    return before if before and before[0] < NUMBER_REACH else []
