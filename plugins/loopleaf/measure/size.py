"""How big the work is, round by round.

The way around or across from the counts, the height from the stitches.

A stitch is as wide and as tall as its gauge says (`gauge`). A chain is as wide as a stitch (common
practice: a foundation chain of 40 makes a row of about 40). A chain space that bridges places is between
the places' width and its own chains' (a lace hangs between the two), one that bridges none is as wide as
its chains.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from ..fabric.worked import PieceWork
from .gauge import Scale, ring_radius
from .made import Contents
from .units import NOTHING, Band

_LOOSE_OFF = 0.1
"""Ribs and lace draw in and stretch: a tenth more either way (chosen here, no source)."""


@dataclass(frozen=True, slots=True)
class RoundSize:
    """One round or row of one size.

    length_mm: the way around, or across a row, at its top. rise_mm: its own height. height_mm: along the
    fabric from the start, this round included. off: the share by which the length may be off. stitches:
    counted. corners: spaces that stand in a corner.
    """

    label: str
    length_mm: float
    length: Band
    rise_mm: float
    height_mm: float
    height: Band
    stitches: int
    corners: int


def round_sizes(
    labels: Sequence[str], rounds: Sequence[Contents | None], scale: Scale
) -> tuple[RoundSize | None, ...]:
    """The rounds of a piece in one size, in their order; None where the size has no such round."""
    height, height_band = 0.0, NOTHING
    sizes: list[RoundSize | None] = []
    for label, made in zip(labels, rounds, strict=True):
        if made is None:
            sizes.append(None)
            continue
        length = length_band(made, scale)
        rise = rise_band(made, scale)
        height += rise.middle
        height_band += rise
        corners = sum(number for sort, number in made.spaces.items() if sort.corner)
        sizes.append(
            RoundSize(label, length.middle, length, rise.middle, height, height_band, made.counted, corners)
        )
    return tuple(sizes)


def length_band(made: Contents, scale: Scale) -> Band:
    """Length of a round's top in mm.

    Counted stitches one width each, however many legs they gather, and spaces.
    """
    off = scale.width_off
    if made.spaces or any(sort.post for sort in made.stitches):
        off += _LOOSE_OFF
    stitches = sum(
        scale.width_of(sort.kind, sort.post) * number
        for sort, number in made.stitches.items()
        if sort.counted
    )
    low = high = stitches
    for sort, number in made.spaces.items():
        ends = sorted((sort.chains, sort.passed or sort.chains))
        low += ends[0] * number * scale.width_mm
        high += ends[1] * number * scale.width_mm
    return Band(low * (1 - off), high * (1 + off))


def rise_band(made: Contents, scale: Scale) -> Band:
    """Height of a round in mm: the mean of its counted stitches; without any, one chain's width."""
    total, low, high = 0, 0.0, 0.0
    for sort, number in made.stitches.items():
        if sort.counted:
            band = scale.height_band(sort.kind, sort.post)
            total += number
            low += band.low * number
            high += band.high * number
    if not total:
        return Band.about(scale.width_mm, 0.15)
    return Band(low / total, high / total)


def across_mm(piece: PieceWork, size: int, sizes: Sequence[RoundSize | None], scale: Scale) -> float:
    """Diameter (of a square: from side to side) of rounds that lie flat from their middle out, in mm."""
    rise = sum(one.rise_mm for one in sizes if one is not None)
    return 2 * (ring_radius(piece, size, scale.width_mm) + rise)


def diameter_mm(around_mm: float) -> float:
    """Diameter of a circle of that circumference."""
    return around_mm / math.pi
