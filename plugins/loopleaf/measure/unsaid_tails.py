"""Tails that a seam needs and that nobody states: of pieces that are sewn on and fastened off without a word.

The edge is that of the last round or row, where the yarn is cut; of a piece in rows that may be sewn on all
around, its outline is told as well (`tails`). A tail sews it at 2 to 3 times its length, and is never shorter
than an end that can be woven in (common practice, from memory).
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..fabric.worked import PieceWork
from ..notation.tree import FastenOff
from ..pattern import Pattern, Sew
from .size import RoundSize
from .tails import END_MM, edges_mm, sewing_tail
from .told_tails import OTHER_YARN
from .units import Band

_TAIL = re.compile(
    r"\b(?:leav\w*|left|long|sewing)\b[^.;]*\b(?:tail|end|length)s?\b"
    r"|\b(?:tail|end|length)s?\b[^.;]*\b(?:to|for) (?:sew|stitch)",
    re.IGNORECASE,
)
"""Words that speak of a tail; that of a seal isn't left."""

_STRAP = re.compile(r"\b(?:strap|handle|tie|hanger)s?\b", re.IGNORECASE)
"""What is sewn on by its ends, unless a word tells how."""


@dataclass(frozen=True, slots=True)
class UnsaidTail:
    """What is usual to leave for a piece's edge, in one size.

    outline_mm: all its sides, where it may be sewn on by those too; None where there is no choice.
    """

    piece: str
    edge_mm: float
    outline_mm: float | None = None

    @property
    def usual(self) -> Band:
        """In mm."""
        seam = sewing_tail(self.edge_mm)
        return Band(max(seam.low, END_MM.high), max(seam.high, END_MM.high))

    @property
    def usual_around(self) -> Band | None:
        """In mm, for sewing the piece on all around."""
        if self.outline_mm is None:
            return None
        seam = sewing_tail(self.outline_mm)
        return Band(max(seam.low, END_MM.high), max(seam.high, END_MM.high))

    @property
    def short(self) -> bool:
        """Whether the edge asks for less than an end to weave in."""
        return sewing_tail(self.edge_mm).high <= END_MM.high


def unsaid_tail(pattern: Pattern, piece: PieceWork, rounds: Sequence[RoundSize | None]) -> UnsaidTail | None:
    """The tail that nobody states. rounds: the piece's, in one size.

    None where the piece isn't sewn on, is a strap of which nobody says how, isn't fastened off plainly, has
    no measure, or where the author says anything of a tail or of other yarn to sew with.
    """
    seams = [step.sew for step in pattern.finishing if step.sew is not None and step.sew.piece == piece.name]
    seams = [sew for sew in seams if sew.to not in ("", piece.name)]
    if not seams or pattern.pieces[piece.name].tail is not None or not _cut(piece):
        return None
    if any(map(_TAIL.search, _texts(pattern, piece.name, seams))):
        return None
    if any(OTHER_YARN.search(sew.text) for sew in seams):
        return None
    if not any(sew.text for sew in seams) and _STRAP.search(
        f"{piece.name} {pattern.pieces[piece.name].title}"
    ):
        return None
    edges = edges_mm(pattern, piece.name, rounds)
    if edges is None:
        return None
    least, most = edges
    return UnsaidTail(piece.name, least, most if most > least else None)


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
