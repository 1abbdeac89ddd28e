"""Short rows in a chart: their numbers stand clear of the lines that a later row draws down beside them."""

from .canvas import Point
from .chart_lines import Layout, Line

NUMBER_REACH = 45.0
"""A row's number and arrow lie within so much before it, in units."""


def clear_of_lines(layout: Layout) -> None:
    """Moves the numbers of rows out past stitches that go down beside them to earlier rows."""
    for at, line in enumerate(layout.lines):
        ways = [way for later in layout.lines[at + 1 :] for way in _deep(later)]
        reach = _reach(line, ways)
        line.beyond, line.beside_lines = max(line.beyond, reach), reach > 0


def _deep(line: Line) -> list[tuple[Point, Point]]:
    """Foot and head of each stitch that goes further down than the row below."""
    return [(line.feet[key][0], line.heads[key]) for key in line.deep if key in line.feet]


def _reach(line: Line, ways: list[tuple[Point, Point]]) -> float:
    """How far those before a row's start reach, if the first of them lies where its number would stand."""
    x, y = line.before(0.0, 0.5)
    side = 1 if line.backward else -1
    beside = [(head[0] - x) * side for foot, head in ways if foot[1] < y < head[1]]
    before = [away for away in beside if away > 0]
    return max(before) if before and min(before) < NUMBER_REACH else 0.0
