"""The edge of a blanket: pieces laid out in rows and joined, all the way around the whole."""

from collections.abc import Iterator, Sequence
from copy import copy
from dataclasses import dataclass
from itertools import accumulate, chain, groupby, pairwise

from ..pattern import LayOut, Pattern
from .around import around_rows, corners, is_row_end
from .edge import Edge
from .worked import PieceWork, Place

SIDES = 4


@dataclass(frozen=True, slots=True)
class Whole:
    """places: all the way around, from one corner. at: where its four corners stand among them."""

    places: list[Place]
    at: tuple[int, ...]

    @property
    def corners(self) -> frozenset[int]:
        """The four corners, by identity."""
        return frozenset(id(self.places[at]) for at in self.at)

    @property
    def sides(self) -> list[int]:
        """How many places there are from each corner to the next."""
        return [after - at for at, after in pairwise((*self.at, len(self.places)))]

    def from_next_corner(self) -> list[Place]:
        """The same way around, begun one side later: `any corner` leaves open where a line begins."""
        return self.places[self.at[1] :] + self.places[: self.at[1]]


def around_laid_out(other: PieceWork, places: Sequence[Place], size: int, lay: LayOut) -> Whole | None:
    """The way around pieces laid out and joined; None where one of them hasn't just four corners.

    It goes the way that the piece's last round does, and begins along the pieces that lie side by side, with
    the first side of their last round, or with their last row. Where two pieces meet, the corner places of
    both lie beside the seam. places: the edge of one piece; they stand here once for each of the pieces.
    """
    in_rows = bool(other.rounds) and other.rounds[0].plan.word == "row"
    sides = _of_rows(around_rows(other, list(places), size)) if in_rows else _of_rounds(list(places))
    if len(sides) != SIDES:
        return None
    along: list[list[Place]] = []
    for at, side in enumerate(sides):
        pieces = lay.down if at % 2 else lay.across
        along.append([copy(place) for place in side * pieces])
    if not in_rows:  # where two sides meet, the last corner of one is the first of the next
        along = [side[:-1] for side in along]
    begins = [0, *accumulate(len(side) for side in along)]
    ends = (0, begins[1] - 1, begins[2], begins[3] - 1) if in_rows else tuple(begins[:SIDES])
    return Whole([*chain.from_iterable(along)], ends)


def whole_of(pattern: Pattern, pieces: Sequence[PieceWork], name: str) -> Whole | None:
    """The way around that a border goes, in the first size; None for any other piece. pieces: all worked."""
    start = pattern.pieces[name].start
    if start is not None and start.around:
        own = next((piece.starts[0] for piece in pieces if piece.name == name and piece.starts), [])
        return around_sides(own)
    other = next((piece for piece in pieces if start is not None and piece.name == start.edge), None)
    lay = laid_out_steps(pattern).get(other.name) if other is not None else None
    if start is None or not start.laid_out or other is None or lay is None:
        return None
    worked = [round.sizes[0] for round in other.rounds if round.sizes[0] is not None]
    return around_laid_out(other, worked[-1].edge, 0, lay) if worked else None


def around_sides(places: list[Place]) -> Whole | None:
    """The way around a piece in rows whose places are these; None where they aren't its four sides.

    Along its last row or its beginning, the ends of its rows, its other end, and their other ends.
    """
    runs = [[*run] for _, run in groupby(places, is_row_end)]
    if len(runs) != SIDES or is_row_end(runs[0][0]):
        return None
    return Whole(places, tuple(accumulate(map(len, runs[:-1]), initial=0)))


def laid_out_steps(pattern: Pattern) -> dict[str, LayOut]:
    """How the finishing lays pieces out, by their names; the first step that names one holds."""
    steps = [step.lay_out for step in pattern.finishing if step.lay_out is not None]
    return {step.piece: step for step in reversed(steps)}


def _of_rounds(places: list[Place]) -> list[list[Place]]:
    """The sides of a piece in rounds, each from one corner to the next, both among them."""
    marked = Edge(places).corners()
    at = [number for number, place in enumerate(places) if id(place) in marked]
    return [[*_between(places, begin, end)] for begin, end in zip(at, (*at[1:], *at[:1]), strict=True)]


def _of_rows(places: list[Place]) -> list[list[Place]]:
    """The sides of a piece in rows: its last row, the ends of its rows, its beginning, their other ends."""
    marked = corners(places)
    at = [number for number, place in enumerate(places) if id(place) in marked]
    if len(at) != SIDES:
        return []
    _, top, bottom, last = at
    return [places[: top + 1], places[top + 1 : bottom], places[bottom : last + 1], places[last + 1 :]]


def _between(places: Sequence[Place], begin: int, end: int) -> Iterator[Place]:
    """The places of a circle from one to another."""
    stop = end if end > begin else end + len(places)
    for at in range(begin, stop + 1):
        yield places[at % len(places)]
