"""The profile of work in the round: how far out and how high each round lies."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import sqrt

from ..measure.filled import PRESSED, filled_side
from ..measure.shape import CUPS_BELOW
from ..measure.size import RoundSize
from .section import Polygon, Section

FLAT_SHARE = 0.8
"""From this share of its own height on, a round that grows outward can lie flat: hand fabric gives that
much.
"""

FLAT_PIECE = 0.2
"""A piece whose height is less than this share of its width is drawn from above."""


FORESHORTENED = 0.2
"""A round seen from above is drawn no less tall than this share of its height."""

DRAWN_IN = 0.8
"""What ends with less than this share of its greatest width is drawn in, and can't lie."""


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
    rounds: Sequence[RoundSize], section: Section, first_out: float, flat: Collection[int]
) -> list[Ring]:
    """Rounds as the counts make them stand: what is longer lies further out, the rest of its height goes up.

    A sudden change is shared with the rounds above and below, as stiff cloth does.

    flat: indexes of the rounds that are pressed flat where they can be; what begins in the middle always can.
    """
    wanted = [section.out_for(one.length_mm) for one in rounds]
    for _ in range(2):
        wanted = _softened(wanted, flat)
    rings: list[Ring] = []
    out, high = first_out, 0.0
    for at, one in enumerate(rounds):
        rise = one.rise_mm
        step = max(-rise, min(rise, wanted[at] - out))
        begins = not at and not first_out
        pressed = at in flat and (begins or step >= FLAT_SHARE * rise)
        up = 0.0 if pressed else sqrt(max(rise * rise - step * step, 0.0))
        rings.append(Ring(out, high, out + step, high + up))
        out, high = out + step, high + up
    return rings


def _softened(outs: Sequence[float], flat: Collection[int]) -> list[float]:
    """Each distance with half of its neighbours' mean; flat rounds, those beside them and the ends stay."""
    found = list(outs)
    for at in range(1, len(outs) - 1):
        if not flat or at - 1 > max(flat):
            found[at] = outs[at] / 2 + (outs[at - 1] + outs[at + 1]) / 4
    return found


def lying(rounds: Sequence[RoundSize], first_out: float, downs: Sequence[int] = ()) -> list[Ring]:
    """The same rounds lying flat, one outside the other. downs: how many rounds below each stands, where that
    isn't always 1: a layer goes out from the round that it is worked into. Without them what stands on an
    earlier round begins where that one ends.
    """
    rings: list[Ring] = []
    for at, one in enumerate(rounds):
        down = downs[at] if downs else 1
        out = rings[at - down].out1 if at >= down else first_out
        if not downs and one.on:
            out = first_out + one.height_mm - one.rise_mm
        rings.append(Ring(out, 0.0, out + one.rise_mm, 0.0))
    return rings


def as_long_as_counted(rings: Sequence[Ring], section: Polygon, rounds: Sequence[RoundSize]) -> list[Ring]:
    """A polygon's rounds, lying, with the last one's sides as long as its stitches make them: what cups is
    seen from above, its rounds foreshortened. A square is told by these alone; others only where they cup.
    """
    first, last = rings[0].out0, rings[-1].out1
    wanted = section.out_for(rounds[-1].length_mm)
    if section.corners != 4 and wanted >= CUPS_BELOW * last:
        return list(rings)
    return reached(rings, max((wanted - first) / (last - first), FORESHORTENED))


def reached(rings: Sequence[Ring], share: float) -> list[Ring]:
    """Rounds that lie, each so much less wide from its beginning to its end: foreshortened."""
    first = rings[0].out0
    return [
        replace(ring, out0=first + (ring.out0 - first) * share, out1=first + (ring.out1 - first) * share)
        for ring in rings
    ]


def filled(
    rounds: Sequence[RoundSize], section: Section, first_out: float, longest: float = PRESSED
) -> list[Ring]:
    """Rounds pressed outwards by filling (`filled_side`). longest: how far it may stretch the cloth along."""
    counted = tuple(section.out_for(one.length_mm) for one in rounds)
    side = filled_side(counted, tuple(one.rise_mm for one in rounds), first_out, longest)
    return [Ring(*below, *above) for below, above in pairwise(side)]


def stuffed(rounds: Sequence[RoundSize], section: Section, first_out: float, base: int = 0) -> list[Ring]:
    """Rounds over filling. base: so many of the first ones are meant to lie flat, and the others stand on
    them.
    """
    foot = lying(rounds[:base], first_out)
    above = filled(rounds[base:], section, foot[-1].out1 if foot else first_out)
    if foot:
        above[0] = replace(above[0], out0=foot[-1].out1)
    return [*foot, *above]


def over_a_head(rounds: Sequence[RoundSize], section: Section, first_out: float) -> list[Ring]:
    """Rounds over a head, which fills them and stretches nothing along."""
    return filled(rounds, section, first_out, 1.0)


def is_flat(rings: Sequence[Ring]) -> bool:
    """Whether the piece lies rather than stands."""
    if not rings:
        return True
    widest = max(ring.out1 for ring in rings)
    return rings[-1].high1 < FLAT_PIECE * 2 * widest and rings[-1].out1 >= DRAWN_IN * widest
