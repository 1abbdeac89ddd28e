"""Which ground suits a piece's form: the rounds of a polygon, rows in an arc, a band in bends."""

from itertools import pairwise
from math import pi, sqrt

from ..fabric import Made
from .border import bordered, rectangle_of
from .chart_corners import corner_count
from .chart_ground import Bends, Fan, Ground, Sector, Straight
from .chart_mitred import mitred
from .chart_sector import filled
from .chart_things import begun_in, things_of
from .from_middle import sheet_of
from .row_ends import first_aside
from .section import Half, Oval, Polygon
from .sheet import NARROWEST_ARC
from .signs import UNIT, height_of
from .stand import chains_of
from .subject import Subject

SEAM_BELOW = -pi / 2
"""Rounds whose numbers have no room side by side begin at the bottom: there they stand one above another."""

LONG_BAND, BAND = 70, 15
"""A band of more stitches than this, so many times as long as it is high, is laid in bends."""

BENT, INSET = 3.0, 0.8
"""A bend's radius is so many times the band's height. Where the band's top lies inside, a stitch's width is
measured so much of its height further in: else stitches would stand in each other there.
"""


def ground_for(subject: Subject, sides: bool = True) -> Ground:
    """The ground that suits a piece's form. sides: a piece with corners has straight ones."""
    if subject.in_rows:
        sheet = sheet_of(subject)
        if sheet.sides:
            return Half(sheet.sides)
        return mitred(subject) or (_in_arc(subject, sheet.arc) if sheet.arc else _flat(subject))
    whole = bordered(subject)
    if whole is not None:
        return rectangle_of(whole, UNIT)
    corners = corner_count(subject)
    if corners and sides:
        return Polygon(corners)
    spine = max(len(chains_of(subject)) - 1, 0) * UNIT
    return Oval(spine, SEAM_BELOW if not spine and _has_close_numbers(subject) else 0.0)


def _has_close_numbers(subject: Subject) -> bool:
    """Whether numbers of two digits side by side have no room at the starts of neighbouring rounds."""
    long = [
        len(work.plan.label) > 1
        and all(not isinstance(made, Made) or height_of(made.kind) <= UNIT for made in one.made)
        for work, one in zip(subject.piece.rounds, subject.worked, strict=True)
    ]
    return any(one and other for one, other in pairwise(long))


def _in_arc(subject: Subject, arc: float) -> Ground:
    """Rows in an arc; about the one place that they begin in, no wider than they fill."""
    if begun_in(subject.worked[0]) is None:
        return Fan(arc)
    body = subject.worked[: first_aside(subject.worked)]
    turn = filled([things_of(one, False) for one in body], arc)
    if turn < NARROWEST_ARC:
        return _flat(subject)
    return Sector(turn) if turn < arc else Fan(arc)


def _flat(subject: Subject) -> Ground:
    """Straight rows; a long band in bends. Leaves and points stand out from it, and make it no longer."""
    long = max(len(things_of(one, False)) for one in subject.worked) * UNIT
    high = sum(
        max((height_of(made.kind) for made in one.made if isinstance(made, Made)), default=UNIT)
        for one in subject.worked
    )
    if long < LONG_BAND * UNIT or long < BAND * high:
        return Straight()
    radius = max(high + 3 * UNIT, BENT * high)
    lanes = max(round(sqrt(long / (5 * radius))), 2)
    return Bends(long / lanes, radius, INSET * high)
