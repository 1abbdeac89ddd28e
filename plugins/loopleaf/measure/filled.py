"""How tall a piece stands once it is stuffed.

Filling pushes a worked end out into a dome, so the rounds that grow lie in no flat base. Two textbook bodies
bound the height. At the least each round is a band of a cone that keeps its height along the cloth and both
its lengths (√(h² − Δr²) a round). At the most the piece is as round as its way from pole to pole allows: a
hemisphere of the widest radius at each closed end and a cylinder between them, or, where the way is too short
for that, half an ellipse. Filled cloth gives up to a tenth (chosen here, no source).
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from .size import RoundSize
from .units import Band

CLOTH_GIVES = 0.1
CLOSED_BELOW = 0.6
"""An end of less than this share of the widest round is drawn in (chosen here)."""
_STEPS = 60
_HAIR = 1e-6
"""Of the longest: sums of the same stitches may differ by less, and are as long."""


def filled_height(rounds: Sequence[RoundSize], start_mm: float | None) -> Band | None:
    """The standing height in mm of a stuffed piece in the round.

    rounds: those that stand, in their order. start_mm: length of the edge below them, None where they begin
    on an edge as long as their first round. None where neither end is drawn in, or where the piece has a
    waist: how it stands then is open.
    """
    if not rounds:
        return None
    lengths = [rounds[0].length_mm if start_mm is None else start_mm, *(one.length_mm for one in rounds)]
    widest = max(lengths)
    ends = sum(end < CLOSED_BELOW * widest for end in (lengths[0], lengths[-1]))
    if not ends or not widest or has_waist(lengths):
        return None
    radius_mm = widest / math.tau
    cloth_mm = sum(one.rise_mm for one in rounds)
    least = sum(
        math.sqrt(max(one.rise_mm**2 - ((above - below) / math.tau) ** 2, 0.0))
        for one, (below, above) in zip(rounds, pairwise(lengths), strict=True)
    )
    most = ends * domed_height(cloth_mm * (1 + CLOTH_GIVES) / ends, radius_mm)
    return Band(least, max(least, most))


def domed_height(way_mm: float, radius_mm: float) -> float:
    """Height of the roundest dome of a radius that is so long from its rim to its pole along the cloth.

    A quarter of a circle is πr/2 long and r high (textbook geometry); a longer way stands on a cylinder, a
    shorter one is a quarter of an ellipse (its length by Ramanujan's formula of 1914).
    """
    quarter_mm = math.pi * radius_mm / 2
    if way_mm >= quarter_mm:
        return way_mm - quarter_mm + radius_mm
    low, high = 0.0, radius_mm
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if _ellipse(radius_mm, middle) / 4 < way_mm:
            low = middle
        else:
            high = middle
    return low


def _ellipse(a: float, b: float) -> float:
    """Length of an ellipse with the half axes a and b."""
    return math.pi * (3 * (a + b) - math.sqrt((3 * a + b) * (a + 3 * b)))


def has_waist(lengths: Sequence[float]) -> bool:
    """Whether the lengths grow again after they have become smaller."""
    smaller = False
    hair = _HAIR * max(lengths, default=0.0)
    for below, above in pairwise(lengths):
        if above < below - hair:
            smaller = True
        elif above > below + hair and smaller:
            return True
    return False
