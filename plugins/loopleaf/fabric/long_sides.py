"""Pieces in the round with four corners whose sides aren't alike, as a yoke with narrow sleeves: a rectangle,
longer than it is wide.

Opposite sides of a rectangle are alike, and all four together are the way around (textbook geometry).
"""

from collections.abc import Sequence
from typing import NamedTuple

from .edge import Edge
from .worked import Made, Place, Ring, Space, WorkedRound

ALIKE = 0.15
"""Opposite sides differ by no more than this share of them."""

LONGER = 1.2
"""Sides that are so many times as long as their neighbours make no square, in the last round with corners."""

_CORNERS = 4


class Sides(NamedTuple):
    """One of a rectangle's long sides and one of its short ones, as shares of the way around. at: the index
    of the round that tells them.
    """

    long: float
    short: float
    at: int


def sides_of(worked: WorkedRound) -> tuple[float, float] | None:
    """How long its two pairs of sides are, as shares of the way around, the one from its first corner to its
    second first; None without four corners, or with sides opposite that aren't alike.
    """
    corners = Edge(list(worked.edge)).corners() if worked.edge else set()
    many: list[float] = []
    since = 0.0
    for place in worked.edge:
        wide = _width(place)
        if id(place) in corners:
            many.append(since + wide / 2)
            since = -wide / 2
        since += wide
    if len(many) != _CORNERS:
        return None
    sides = [*many[1:], many[0] + since]
    if any(abs(sides[at] - sides[at + 2]) > ALIKE * (sides[at] + sides[at + 2]) / 2 for at in (0, 1)):
        return None
    first, second = ((sides[at] + sides[at + 2]) / sum(sides) / 2 for at in (0, 1))
    return first, second


def rectangle_of(worked: Sequence[WorkedRound]) -> Sides | None:
    """The sides of a piece in its last round with corners; None where they are alike or it begins in one
    place.
    """
    if not worked or not _begins_with_chains(worked[0]):
        return None
    for at in reversed(range(len(worked))):
        sides = sides_of(worked[at])
        if sides is not None:
            return Sides(max(sides), min(sides), at) if max(sides) >= LONGER * min(sides) else None
    return None


def _begins_with_chains(first: WorkedRound) -> bool:
    """Whether a first round goes into chains one by one: what begins in one place has sides alike."""
    places = [place for made in first.made if isinstance(made, Made) for place in made.into]
    return any(isinstance(place, Made) and place.role == "foundation" for place in places)


def _width(place: Place) -> float:
    """In stitch widths."""
    if isinstance(place, Ring):
        return 0.0
    return float(place.chains) if isinstance(place, Space) else float(place.role != "picot")
