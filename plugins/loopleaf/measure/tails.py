"""Tails left for sewing, and yarn for ends: from the edge that is to be sewn.

In rounds that is the last round. A piece in rows may be sewn on by its last row, or by all its sides: two
rows and its height twice (textbook geometry). A sewing tail is 2 to 3 times the edge, an end to weave in 10
to 15 cm, a tail that draws up an opening once the edge and 20 cm (common practice, from memory).
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from ..fabric.worked import PieceWork
from ..pattern import Around, Pattern
from .cords import length_of
from .size import RoundSize
from .told_tails import ToldTail, told_tail
from .units import Band

SEWING_TIMES = Band(2, 3)
END_MM = Band(100, 150)
DRAWING_UP_MM = 200.0


_ALL_AROUND = re.compile(
    r"\ball (?:the way )?a?round\b"
    r"|\ba?round (?:the|its|all) (?:\w+ )?(?:edges?|sides?|outside|outline)\b"
    r"|\b(?:all|four)(?: of)?(?: the| its)? (?:sides|edges)\b",
    re.IGNORECASE,
)
"""Words of a seam that goes around a piece."""
_THREE_SIDES = re.compile(r"\bthree(?: of)?(?: the| its)? (?:sides|edges)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Tail:
    """A tail of one size, as the author gives it.

    edge_mm: the edge that it sews, None where that isn't known. off: the share by which the gauge lets that
    edge be off; 0 of a tail that is told by it, which changes with it. told: in words, not in its field.
    """

    piece: str
    length_mm: float
    edge_mm: float | None
    off: float = 0.0
    told: ToldTail | None = None

    @property
    def usual(self) -> Band | None:
        """The usual length in mm for sewing that edge."""
        return None if self.edge_mm is None else sewing_tail(self.edge_mm)

    @property
    def enough_mm(self) -> float | None:
        """What is enough for the edge as short as the gauge lets it be."""
        return None if self.edge_mm is None else sewing_tail(self.edge_mm * (1 - self.off)).low


def sewing_tail(edge_mm: float) -> Band:
    """The usual length in mm of a tail that sews so long an edge."""
    return SEWING_TIMES * edge_mm


def drawing_up_tail(edge_mm: float) -> float:
    """The usual length in mm of a tail that draws an opening closed."""
    return edge_mm + DRAWING_UP_MM


def tail_of(
    pattern: Pattern,
    piece: PieceWork,
    sizes: dict[str, tuple[RoundSize | None, ...]],
    size: int,
    off: float = 0.0,
) -> Tail | None:
    """The tail of a piece; None where it has none or the round that it is measured by isn't known.

    off: the share by which the piece's gauge may be off.
    """
    name = piece.name
    tail = pattern.pieces[name].tail
    edges = edges_mm(pattern, name, sizes.get(name, ()))
    edge_mm = edges[0] if edges else None
    if tail is None:
        told = told_tail(pattern, piece)
        return None if told is None else Tail(name, told.length_mm, edge_mm, off, told)
    if isinstance(tail, Around):
        if tail.around in ("self", name):
            edge_mm = edges[1] if edges and not (tail.round or tail.row) else None
            if edge_mm is not None:
                return Tail(name, tail.times * edge_mm, edge_mm)
        found = length_of(tail, name, sizes)
        if found is None:
            return None
        # Told by another piece, it still sews this one's own edge.
        return Tail(name, found[0], found[1]) if edge_mm is None else Tail(name, found[0], edge_mm, off)
    stated = tail.of(size)
    return None if stated is None else Tail(name, stated.mm, edge_mm, off)


def edges_mm(pattern: Pattern, piece: str, rounds: Sequence[RoundSize | None]) -> tuple[float, float] | None:
    """The least and the most edge in mm that a piece may be sewn on by; alike where there is no choice.

    rounds: the piece's, in one size. None where it has none.
    """
    known = [one for one in rounds if one is not None]
    if not known:
        return None
    last = known[-1].length_mm
    if "rounds" in pattern.pieces[piece].worked:
        return last, last
    first = last if known[-1].blocks else known[0].length_mm  # corner to corner, all is as wide as it gets
    outline = first + last + 2 * max(one.height_mm for one in known)
    texts = [step.sew.text for step in pattern.finishing if step.sew is not None and step.sew.piece == piece]
    if any(map(_ALL_AROUND.search, texts)):
        return outline, outline
    if any(map(_THREE_SIDES.search, texts)):
        three = outline - max(first, last, *(one.height_mm for one in known))
        return three, three
    return last, outline
