"""An edging worked along the ends of another piece's rows is as long as that edge.

Its own stitches would be longer or shorter by themselves; the edge eases them in or stretches them (common
practice, no source). Wider work soon goes its own way, and so does work on a part of the edge only.
"""

from collections.abc import Sequence
from dataclasses import replace

from .size import RoundSize
from .units import Band

NARROW = 0.25
"""An edging is at most so high for its length (chosen here, no source)."""
_GIVES = 1.5
"""How often the shorter of the two goes into the longer at the most (chosen here, no source)."""


def eased(rows: Sequence[RoundSize | None], edge: Band) -> tuple[RoundSize | None, ...]:
    """The rows as long as the edge makes them; as they were where it doesn't hold them.

    edge: how long it is, in mm. Rows that grow or shrink do so by the same share as before.
    """
    known = [one for one in rows if one is not None]
    if not known or not known[0].length_mm or known[-1].height_mm > NARROW * edge.middle:
        return tuple(rows)
    share = edge.middle / known[0].length_mm
    if not 1 / _GIVES <= share <= _GIVES:
        return tuple(rows)
    return tuple(None if one is None else _along(one, edge, known[0].length_mm) for one in rows)


def _along(one: RoundSize, edge: Band, first_mm: float) -> RoundSize:
    length = edge * (one.length_mm / first_mm)
    return replace(one, length=length, length_mm=length.middle, eased=True)
