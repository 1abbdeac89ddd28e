"""An opening (a thumb, an armhole): the stitches that a round left unworked, and the underside of the chains
above."""

from collections.abc import Mapping

from ..pattern import Start
from .edge import loops_of
from .worked import Made, PieceWork, Place, Space, WorkedRound


def unworked(other: PieceWork, at: int, size: int) -> list[Place]:
    """Of a round's places, those that the round after it left unworked."""
    worked = other.rounds[at].sizes[size]
    places = list(worked.edge) if worked is not None else []
    after = _after(other, at, size)
    if after is None:
        return places
    used: set[int] = set()
    for made in after.made:
        if not isinstance(made, Made):
            continue  # an arch passes over stitches and leaves them unworked
        for place in made.into:
            used.add(id(place))
            if isinstance(place, Made) and place.role == "loop":
                used.add(id(place.into[0]))
    return [p for p in places if id(p) not in used]


def around_openings(start: Start, size: int, others: Mapping[str, PieceWork]) -> list[list[Place]]:
    """What a piece begun on unworked stitches may go around besides them.

    Each opening's stitches with the underside of its chains behind them, where there are several also without
    it (two sleeves), then all openings one after the other.
    """
    other = others.get(start.edge or "")
    number = start.round if start.round is not None else start.row
    if other is None or start.stitches != "unworked":
        return []
    at = next((i for i, one in enumerate(other.rounds) if one.plan.number == number), None)
    after = None if at is None else _after(other, at, size)
    if at is None or after is None:
        return []
    left = {id(place) for place in unworked(other, at, size)}
    openings: list[list[Place]] = []
    bare: list[list[Place]] = []
    for space in after.made:
        over = [p for p in space.into if id(p) in left] if isinstance(space, Space) else []
        if isinstance(space, Space) and over:
            openings.append([*over, *reversed(loops_of(space))])
            bare.append(over)
    whole = [place for opening in openings for place in opening]
    return [*openings, *bare, whole] if len(openings) > 1 else openings


def _after(other: PieceWork, at: int, size: int) -> WorkedRound | None:
    return other.rounds[at + 1].sizes[size] if at + 1 < len(other.rounds) else None
