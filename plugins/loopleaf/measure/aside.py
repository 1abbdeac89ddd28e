"""Rows of a piece that go along its own sides: a border over the ends of its rows, or all the way around it.

They make the piece wider where they stand at a side, and longer where they stand at its top or below its
foundation; stitches at a side make nothing longer.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from ..fabric import Made, PieceWork, WorkedRound
from ..fabric.around import ways
from ..fabric.worked import Place

_MOST = 0.5
"""A row goes along an edge where it takes so much of what lies there; less is a corner (chosen here)."""

_Edge = str
"""`top`, `foot`, `left`, `right`: of the piece, as its first row's side shows it."""


@dataclass(frozen=True, slots=True)
class Aside:
    """Where a row stands along its own piece. sides: at how many of its two sides."""

    top: bool
    foot: bool
    sides: int


def asides(piece: PieceWork, worked: Sequence[WorkedRound | None], size: int) -> list[Aside | None]:
    """One for each row of one size, in their order; None for a row that only stands on the one before it."""
    found: list[Aside | None] = [None] * len(worked)
    first = _first_aside(worked)
    if first is None:
        return found
    near = {id(place) for place in (piece.starts[size] if size < len(piece.starts) else [])}
    rows = [one for one in worked[:first] if one is not None]
    long = {
        "top": len(_counted(rows[-1])),
        "foot": len(_counted(rows[0])),
        "left": len(rows),
        "right": len(rows),
    }
    which = _sides(piece, worked[:first])
    where: dict[int, _Edge] = {}
    for at, one in enumerate(worked[first:], first):
        if one is None:
            continue
        taken: dict[_Edge, set[int]] = {}
        for made in _counted(one):
            place = made.into[0] if made.into else None
            at_edge = _where(place, where, which, near)
            if place is not None and at_edge:
                where[id(made)] = at_edge
                taken.setdefault(at_edge, set()).add(_identity(place))
        along = {edge for edge, places in taken.items() if len(places) >= _MOST * long[edge]}
        found[at] = Aside("top" in along, "foot" in along, len(along & {"left", "right"}))
        for edge, many in Counter(where[id(made)] for made in _counted(one) if id(made) in where).items():
            long[edge] = many
    return found


def _first_aside(worked: Sequence[WorkedRound | None]) -> int | None:
    """The first row that goes into the ends of its own piece's rows, by its index."""
    own: set[int] = set()
    for at, one in enumerate(worked):
        if one is None:
            continue
        if any(id(end.into[0]) in own for made in _counted(one) for end in _row_ends(made)):
            return at
        own |= {id(made) for made in one.made}
    return None


def _sides(piece: PieceWork, rows: Sequence[WorkedRound | None]) -> dict[int, _Edge]:
    """At which side each row's first and last stitch lie."""
    found: dict[int, _Edge] = {}
    for one, against in zip(rows, ways(piece.rounds), strict=False):
        stitches = _counted(one) if one is not None else []
        if len(stitches) > 1:
            found[id(stitches[0])] = "right" if not against else "left"
            found[id(stitches[-1])] = "left" if not against else "right"
    return found


def _where(place: Place | None, where: dict[int, _Edge], which: dict[int, _Edge], near: set[int]) -> _Edge:
    """At which edge of the piece a stitch into that place stands, "" where that can't be told."""
    if not isinstance(place, Made):
        return "top" if place is not None else ""
    if place.role == "row-end":
        return which.get(id(place.into[0]), "")
    if place.role == "foundation":
        return "" if id(place) in near else "foot"
    return where.get(id(place), "top")


def _identity(place: Place) -> int:
    return id(place.into[0]) if isinstance(place, Made) and place.role == "row-end" else id(place)


def _row_ends(made: Made) -> list[Made]:
    return [place for place in made.into if isinstance(place, Made) and place.role == "row-end"]


def _counted(worked: WorkedRound) -> list[Made]:
    return [made for made in worked.made if isinstance(made, Made) and made.number]
