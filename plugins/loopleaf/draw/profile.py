"""The profile of work in the round: how far out and how high each round lies."""

from collections.abc import Collection
from dataclasses import dataclass
from math import sqrt

from ..measure.size import RoundSize
from .section import Section

FLAT_SHARE = 0.8
"""From this share of its own height on, a round that grows outward can lie flat: hand fabric gives that
much.
"""

FLAT_PIECE = 0.2
"""A piece whose height is less than this share of its width is drawn from above."""


@dataclass(frozen=True, slots=True)
class Ring:
    """One round: its lower and upper edge, each so far out and so high (mm)."""

    out0: float
    high0: float
    out1: float
    high1: float

    @property
    def rise(self) -> float:
        """The round's own height along the fabric."""
        return sqrt((self.out1 - self.out0) ** 2 + (self.high1 - self.high0) ** 2)


def standing(
    rounds: list[RoundSize], section: Section, first_out: float, flat: Collection[int]
) -> list[Ring]:
    """Rounds as the counts make them stand: what is longer lies further out, the rest of its height goes up.

    flat: indexes of the rounds that are pressed flat where they can be.
    """
    rings: list[Ring] = []
    out, high = first_out, 0.0
    for at, one in enumerate(rounds):
        rise = one.rise_mm
        wanted = section.out_for(one.length_mm)
        step = max(-rise, min(rise, wanted - out))
        if at in flat and step >= FLAT_SHARE * rise:
            up = 0.0
        else:
            up = sqrt(max(rise * rise - step * step, 0.0))
        rings.append(Ring(out, high, out + step, high + up))
        out, high = out + step, high + up
    return rings


def lying(rounds: list[RoundSize], first_out: float) -> list[Ring]:
    """The same rounds lying flat, one outside the other."""
    rings: list[Ring] = []
    out = first_out
    for one in rounds:
        rings.append(Ring(out, 0.0, out + one.rise_mm, 0.0))
        out += one.rise_mm
    return rings


def is_flat(rings: list[Ring]) -> bool:
    """Whether the piece lies rather than stands."""
    if not rings:
        return True
    widest = max(ring.out1 for ring in rings)
    return rings[-1].high1 < FLAT_PIECE * 2 * widest
