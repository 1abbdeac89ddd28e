"""What goes on from stitches of a flat piece as pieces of their own, in the picture: the two fronts of a
waistcoat, a part on a part.
"""

from collections.abc import Iterator
from dataclasses import replace

from ..fabric import Made, Space
from ..fabric.worked import Place
from ..measure import Measured
from .nets import as_hung
from .subject import Subject, subject_of


def with_parts(
    subject: Subject, rows: Subject, measured: Measured, names: list[str] | None = None
) -> Subject:
    """The rows of a piece with those of the pieces in rows that begin on their free stitches, and on the free
    stitches of these, as one cloth; the rows alone where there are none.

    subject: the piece with all its rows, of which `rows` are the cloth. names: those of these pieces
    are added, in their order.
    """
    whole, used = rows, {id(place) for one in subject.worked for made in one.made for place in _into(made)}
    stitches = {id(made) for one in rows.worked for made in one.made if isinstance(made, Made)}
    bases = {subject.piece.name}
    for part in _in_rows_on_pieces(subject, measured):
        start = subject.work.pattern.pieces[part.piece.name].start
        places = {id(place) for made in part.worked[0].made for place in _into(made)}
        if start is None or start.edge not in bases or not places or not places <= stitches - used:
            continue
        bases.add(part.piece.name)
        if names is not None:
            names.append(part.piece.name)
        used |= {id(place) for one in part.worked for made in one.made for place in _into(made)}
        stitches |= {id(made) for one in part.worked for made in one.made if isinstance(made, Made)}
        piece = replace(whole.piece, rounds=[*whole.piece.rounds, *part.piece.rounds])
        whole = replace(
            whole,
            piece=piece,
            worked=[*whole.worked, *part.worked],
            sizes=[*whole.sizes, *as_hung(part).sizes],
            colours={**whole.colours, **part.colours},
            parts=[*whole.parts, len(whole.worked)],
        )
    return whole


def _in_rows_on_pieces(subject: Subject, measured: Measured) -> Iterator[Subject]:
    """The other pieces in rows that begin on stitches of a piece, in their order."""
    for piece in subject.work.pieces:
        start = subject.work.pattern.pieces[piece.name].start
        if piece.name == subject.piece.name or start is None or not start.edge or start.row_ends:
            continue
        part = subject_of(subject.work, piece, measured)
        if part is not None and part.in_rows:
            yield part


def _into(made: Made | Space) -> Iterator[Place]:
    """What a stitch went into."""
    if isinstance(made, Made):
        yield from made.into
