"""What begins on a flat piece's stitches, in that piece's schematic: lighter outlines where they stand."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from ..measure import Measured
from .canvas import Point
from .laid_row import LaidRow
from .parts_on_rows import with_parts
from .subject import Subject
from .uneven_rows import laid_unevenly


class PartOutline(NamedTuple):
    """title: of the piece. points: around it, in mm, y up, from the middle of the first row that it all
    stands on.
    """

    title: str
    points: Sequence[Point]


def part_outlines(subject: Subject, measured: Measured) -> list[PartOutline]:
    """The pieces in rows that stand on a piece's free stitches, and on those."""
    names: list[str] = []
    cloth = with_parts(subject, subject, measured, names)
    laid = laid_unevenly(cloth) if cloth.parts and len(subject.sizes) == len(subject.worked) else None
    if laid is None or not all(row.corners for row in laid):
        return []
    pieces = subject.work.pattern.pieces
    ends = [*cloth.parts, len(laid)]
    return [
        PartOutline(pieces[name].title or name, [*_around(laid[start:end])])
        for name, (start, end) in zip(names, pairwise(ends), strict=True)
    ]


def _around(rows: Sequence[LaidRow]) -> Iterator[Point]:
    """From the right end of the lowest row up, over the uppermost, and down at the left: steps from row to
    row as slopes.
    """
    first, last = rows[0].corners, rows[-1].corners
    yield first[-1].feet[1]
    for row in rows:
        yield _halfway(row.corners[-1].feet[1], row.corners[-1].tops[1])
    yield last[-1].tops[1]
    yield last[0].tops[0]
    for row in reversed(rows):
        yield _halfway(row.corners[0].feet[0], row.corners[0].tops[0])
    yield first[0].feet[0]


def _halfway(low: Point, high: Point) -> Point:
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
