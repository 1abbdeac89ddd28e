"""A piece in rows that goes on down its own side: its rows one above the other, and those along the side."""

from dataclasses import replace

from ..fabric import Made
from ..fabric.worked import Place
from .chart_sides import first_aside, row_ends
from .sheet import Edging, Sheet
from .subject import Subject


def parted(subject: Subject) -> tuple[Subject, Subject | None]:
    """The rows of a piece, and those along its side, into row ends only; None where there are none."""
    at = first_aside(subject.worked)
    if not at:
        return subject, None
    stitches = [made for made in subject.worked[at].made if isinstance(made, Made) and made.number]
    if not all([*row_ends(made)] for made in stitches if made.into):
        return subject, None
    ends: dict[int, Place] = {id(end): end for made in stitches for end in row_ends(made)}
    return (
        _some(subject, 0, at, subject.piece.starts),
        _some(subject, at, len(subject.worked), [list(ends.values())]),
    )


def side_edge(sheet: Sheet, subject: Subject) -> Edging:
    """The side of a piece's rows where the last of them ended, as the right side shows it."""
    rows, last = subject.sizes, subject.piece.rounds[-1]
    along = 0.0 if last.side != "WS" else 1.0
    low = sheet.point(rows[0].length_mm, along, 0.0)
    high = sheet.point(rows[-1].length_mm, along, sum(row.rise_mm for row in rows))
    return Edging(high, low) if along else Edging(low, high)


def _some(subject: Subject, first: int, end: int, starts: list[list[Place]]) -> Subject:
    """Rows of a piece as if it had no others. starts: what they are worked into."""
    piece = replace(subject.piece, starts=starts, rounds=subject.piece.rounds[first:end])
    return replace(subject, piece=piece, worked=subject.worked[first:end], sizes=subject.sizes[first:end])
