"""How wide each straight row of a chart is laid, at least."""

from collections.abc import Sequence
from itertools import pairwise

from ..fabric import Made
from .chart_ground import Bends, Ground, Straight
from .chart_mitred import Mitred
from .chart_things import Thing, wide_of
from .ruffle import FULL
from .signs import UNIT

NARROWER = 0.75
"""A row is no narrower than this share of the one above it: else that one's stitches would lie down."""

FEWEST_GATHERED = 6
"""Fewer stitches that are doubled are the beginning of a piece, no cloth that is gathered."""


def rooms_of(
    ground: Ground, rows: Sequence[Sequence[Thing]], lefts: Sequence[float | None] = ()
) -> list[float]:
    """How wide each straight row is laid, at least: a row is spread where the next one is much fuller, as
    wide as that where it is gathered. 0 for rounds, which go further out. lefts: of each row, where it is
    shaped at its ends alone, by how much at the left one.
    """
    if isinstance(ground, Mitred):
        return [ground.pitch * len(things) for things in rows]
    if not isinstance(ground, Straight | Bends):
        return [0.0] * len(rows)
    rooms: list[float] = []
    above: Sequence[Thing] = ()
    spread, left = False, None
    for things, next_left in zip(reversed(rows), reversed(lefts or [None] * len(rows)), strict=True):
        own = sum(wide_of(thing) for thing in things)
        full = is_gathered(things, above)
        spread = full or (spread and len(things) == len(above))
        most = rooms[-1] if rooms else 0.0
        if full:  # between the middles of its ends
            most -= most / len(things) - UNIT
        if left is not None and things:  # what it gains at its ends stands beside this row
            most *= len(things) / len(above)
        rooms.append(max(own, most * _standing_on(above) * (1.0 if spread else NARROWER)))
        above, left = things, next_left
    return _drawn_in(rows, rooms[::-1])


def is_gathered(things: Sequence[Thing], above: Sequence[Thing]) -> bool:
    """Whether a row is drawn together below a much fuller one."""
    return len(things) >= FEWEST_GATHERED and len(above) > FULL * len(things)


def _drawn_in(rows: Sequence[Sequence[Thing]], rooms: Sequence[float]) -> list[float]:
    """The same rooms; rows that draw all the stitches below together are as wide as these, and so are those
    upon them.
    """
    found = [*rooms]
    wide = False
    for at, (below, things) in enumerate(pairwise(rows), 1):
        legs = sum(len(thing.into) for thing in things if isinstance(thing, Made))
        gathers = len(below) > FULL * max(len(things), 1) and legs >= len(below)
        wide = gathers or (wide and len(things) == len(below))
        if wide:
            most = found[at - 1] - (found[at - 1] / len(things) - UNIT if gathers and things else 0.0)
            found[at] = max(found[at], most)
    return found


def _standing_on(things: Sequence[Thing]) -> float:
    """The share of a row's stitches that stand on the row below: what closes short rows goes further down."""
    rounds = [max(place.round for place in thing.into) for thing in things if thing.into]
    return rounds.count(max(rounds)) / len(rounds) if rounds else 1.0
