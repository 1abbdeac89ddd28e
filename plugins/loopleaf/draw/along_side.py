"""A piece in rows that goes on down its own side, over its top and down, or all around: its rows one above
the other, and those.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import groupby, pairwise
from typing import Literal

from ..fabric import Made, Space
from ..fabric.around import is_row_end
from ..fabric.laid_out import around_sides
from ..fabric.worked import Place
from .row_ends import first_aside, row_ends
from .sheet import Cornered, Edging, Sheet
from .subject import Subject

_Edge = Literal["left", "top", "right", "foot"]

_AROUND: tuple[_Edge, ...] = ("left", "top", "right", "foot")
"""The edges of a cloth in their order, clockwise."""


def parted(subject: Subject) -> tuple[Subject, Subject | None]:
    """The rows of a piece, and those along its side, over some of its edges, or around all of it (they have a
    `whole` to go around); None where there are none.
    """
    at = first_aside(subject.worked)
    if not at:
        return subject, None
    stitches = [made for made in subject.worked[at].made if isinstance(made, Made) and made.number]
    if not all([*row_ends(made)] for made in stitches if made.into):
        places = _gone_into(stitches)
        whole = around_sides(places)
        if whole is None and len(_edges(subject, at)) < 2:
            return subject, None
        around = _some(subject, at, len(subject.worked), [places if whole is None else whole.places])
        return _some(subject, 0, at, subject.piece.starts), replace(around, whole=whole)
    ends: dict[int, Place] = {id(end): end for made in stitches for end in row_ends(made)}
    return (
        _some(subject, 0, at, subject.piece.starts),
        _some(subject, at, len(subject.worked), [list(ends.values())]),
    )


def side_edge(sheet: Sheet, subject: Subject, aside: Subject) -> Edging | Cornered:
    """Where rows along the side of a piece's rows go, as the right side shows it: the side where the last of
    them ended, or several edges, one after the other; both sides of rows around a middle, where what is
    worked aside goes into more ends than there are rows.
    """
    if sheet.arc and not sheet.below and len(aside.piece.starts[0]) > len(subject.worked):
        wide, out = subject.sizes[-1].length_mm, sum(row.rise_mm for row in subject.sizes)
        return Edging(sheet.point(wide, 1.0, out), sheet.point(wide, 0.0, out))
    rows, last = subject.sizes, subject.piece.rounds[-1]
    high = sum(row.rise_mm for row in rows)
    foot, top = (
        [sheet.point(row.length_mm, along, up) for along in (0.0, 1.0)]
        for row, up in ((rows[0], 0.0), (rows[-1], high))
    )
    edges = _runs(subject, aside.worked[0].made)
    if len(edges) > 1:
        begins = {"left": foot[0], "top": top[0], "right": top[1], "foot": foot[1]}
        ends = {"left": top[0], "top": top[1], "right": foot[1], "foot": foot[0]}
        return Cornered(
            [begins[edges[0][0]], *(ends[edge] for edge, _ in edges)], [many for _, many in edges]
        )
    along = int(last.side == "WS")
    return Edging(top[along], foot[along]) if along else Edging(foot[along], top[along])


def _edges(subject: Subject, at: int) -> list[tuple[_Edge, int]]:
    """The edges that a row of a piece goes along, which are those of the rows before it."""
    return _runs(_some(subject, 0, at, subject.piece.starts), subject.worked[at].made)


def _runs(rows: Subject, made: Sequence[Made | Space]) -> list[tuple[_Edge, int]]:
    """The edges of rows that what was made goes along, clockwise, and how many places of each; none where
    it doesn't go from one edge to the next.
    """
    at_side = _sides(rows)
    found: list[tuple[_Edge, int]] = []
    for ends, run in groupby(_gone_into([one for one in made if isinstance(one, Made)]), is_row_end):
        places = [*run]
        sides = [at_side[key] for place in places if ends and (key := _row_of(place)) in at_side]
        if ends and sides:
            found.append((max(("left", "right"), key=sides.count), len(places)))
        elif not ends:
            role = getattr(places[0], "role", "")
            found.append(("foot" if role == "foundation" else "top", len(places)))
    for way in (found, found[::-1]):
        steps = [_AROUND.index(edge) for edge, _ in way]
        if all((after - before) % len(_AROUND) == 1 for before, after in pairwise(steps)):
            return way
    return []


def _row_of(end: Place) -> int:
    """The stitch at the end of a row, by its id."""
    return id(end.into[0]) if isinstance(end, Made) else 0


def _sides(rows: Subject) -> Mapping[int, _Edge]:
    """At which side the first and the last stitch of each row lie, by their ids."""
    found: dict[int, _Edge] = {}
    for work, one in zip(rows.piece.rounds, rows.worked, strict=True):
        stitches = [made for made in one.made if isinstance(made, Made) and made.number]
        if len(stitches) > 1:
            from_right = work.side != "WS"
            found[id(stitches[0])] = "right" if from_right else "left"
            found[id(stitches[-1])] = "left" if from_right else "right"
    return found


def _gone_into(stitches: Sequence[Made]) -> list[Place]:
    """What they go into, each place once, from the first."""
    return [*{id(place): place for made in stitches for place in made.into}.values()]


def _some(subject: Subject, first: int, end: int, starts: list[list[Place]]) -> Subject:
    """Rows of a piece as if it had no others. starts: what they are worked into."""
    piece = replace(subject.piece, starts=starts, rounds=subject.piece.rounds[first:end])
    return replace(subject, piece=piece, worked=subject.worked[first:end], sizes=subject.sizes[first:end])
