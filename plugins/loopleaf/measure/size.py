"""How big the work is, round by round.

The way around or across from the counts, the height from the stitches.

A stitch is as wide and as tall as its gauge says (`gauge`). A chain is as wide as a stitch (common
practice: a foundation chain of 40 makes a row of about 40). A chain space is as wide as its chains; where
it bridges fewer places than it has chains it hangs in an arch, between the places' width and its chains'.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from .gauge import Scale
from .made import Contents
from .units import NOTHING, Band

_LOOSE_OFF = 0.1
"""Ribs and lace draw in and stretch: a tenth more either way (chosen here, no source)."""

_CORNER_CHAINS = 2


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
        corners = _corners(made, first=not any(sizes))
        sizes.append(
            RoundSize(label, length.middle, length, rise.middle, height, height_band, made.counted, corners)
        )
    return tuple(sizes)


def _corners(made: Contents, first: bool) -> int:
    """Corners of a round.

    Spaces in the middle of a group, and in the first round those of two chains and more.
    """
    found = sum(number for sort, number in made.gaps.items() if sort.corner)
    if first and not found:
        found = sum(number for sort, number in made.gaps.items() if sort.chains >= _CORNER_CHAINS)
    return found


def length_band(made: Contents, scale: Scale) -> Band:
    """Length of a round's top in mm.

    Counted stitches one width each, however many legs they gather, and spaces.
    """
    off = scale.width_off
    if made.gaps or any(sort.post for sort in made.stitches):
        off += _LOOSE_OFF
    stitches = sum(
        scale.width_of(sort.kind, sort.post) * number
        for sort, number in made.stitches.items()
        if sort.counted
    )
    low = high = stitches
    for sort, number in made.gaps.items():
        shortest = min(sort.chains, sort.passed or sort.chains)
        low += shortest * number * scale.width_mm
        high += sort.chains * number * scale.width_mm
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
