"""What the first round or row of a chart goes into: a ring, or the chains of a foundation."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from math import tau

from ..fabric import Made, Ring
from .border import bordered, spots_of
from .chart_ground import Bends, Fan, Ground, Straight, is_closed
from .chart_mitred import Mitred
from .chart_things import ROOM, begun_in, gap_of, place_key, tall_of, things_of, wide_of
from .petals import petals_of
from .section import Oval
from .signs import CHAIN_LONG, MAGIC_RING, UNIT, is_cross
from .stand import base_spots, chains_of
from .subject import Subject

FROM_A_CHAIN, FROM_TWO, FROM_AN_EDGE = 5.0, 7.2, 5.0
"""Rounds that begin in one chain leave it so much room, and so much where another lies beside it; the edge of
another piece is a circle so large, at least.
"""

LIFTED = 3.0
"""A ring is drawn larger where its stitches would lie further than this outside of it."""

A_PETALS_PART = 2.2
"""Petals that begin in a ring leave each of their parts so much of it."""


@dataclass(frozen=True, slots=True)
class Beginning:
    """out: how far out the first round stands. chains: where each chain of a foundation lies, as a share of
    the way at `level`. ring: the radius of a ring, or of the edge of another piece; 0 for none.
    """

    out: float
    level: float
    chains: Mapping[Hashable, float]
    ring: float = 0.0


def begun(subject: Subject, ground: Ground, backward: bool, room: float) -> Beginning:
    """Where the beginning of a piece lies. backward: its first row is made against the way,
    and is laid so wide at least.
    """
    start = subject.piece.starts[0] if subject.piece.starts else []
    first = start[0] if start else None
    if isinstance(first, Ring):
        petals = len(subject.worked[0].made) if petals_of(subject.worked[0]) else 0
        radius = (
            first.chains * CHAIN_LONG / tau
            if first.chains
            else max(MAGIC_RING - 2, petals * A_PETALS_PART / tau)
        )
        out = radius + (2.5 if first.chains else 0.5)
        more = _lifted(subject, out) if isinstance(ground, Oval) else 0.0
        return Beginning(out + more, 0.0, {}, radius + more)
    around = begun_in(subject.worked[0]) if subject.in_rows else None
    if not isinstance(ground, Straight | Bends | Mitred) and around is not None:
        return Beginning(FROM_A_CHAIN, 0.0, {})
    if is_closed(ground):
        if (whole := bordered(subject)) is not None:
            edge = spots_of(whole, subject)
            laid_out = subject.work.pattern.pieces[subject.piece.name].start
            # Around one piece in rows no place lies in a corner: its sides begin half a place on.
            share = 0.5 if laid_out is not None and laid_out.laid_out else 1.0
            along = {place_key(place): edge[id(place)] for place in start}
            return Beginning(
                0.0, 0.0, {key: spot.start + share * (spot.end - spot.start) for key, spot in along.items()}
            )
        if len(chains_of(subject)) > 1 and isinstance(ground, Oval):
            level = CHAIN_LONG / 4
            spots = base_spots(subject, ground, level)
            return Beginning(level, level, {key: (spot.start + spot.end) / 2 for key, spot in spots.items()})
        own = subject.work.pattern.pieces[subject.piece.name].start
        if isinstance(ground, Oval) and own is not None and own.kind == "edge":
            radius = FROM_AN_EDGE + _lifted(subject, FROM_AN_EDGE)
            return Beginning(radius, 0.0, {}, radius)
        return Beginning(FROM_A_CHAIN if len(start) < 2 else FROM_TWO, 0.0, {})
    chains = [place for place in start if isinstance(place, Made) and place.role == "foundation"]
    if around is not None:
        return Beginning(0.0, 0.0, {id(around): room / 2})
    many = max(len(chains), 1)
    out = ground.out_for(many * UNIT)
    step = UNIT / ground.way(out) if out else max(UNIT, room / many)
    step = ground.pitch if isinstance(ground, Mitred) else step
    passed = _passed(subject, chains) if isinstance(ground, Fan) else 0
    aside = passed / 2 if backward else -passed / 2  # what the first row goes over lies about the middle
    alongs = [(aside + (many - at - 0.5 if backward else at + 0.5)) * step for at in range(many)]
    return Beginning(out, out, {id(place): along for place, along in zip(chains, alongs, strict=False)})


def _passed(subject: Subject, chains: Sequence[Made]) -> int:
    """How many chains the first row passes at the hook, but for the one below a chain that counts."""
    made = subject.worked[0].made
    used = [at for at, place in enumerate(chains) if any(place in one.into for one in made)]
    counts = bool(made) and isinstance(made[0], Made) and made[0].role == "turning" and not made[0].into
    return max(used[0] - counts, 0) if used else 0


def _lifted(subject: Subject, out: float) -> float:
    """How much larger a ring is drawn so that its stitches, which must lie further out to stand side by side,
    stand on it as they are tall; 0 where they need little. out: where they would stand.
    """
    first = subject.worked[0]
    things = things_of(first, backward=False)
    made = [thing for thing in things if isinstance(thing, Made)]
    if not made:
        return 0.0
    crosses = all(is_cross(thing.kind) for thing in made)
    level = (sum(map(wide_of, things)) + gap_of(first)) / tau + crosses * UNIT / 2
    more = level - sum(map(tall_of, made)) / len(made) - ROOM - out
    return more if more > LIFTED else 0.0
