"""A piece in rows that goes on down its own side, or all around: its rows one above the other, and those."""

from collections.abc import Sequence
from dataclasses import replace

from ..fabric import Made
from ..fabric.laid_out import around_sides
from ..fabric.worked import Place
from .row_ends import first_aside, row_ends
from .sheet import Edging, Sheet
from .subject import Subject


def parted(subject: Subject) -> tuple[Subject, Subject | None]:
    """The rows of a piece, and those along its side, into row ends only, or around all of it (they have a
    `whole` to go around); None where there are none.
    """
    at = first_aside(subject.worked)
    if not at:
        return subject, None
    stitches = [made for made in subject.worked[at].made if isinstance(made, Made) and made.number]
    if not all([*row_ends(made)] for made in stitches if made.into):
        whole = around_sides(_gone_into(stitches))
        if whole is None:
            return subject, None
        around = _some(subject, at, len(subject.worked), [whole.places])
        return _some(subject, 0, at, subject.piece.starts), replace(around, whole=whole)
    ends: dict[int, Place] = {id(end): end for made in stitches for end in row_ends(made)}
    return (
        _some(subject, 0, at, subject.piece.starts),
        _some(subject, at, len(subject.worked), [list(ends.values())]),
    )


def side_edge(sheet: Sheet, subject: Subject, aside: Subject) -> Edging:
    """The side of a piece's rows where the last of them ended, as the right side shows it; both sides of rows
    around a middle, where what is worked aside goes into more ends than there are rows.
    """
    if sheet.arc and not sheet.below and len(aside.piece.starts[0]) > len(subject.worked):
        wide, out = subject.sizes[-1].length_mm, sum(row.rise_mm for row in subject.sizes)
        return Edging(sheet.point(wide, 1.0, out), sheet.point(wide, 0.0, out))
    rows, last = subject.sizes, subject.piece.rounds[-1]
    along = 0.0 if last.side != "WS" else 1.0
    low = sheet.point(rows[0].length_mm, along, 0.0)
    high = sheet.point(rows[-1].length_mm, along, sum(row.rise_mm for row in rows))
    return Edging(high, low) if along else Edging(low, high)


def _gone_into(stitches: Sequence[Made]) -> list[Place]:
    """What they go into, each place once, from the first."""
    return [*{id(place): place for made in stitches for place in made.into}.values()]


def _some(subject: Subject, first: int, end: int, starts: list[list[Place]]) -> Subject:
    """Rows of a piece as if it had no others. starts: what they are worked into."""
    piece = replace(subject.piece, starts=starts, rounds=subject.piece.rounds[first:end])
    return replace(subject, piece=piece, worked=subject.worked[first:end], sizes=subject.sizes[first:end])
