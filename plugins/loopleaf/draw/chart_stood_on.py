"""The edge of another piece that one begins on: a line in its chart, and in words what it is."""

from itertools import pairwise

from .border import bordered
from .canvas import Point
from .chart_ground import Straight, is_closed
from .chart_lines import Layout
from .pen import Pen
from .signing import down
from .signs import UNIT
from .subject import Subject

STEPS = 48
"""A bent edge is drawn through so many points."""


def draw_stood_on(pen: Pen, subject: Subject, layout: Layout) -> None:
    """The edge that a piece begins on, lighter; of a border the whole way that it goes."""
    pen.round, pen.faint = "", True
    if bordered(subject) is not None:
        for start, end in layout.outline:
            pen.line(down(start), down(end))
    elif layout.begin.ring:
        pen.ring((0.0, 0.0), layout.begin.ring)
    else:
        for start, end in pairwise(_edge(layout)):
            pen.line(down(start), down(end))
    pen.faint = False


def _edge(layout: Layout) -> list[Point]:
    """Beneath the first row from end to end, or all around beneath a first round; none without stitches."""
    line = layout.lines[0]
    if is_closed(line.ground):
        return [line.ground.at(line.low, at / STEPS) for at in range(STEPS + 1)]
    if not line.xs:
        return []
    low, high = min(line.xs) - UNIT / 2, max(line.xs) + UNIT / 2
    steps = 1 if isinstance(line.ground, Straight) else STEPS
    return [line.point(low + (high - low) * at / steps, line.low) for at in range(steps + 1)]


def stood_on(subject: Subject) -> str:
    """`The lighter line is round 8 of the leg. Row 1 goes into its stitches 1 to 16.` "" for a piece that
    begins on no other, and for a border, which goes around all of it.
    """
    pieces = subject.work.pattern.pieces
    start = pieces[subject.piece.name].start
    if start is None or start.edge is None or bordered(subject) is not None:
        return ""
    base = pieces.get(start.edge)
    name = ((base.title if base is not None else "") or start.edge).lower()
    number = start.round or start.row
    edge = (
        f"{'round' if start.round else 'row'} {number} of the {name}" if number else f"the edge of the {name}"
    )
    first = f"{'Row' if subject.in_rows else 'Round'} {subject.piece.rounds[0].plan.label}"
    if start.row_ends:
        into = "the ends of its rows"
    elif start.stitches == "unworked":
        into = "the stitches left there"
    elif start.stitches:
        runs = ", ".join(str(run).replace("-", " to ") for run in start.stitches)
        into = f"its {'stitch' if runs.isdigit() else 'stitches'} {runs}"
    else:
        into = "it"
    return f"The lighter line is {edge}. {first} goes into {into}."
