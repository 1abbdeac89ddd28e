"""Petals that begin and end with chains: slip stitch, chains, tall stitches, chains, slip stitch.

The chains are the petal's two sides: they stand beside its stitches and rise from the slip stitch to their
heads, as a turning chain does, and the petal is round on top.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from ..fabric import Made, Space, WorkedRound

LOW = ("slip", "single")
MOST = 6
"""More chains than this hang as an arch."""

ROOM, SLIP_ROOM = 1.0, 0.3
"""How wide a side stands, and a slip stitch beside one, in stitch widths."""

FALL = 0.85
"""A petal's ends lie so much of its height lower than its middle."""


class Petal(NamedTuple):
    """The two sides and the stitches between them, in the order made."""

    things: Sequence[Made | Space]

    def tops(self) -> Iterator[tuple[int, tuple[float, float]]]:
        """For each of them, by id, the share of the petal's height that its two sides reach."""
        many = len(self.things)
        highs = [1 - FALL * abs(2 * at / many - 1) ** 3 for at in range(many + 1)]
        yield from ((id(one), pair) for one, pair in zip(self.things, pairwise(highs), strict=True))


def petals_of(worked: WorkedRound, ends: Sequence[str] = ("slip",)) -> list[Petal]:
    """The petals of a round that have chains for sides. ends: the kinds of stitch that they lie between."""
    made = [one for one in worked.made if isinstance(one, Space) or one.number]
    low = [not isinstance(one, Space) and one.kind in ends for one in made]
    found: list[Petal] = []
    start: int | None = None
    for at, one in enumerate(made):
        if low[at]:
            start = None
        elif isinstance(one, Space):
            side = not one.back and not one.into and one.chains <= MOST
            if side and start is None and (not at or low[at - 1]):
                start = at
            elif start is not None:
                if side and at > start + 1 and low[(at + 1) % len(low)]:
                    found.append(Petal(made[start : at + 1]))
                start = None
        elif one.kind in LOW:
            start = None
    return found


def rooms_at(worked: WorkedRound, petals: Sequence[Petal]) -> Mapping[int, float]:
    """How wide the sides and the slip stitches beside them stand, by id, in stitch widths."""
    sides = {id(one) for petal in petals for one in (petal.things[0], petal.things[-1])}
    rooms = dict.fromkeys(sides, ROOM)
    for one, after in pairwise([*worked.made, *worked.made[:1]]):
        for slip, side in ((one, after), (after, one)):
            if id(side) in sides and isinstance(slip, Made) and slip.kind == "slip":
                rooms[id(slip)] = SLIP_ROOM
    return rooms
