"""All the way around a piece in rows: its last row, one side, its beginning, the other side."""

from collections.abc import Sequence
from itertools import groupby

from .worked import Made, PieceWork, Place, RoundWork, WorkedRound


def row_ends(other: PieceWork, size: int) -> list[Place]:
    """One place for the end of each row, from the first row up: the side where row 1 ends."""
    return [
        end for at, work in enumerate(other.rounds) if (end := row_end(work, at, size, first=bool(at % 2)))
    ]


def around_rows(other: PieceWork, top: list[Place], size: int) -> list[Place]:
    """The places around a piece from where its last row ended: back along it, down, its beginning, up."""
    gone = ways(other.rounds)
    down = [
        end
        for at, work in enumerate(other.rounds)
        if (end := row_end(work, at, size, first=gone[at] == gone[-1]))
    ]
    up = [
        end
        for at, work in enumerate(other.rounds)
        if (end := row_end(work, at, size, first=gone[at] != gone[-1]))
    ]
    bottom = _beginning(other, size)
    along = bottom if gone[0] == gone[-1] else bottom[::-1]
    return [*top[::-1], *down[::-1], *along, *up]


def corners(places: list[Place]) -> frozenset[int]:
    """The corner stitches of a piece in rows, by identity: the first and the last beside its row ends. Around
    an opening those are gaps at its sides, and its corners themselves."""
    found: list[Place] = []
    if any(isinstance(place, Made) and place.role == "loop" for place in places):
        return frozenset(id(place) for place in places if is_row_end(place))
    if any(map(is_row_end, places)):
        for ends, run in groupby(places, is_row_end):
            stitches = list(run)
            found += [] if ends else [stitches[0], stitches[-1]]
    return frozenset(map(id, found))


def is_row_end(place: Place) -> bool:
    """Whether a place is the end of a row."""
    return isinstance(place, Made) and place.role == "row-end"


def ways(rounds: Sequence[RoundWork]) -> list[bool]:
    """For each row whether it goes against the first."""
    found: list[bool] = []
    for work in rounds:
        found.append(bool(found) and found[-1] != work.turned)
    return found


def row_end(work: RoundWork, at: int, size: int, first: bool) -> Made | None:
    """The place at a row's end: beside its first stitch, or its last. at: the row's index."""
    worked = work.sizes[size]
    stitches = _counted(worked) if worked is not None else []
    if not stitches:
        return None
    edge = stitches[0] if first else stitches[-1]
    return Made(edge.kind, (edge,), edge.round, edge.yarn, "row-end", at + 1)


def _counted(worked: WorkedRound) -> list[Made]:
    return [made for made in worked.made if isinstance(made, Made) and made.number]


def _beginning(other: PieceWork, size: int) -> list[Place]:
    """The foundation chains that row 1 stands on, in the order it was worked.

    What was only turning chain isn't among them, but for the one that the turning chain stands on.
    """
    start = other.starts[size] if size < len(other.starts) else []
    worked = other.rounds[0].sizes[size]
    below = [place for made in _counted(worked) for place in made.into] if worked is not None else []
    used = {id(place) for place in below}
    standing = worked is not None and any(
        made.role == "turning" and not made.into for made in _counted(worked)
    )
    first = next((at for at, place in enumerate(start) if id(place) in used), 0)
    if standing and first:
        used.add(id(start[first - 1]))
    return [place for place in start if id(place) in used] or list(start)
