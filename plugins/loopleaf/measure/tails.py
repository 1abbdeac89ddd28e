"""Tails left for sewing, and yarn for ends: from the edge that is to be sewn.

A sewing tail is 2 to 3 times the edge, an end to weave in 10 to 15 cm, a tail that draws up an opening once
the edge and 20 cm (common practice, from memory).
"""

from dataclasses import dataclass

from ..pattern import Around, Pattern
from .cords import length_of
from .size import RoundSize
from .units import Band

SEWING_TIMES = Band(2, 3)
END_MM = Band(100, 150)
DRAWING_UP_MM = 200.0


@dataclass(frozen=True, slots=True)
class Tail:
    """A tail of one size, as the author gives it.

    edge_mm: the edge that it sews, None where that isn't known.
    """

    piece: str
    length_mm: float
    edge_mm: float | None

    @property
    def usual(self) -> Band | None:
        """The usual length in mm for sewing that edge."""
        return None if self.edge_mm is None else sewing_tail(self.edge_mm)


def sewing_tail(edge_mm: float) -> Band:
    """The usual length in mm of a tail that sews so long an edge."""
    return SEWING_TIMES * edge_mm


def drawing_up_tail(edge_mm: float) -> float:
    """The usual length in mm of a tail that draws an opening closed."""
    return edge_mm + DRAWING_UP_MM


def tail_of(
    pattern: Pattern, piece: str, sizes: dict[str, tuple[RoundSize | None, ...]], size: int
) -> Tail | None:
    """The tail of a piece; None where it has none or the round that it is measured by isn't known."""
    tail = pattern.pieces[piece].tail
    if tail is None:
        return None
    own = [one for one in sizes.get(piece, ()) if one is not None]
    edge_mm = own[-1].length_mm if own else None
    if isinstance(tail, Around):
        found = length_of(tail, piece, sizes)
        return None if found is None else Tail(piece, found[0], found[1])
    stated = tail.of(size)
    return None if stated is None else Tail(piece, stated.mm, edge_mm)
