"""Rows that begin in one place and go around it: half a disc, a triangle with its spine, half of another
polygon; or a triangle that stands on its tip.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import dist, pi

from ..fabric import Made, Space
from ..fabric.shell_edging import edging_rows
from ..measure.fan import Fan
from .canvas import Point
from .chart_corners import PLAIN_EDGE, corners_of
from .chart_things import Thing, begun_in, place_key, things_of
from .foundation_edge import foot_mm
from .nets import as_hung
from .once import once
from .row_ends import first_aside
from .section import Half
from .sheet import NARROWEST_ARC, WIDEST_ARC, Sheet, sheet_for
from .subject import Subject

ALIKE = (0.6, 1.6)
"""Rows of such a share of the way around half a disc, or half a polygon, lie as that: they ease in."""

MOST_SIDES = 4

FEWEST_EDGED = 2
"""A last row without spines is an edging of what has more rows than this."""

OFF_THE_SPINE = 0.12
"""A spine stands no further from where the half polygon has it, of its row."""

ENDS = 2
"""The outermost places at an end of a row are so many."""

NOT_AT_ENDS, ONLY_AT_ENDS = 0.15, 0.75
"""A piece grows at its ends, too, from such a share of what its rows grow by, and only there from such."""


@dataclass(frozen=True, slots=True)
class Middle:
    """What such rows lie on. turn: so many radians about the place that they began in; 0 for straight rows
    above it. sides: straight ones, with a spine between two of them; 0 where rows are round.
    """

    turn: float
    sides: int = 0


@once
def middle_of(subject: Subject) -> Middle | None:
    """Where a piece in rows begins in one place, and grows from there; None for any other.

    A row's length for each length that it is away from there tells how far around it goes: pi is half a disc,
    and half a polygon of 2s sides has 2s·tan(pi ÷ 2s) (textbook geometry).
    """
    if not subject.in_rows or not subject.worked or begun_in(subject.worked[0]) is None:
        return None
    rows = _things(subject)
    sizes = subject.sizes[: len(rows)]
    around = sizes[-1].length_mm / (sizes[-1].height_mm or 1.0)
    if around < NARROWEST_ARC or any(b.length_mm < 0.97 * a.length_mm for a, b in pairwise(sizes)):
        return None
    ends = _at_ends(rows)
    if ends >= ONLY_AT_ENDS:
        return Middle(0.0)
    sides = _sides(subject, rows)
    grown = ends > NOT_AT_ENDS or len(rows) < 2
    if sides and grown and _about(around, Half(sides).way(1.0)):
        return Middle(pi, sides)
    return Middle(pi if _about(around, pi) else min(around, WIDEST_ARC))


def sheet_of(subject: Subject) -> Sheet:
    """What a piece's rows are laid on."""
    middle = middle_of(subject)
    if middle is not None:
        return Sheet(middle.turn, 0.0, sides=middle.sides, corners=_corners(subject.fan, middle.sides))
    sheet = sheet_for(as_hung(subject).sizes, foot_mm(subject))
    if sheet.arc and _at_ends(_things(subject)) >= ONLY_AT_ENDS:
        return replace(sheet, arc=0.0, below=0.0)
    return sheet


def _corners(fan: Fan | None, sides: int) -> list[Point]:
    """The corners of a row 1 away from the point that it fans out from; none where its measures tell others
    than its spines do.
    """
    if fan is None or fan.diagonal or len(fan.outline) != sides + 1 or not sides:
        return []
    (x0, y0), (x1, y1) = fan.outline[:2]
    away = abs(x0 * y1 - x1 * y0) / dist((x0, y0), (x1, y1))
    return [(x / away, y / away) for x, y in fan.outline]


def _about(around: float, whole: float) -> bool:
    return ALIKE[0] * whole <= around <= ALIKE[1] * whole


def _things(subject: Subject) -> list[list[Thing]]:
    """The stitches and spaces of each row, from left to right as the right side shows them; no row along its
    sides, and no edging of shells, which shapes nothing.
    """
    sides = [work.side != "WS" for work in subject.piece.rounds]
    rows = [things_of(one, back) for one, back in zip(subject.worked, sides, strict=True)]
    body = subject.worked[: first_aside(subject.worked)]
    return rows[: len(body) - edging_rows(body)]


def _sides(subject: Subject, rows: Sequence[Sequence[Thing]]) -> int:
    """How many sides the spines part rows into; 0 where they don't go on from row to row."""
    found: set[int] = set()
    for at, (one, things) in enumerate(zip(subject.worked, rows, strict=False)):
        corners = corners_of(one)
        spots = [
            (where + 0.5) / len(things)
            for where, thing in enumerate(things)
            # The middle of what is worked into a ring is a spine only if there are chains.
            if id(thing) in corners and (at or isinstance(thing, Space))
        ]
        many = len(spots) + 1
        even = all(abs(spot - (k + 1) / many) <= OFF_THE_SPINE for k, spot in enumerate(spots))
        if even and spots:
            found.add(many)
        elif at and at < len(rows) - PLAIN_EDGE * (len(rows) > FEWEST_EDGED):
            return 0
    return found.pop() if len(found) == 1 and max(found) <= MOST_SIDES else 0


def _at_ends(rows: Sequence[Sequence[Thing]]) -> float:
    """The share of all that rows grow by which is made in the outermost places of the row below."""
    grown, at_ends = 0, 0
    for below, row in pairwise(rows):
        if len(row) < len(below):  # as an open edge, which shapes nothing
            continue
        grown += len(row) - len(below)
        into = Counter(place_key(place) for thing in row if isinstance(thing, Made) for place in thing.into)
        outer = {place_key(thing) for thing in (*below[:ENDS], *below[-ENDS:])}
        free = sum(isinstance(thing, Made) and not thing.into for thing in row)  # a chain that counts
        at_ends += sum(into[key] for key in outer) + free - len(outer)
    return at_ends / grown if grown > 0 else 0.0
