"""The profile of work in the round: how far out and how high each round lies."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import sqrt

from ..measure.size import RoundSize
from .section import Section

FLAT_SHARE = 0.8
"""From this share of its own height on, a round that grows outward can lie flat: hand fabric gives that
much.
"""

FLAT_PIECE = 0.2
"""A piece whose height is less than this share of its width is drawn from above."""

GIVES = 0.12
"""Cloth over filling gives about so much either way (from memory)."""

CLOSED = 0.45
"""A last round that reaches less far out than this share of the widest is drawn closed over its filling."""

DRAWN_IN = 0.85
"""An opening that reaches less far out than this share of the widest is drawn in."""

_PASSES = 800


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

    flat: indexes of the rounds that are pressed flat where they can be.
    """
    wanted = [section.out_for(one.length_mm) for one in rounds]
    for _ in range(2):
        wanted = _softened(wanted, flat)
    rings: list[Ring] = []
    out, high = first_out, 0.0
    for at, one in enumerate(rounds):
        rise = one.rise_mm
        step = max(-rise, min(rise, wanted[at] - out))
        pressed = at in flat and step >= FLAT_SHARE * rise
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
    isn't always 1: a layer goes out from the round that it is worked into.
    """
    rings: list[Ring] = []
    for at, one in enumerate(rounds):
        down = downs[at] if downs else 1
        out = rings[at - down].out1 if at >= down else first_out
        rings.append(Ring(out, 0.0, out + one.rise_mm, 0.0))
    return rings


def filled(rounds: Sequence[RoundSize], section: Section, first_out: float) -> list[Ring]:
    """Rounds pressed outwards by filling: the curve of least bending that the counts allow.

    The middle of each round lies as far out as its count says; from there the distances are moved, again and
    again, a little against their bending (the fourth difference along the profile), and never further from
    the counts than the cloth gives and half a step to the next round (a count holds somewhere between a
    round's lower and upper edge). Where the piece is closed the profile goes on smoothly through the pole:
    beyond it the distances count as negative. The edge of an opening that is drawn in, which nothing fills,
    stays as its count says, and the middle of its round lies half a step before it. There is as much around
    the piece as before, all rounds together; they keep their heights along the cloth, all stretched alike
    where a step out needs it. A ball whose counts follow 2πR·sin(s/R) comes out round.
    """
    counted = [section.out_for(one.length_mm) for one in rounds]
    steps = [abs(b - a) for a, b in pairwise(counted)] or [0.0]
    give = [
        GIVES * out + max(below, above) / 2
        for out, below, above in zip(counted, [steps[0], *steps], [*steps, steps[-1]], strict=False)
    ]
    closed = not first_out, counted[-1] < CLOSED * max(counted)
    low, high = ([c + side * g for c, g in zip(counted, give, strict=True)] for side in (-1, 1))
    drawn_in = [
        not shut and counted[end] < DRAWN_IN * max(counted) for end, shut in zip((0, -1), closed, strict=True)
    ]
    for end, beside in ((0, 1), (-1, -2)):
        if drawn_in[end]:
            low[end] = high[end] = (counted[end] + counted[beside]) / 2
    outs = list(counted)
    for _ in range(_PASSES):
        far = [*_beyond(outs, closed[0]), *outs, *reversed(_beyond(outs[::-1], closed[1]))]
        eased = [
            b - (far[i] - 4 * far[i + 1] + 6 * b - 4 * far[i + 3] + far[i + 4]) / 16
            for i, b in enumerate(outs)
        ]
        kept = sum(counted) / (sum(eased) or 1.0)
        outs = [min(max(b * kept, least), most) for b, least, most in zip(eased, low, high, strict=True)]
    first, last = (counted[end] if drawn_in[end] else outs[end] for end in (0, -1))
    edges = [
        first_out if closed[0] else first,
        *((a + b) / 2 for a, b in pairwise(outs)),
        0.0 if closed[1] else last,
    ]
    moves = [b - a for a, b in pairwise(edges)]
    stretch = max(1.0, *(abs(move) / one.rise_mm for move, one in zip(moves, rounds, strict=True)))
    rings: list[Ring] = []
    up_to = 0.0
    for at, (move, one) in enumerate(zip(moves, rounds, strict=True)):
        up = sqrt(max((one.rise_mm * stretch) ** 2 - move**2, 0.0))
        rings.append(Ring(edges[at], up_to, edges[at + 1], up_to + up))
        up_to += up
    return rings


def _beyond(outs: Sequence[float], closed: bool) -> tuple[float, float]:
    """Two rounds before the first one: through the pole, or going on as straight as the first two."""
    second = outs[min(1, len(outs) - 1)]
    if closed:
        return (-second, -outs[0])
    step = second - outs[0]
    return (outs[0] - 2 * step, outs[0] - step)


def is_flat(rings: Sequence[Ring]) -> bool:
    """Whether the piece lies rather than stands."""
    if not rings:
        return True
    widest = max(ring.out1 for ring in rings)
    return rings[-1].high1 < FLAT_PIECE * 2 * widest
