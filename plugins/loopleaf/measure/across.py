"""How far across the work is, round by round.

Flat work is across twice its height along the fabric and the hole in its middle; work that bends is around ÷
π, as far as its cloth reaches (`reach`); a polygon is told from side to side (`polygon`). A square's side is
a quarter of the way around. What lies open as a tube has a diameter in the same way. Rows have a width
instead, an oval and a rectangle their length and their width (`finished`), so none has a figure here. Circle
and polygon are textbook geometry; a figure is as uncertain as the round's own length or height.
"""

from collections.abc import Sequence

from ..fabric.long_sides import rectangle_of
from ..fabric.worked import PieceWork
from .finished import oval_chain_mm, rounds_across
from .gauge import Scale, start_mm
from .polygon import across_a_height, across_a_side, corners_of
from .reach import reaches
from .size import RoundSize

_SQUARE = 4


def across_rounds(
    piece: PieceWork, size: int, rounds: Sequence[RoundSize | None], scale: Scale, flat: bool
) -> tuple[float | None, ...]:
    """In mm at each round of one size, None for one that the size lacks; all None for an oval or a rectangle.

    flat: whether the whole piece lies flat when it is done.
    """
    if oval_chain_mm(piece, size, scale) is not None:
        return (None,) * len(rounds)
    known = [one for one in rounds if one is not None]
    corners = corners_of(known)
    worked = [row for r in piece.rounds if (row := r.sizes[size]) is not None]
    if flat and corners == _SQUARE and rectangle_of(worked) is not None:
        return (None,) * len(rounds)
    reach = iter(reaches(known, start_mm(piece, size, scale), corners))
    found: list[float | None] = []
    done: list[RoundSize] = []
    for one in rounds:
        if one is None:
            found.append(None)
            continue
        done.append(one)
        reach_mm = next(reach)
        if flat and corners == _SQUARE:
            across_mm = one.length_mm * across_a_side(corners) / corners
        elif flat:
            across_mm = rounds_across(piece, size, done, scale, corners)
        else:
            across_mm = reach_mm * (across_a_height(corners) if corners else 2)
        found.append(across_mm)
    return tuple(found)
