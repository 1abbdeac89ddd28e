"""A flap: rows worked back and forth on a part of a round, as a heel is, before the work goes around."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..pattern import Start
from .around import row_end, ways
from .worked import Made, PieceWork, Place


@dataclass(frozen=True, slots=True)
class Flap:
    """begun: the index of the flap's first row. left: what that row left of the round below, in its order."""

    begun: int
    left: list[Place]


def around_flap(
    start: Start, size: int, others: Mapping[str, PieceWork], edges: Mapping[str, Sequence[Place]]
) -> list[list[Place]]:
    """What a piece begun on a flap may go around: the flap's last row, its side, what it left of the edge
    that it was itself begun on, its other side; either way round. None where it left nothing, or its start
    says more than the piece's name."""
    other = others.get(start.edge or "")
    said = start.row_ends or start.around or start.laid_out or start.stitches or start.round or start.row
    if other is None or said or not other.rounds or other.rounds[0].plan.word != "row":
        return []
    rest = _rest(other, size)
    top = list(edges.get(start.edge or "", ()))
    if not rest or not top:
        return []
    gone = ways(other.rounds)
    found: list[list[Place]] = []
    for goes in (gone[-1], not gone[-1]):
        sides = [
            [row_end(row, at, size, first=(gone[at] != goes) == near) for at, row in enumerate(other.rounds)]
            for near in (True, False)
        ]
        down, up = ([end for end in side if end is not None] for side in sides)
        way = 1 if goes == gone[-1] else -1
        found.append([*top[::way], *down[::-1], *(rest[::-1] if goes else rest), *up])
    return found


def _rest(other: PieceWork, size: int) -> list[Place]:
    """What a piece's first row left of the edge of another piece, from where that row ended on around."""
    places = other.starts[size] if size < len(other.starts) else []
    first = other.rounds[0].sizes[size]
    if first is None or any(not isinstance(one, Made) or one.role == "foundation" for one in places):
        return []
    used = {id(below) for made in first.made if isinstance(made, Made) for below in made.into}
    there = [at for at, place in enumerate(places) if id(place) in used]
    if not there:
        return []
    behind = places[there[-1] + 1 :] + places[: there[0]]
    return [place for place in behind if id(place) not in used]
