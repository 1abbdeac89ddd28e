"""Tails that a seam needs and that nobody states: of pieces that are sewn on and fastened off without a word.

The edge is that of the last round or row, where the yarn is cut; a tail sews it at 2 to 3 times its length,
and is never shorter than an end that can be woven in (common practice, from memory).
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..fabric.worked import PieceWork
from ..notation.tree import FastenOff
from ..pattern import Pattern, Sew
from .size import RoundSize
from .tails import END_MM, sewing_tail
from .units import Band

_TAIL = re.compile(
    r"\b(?:leav\w*|left|long|sewing)\b[^.;]*\b(?:tail|end|length)s?\b"
    r"|\b(?:tail|end|length)s?\b[^.;]*\b(?:to|for) (?:sew|stitch)",
    re.IGNORECASE,
)
"""Words that speak of a tail; that of a seal isn't left."""
_OTHER_YARN = re.compile(
    r"\bthreads?\b|\bstrands?\b|\b(?:new|separate|another|fresh) (?:yarn|length|piece)", re.IGNORECASE
)
"""What a seam is worked with where it isn't the tail."""


@dataclass(frozen=True, slots=True)
class UnsaidTail:
    """What is usual to leave for a piece's edge, in one size."""

    piece: str
    edge_mm: float

    @property
    def usual(self) -> Band:
        """In mm."""
        seam = sewing_tail(self.edge_mm)
        return Band(max(seam.low, END_MM.high), max(seam.high, END_MM.high))

    @property
    def short(self) -> bool:
        """Whether the edge asks for less than an end to weave in."""
        return sewing_tail(self.edge_mm).high <= END_MM.high


def unsaid_tail(pattern: Pattern, piece: PieceWork, rounds: Sequence[RoundSize | None]) -> UnsaidTail | None:
    """The tail that nobody states. rounds: the piece's, in one size.

    None where the piece isn't sewn on, isn't fastened off plainly, has no measure, or where the author says
    anything of a tail or of other yarn to sew with.
    """
    seams = [step.sew for step in pattern.finishing if step.sew is not None and step.sew.piece == piece.name]
    seams = [sew for sew in seams if sew.to not in ("", piece.name)]
    known = [one for one in rounds if one is not None]
    if not seams or not known or pattern.pieces[piece.name].tail is not None or not _cut(piece):
        return None
    if any(map(_TAIL.search, _texts(pattern, piece.name, seams))):
        return None
    if any(_OTHER_YARN.search(sew.text) for sew in seams):
        return None
    return UnsaidTail(piece.name, known[-1].length_mm)


def _cut(piece: PieceWork) -> bool:
    """Whether the last round ends with a bare `fasten off`: no tail, no hole closed, no end woven in."""
    line = piece.rounds[-1].line if piece.rounds else None
    off = [step for step in line.steps if isinstance(step, FastenOff)] if line is not None else []
    return bool(off) and not any(step.tail or step.ends or step.closing for step in off)


def _texts(pattern: Pattern, name: str, seams: Sequence[Sew]) -> Iterator[str]:
    """Where an author speaks of this piece's tail, or of every piece's."""
    yield from pattern.notes
    for entry in pattern.pieces[name].entries:
        yield from filter(None, (entry.note, entry.text))
    for step in pattern.finishing:
        if step.sew in seams:
            yield step.note
    yield from (sew.text for sew in seams)
