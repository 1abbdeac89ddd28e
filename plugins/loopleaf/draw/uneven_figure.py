"""The schematic of rows that don't all go from edge to edge: outline, widths, the height of either edge."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from ..measure import Measured
from ..measure.size import enclosed
from .arc_figure import arc
from .canvas import Point
from .form import about
from .laid_row import LaidRow
from .lettered import Lettered
from .measuring import DRAWN, GAP, measured_across, measured_over, measured_up
from .sheet import Sheet
from .sketch import Sketch
from .subject import Subject, of_each_size
from .turned_rows import edges_of, turned
from .uneven_outline import uneven_outline
from .uneven_rows import laid_unevenly

LEVEL = 0.1
"""An edge that rises by less than this for its length is level; of two edges, the longer has so much more."""

STRAIGHT = 0.1
"""A sloping edge keeps so near to a straight line, of what it rises by."""

THINNEST = 5.0
"""The shorter side is drawn at least so wide, in units."""


class Told(NamedTuple):
    """What the measures say of a piece: of its first row and its last row, from the one to the other; whether
    a row is called wide or long, and whether the two rows are alike.
    """

    first: str
    last: str
    length: str
    wide: str
    alike: bool


def evenly_not(subject: Subject) -> Sequence[LaidRow] | None:
    """The rows where each was worked, if they make an outline of their own; None for any other piece."""
    laid = laid_unevenly(subject) if len(subject.sizes) == len(subject.worked) else None
    return laid if laid is not None and all(row.corners for row in laid) else None


def uneven(
    sketch: Sketch,
    letters: Lettered,
    subject: Subject,
    measured: Measured,
    laid: Sequence[LaidRow],
    told: Told,
) -> list[str]:
    """Draws it and says what it measures."""
    lower = _edges(subject, measured)
    turn = turned(laid, subject)
    if turn is not None and turn.arc:
        ring = Sheet(turn.arc, turn.inner / turn.arc)
        edges = (about(lower), told.length)
        return arc(sketch, letters, ring, turn.right - turn.left, edges, told.first)
    if turn is not None:
        laid = [turn.row(row) for row in laid]
    outline = uneven_outline(laid)
    tall = max(y for _, y in outline.points)
    long, widest = subject.sizes[-1].height_mm, max(one.length_mm for one in subject.sizes)
    # A break would cut through what stands at one side, or hang over a gap.
    scale = DRAWN / max(widest, long)
    x_scale, y_scale = max(scale, THINNEST / widest), max(scale, THINNEST / long) * long / tall
    left = min(x for x, _ in outline.points)
    middle = (left + max(x for x, _ in outline.points)) / 2

    def at(x: float, y: float) -> Point:
        return (x - middle) * x_scale, -y * y_scale

    sketch.line([at(x, y) for x, y in outline.points], closed=True)
    half, high = -at(left, 0.0)[0], tall * y_scale
    below = [at(x, 0.0)[0] for x in outline.first]
    words = letters.short(told.first, told.wide if told.alike else f"{told.wide} at the first row")
    measured_across(sketch, below[0], below[1], GAP, words, 0.0)
    facts = [f"{told.first} {told.wide}"]
    start, end = at(*outline.top[0]), at(*outline.top[1])
    over = [point for corner in laid[-1].corners for point in corner.tops]
    rise = max(y for _, y in over) - min(y for _, y in over)
    straight = all(abs(_above(point, *outline.top)) < STRAIGHT * (rise or tall) for point in over)
    if straight and rise > LEVEL * (over[-1][0] - over[0][0]):
        measured_over(sketch, start, end, letters.short(told.last, f"{told.wide} along the last row"))
        facts = [f"{told.first} {told.wide} at the first row", f"{told.last} along the last, which slopes"]
    elif not told.alike or not straight:
        words = letters.short(told.last, f"{told.wide} at the last row")
        measured_across(sketch, start[0], end[0], -high - GAP, words, start[1] if straight else -high)
        facts = [f"{told.first} {told.wide} at the first row", f"{told.last} at the last"]
    left_edge, right_edge = (tuple(-y * y_scale for y in edge) for edge in edges_of(laid))
    low_left, low_right = (start - end for start, end in (left_edge, right_edge))
    right = laid[0].slanting or low_right > low_left * (1 - LEVEL)
    beside = half if right else -half
    words = letters.short(told.length, "from first row to last")
    measured_up(sketch, beside + (GAP if right else -GAP), 0.0, -high, words, beside)
    facts.append(f"{told.length} from first row to last")
    start_y, end_y = left_edge if right else right_edge
    if 0 < start_y - end_y < high * (1 - LEVEL) and not laid[0].slanting:
        low = about(lower)
        words = letters.short(low, "high at the lower edge")
        measured_up(sketch, -beside - (GAP if right else -GAP), start_y, end_y, words, -beside)
        facts.append(f"{low} at the lower edge")
    return facts


def _above(point: Point, start: Point, end: Point) -> float:
    """How far a point lies above a line that isn't upright."""
    (x, y), (x0, y0), (x1, y1) = point, start, end
    return y - y0 - (y1 - y0) * (x - x0) / ((x1 - x0) or 1.0)


def _edges(subject: Subject, measured: Measured) -> list[float | None]:
    """How high the lower edge is in each size, in mm; None where the size has other rows."""
    found: list[float | None] = []
    for one in of_each_size(subject, measured):
        laid = evenly_not(replace(one, sizes=enclosed(one.sizes))) if one is not None else None
        found.append(min(top - foot for foot, top in edges_of(laid)) if laid else None)
    return found
