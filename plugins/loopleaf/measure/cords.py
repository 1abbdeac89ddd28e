"""Cords: how long, how many chains, and whether that is enough for the round that they pass through.

At least 1.5 × around, and on a small bag around + about 20 cm for the ends and the knot (common practice,
no source). A finger-knotted cord takes six times its length in yarn (Handbook of Wool Knitting and Crochet,
1918).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from ..pattern import Around, Pattern
from .finished import What
from .size import RoundSize
from .units import Band

TIMES_AROUND = 1.5
ENDS_AND_KNOT_MM = 200.0
LONG_FOR_WIDE = 2.0
"""A worked cord is at least so many times as long as it is wide (chosen here)."""


@dataclass(frozen=True, slots=True)
class Cord:
    """A cord of one size.

    around_mm: the round that it goes through, None where the pattern doesn't say which.

    chains: to make for it at the piece's gauge, None without a gauge and of a cord that is worked. off: the
    share by which the gauge lets that round be off; 0 of a cord that is told by it, which changes with it.
    worked: it is made in rows or rounds, or of so many chains, and is as long as its stitches make it; yarn
    and time are its piece's. length_off: the share by which the gauge lets that length be off.
    """

    piece: str
    make: int
    length_mm: float
    chains: int | None
    around_mm: float | None
    off: float = 0.0
    worked: bool = False
    length_off: float = 0.0

    @property
    def longest_mm(self) -> float:
        """How long it is where the gauge lets it be longer."""
        return self.length_mm * (1 + self.length_off)

    @property
    def enough_mm(self) -> float | None:
        """What is enough for the round as short as the gauge lets it be."""
        return None if self.around_mm is None else least_cord_mm(self.around_mm * (1 - self.off))

    @property
    def least_mm(self) -> float | None:
        """The least usual length."""
        return None if self.around_mm is None else least_cord_mm(self.around_mm)


def least_cord_mm(around_mm: float) -> float:
    """1.5 × around, or around + 20 cm where that is more (up to 40 cm around)."""
    return max(TIMES_AROUND * around_mm, around_mm + ENDS_AND_KNOT_MM)


def chains_for(length_mm: float, chain_width_mm: float) -> int:
    """Chains that reach that length, to the nearest: a chain is as wide as a stitch (common practice)."""
    return max(round(length_mm / chain_width_mm), 1)


def around_of(round_sizes: tuple[RoundSize | None, ...], label: str) -> float | None:
    """Length of a round by its label; without a label, of the last round."""
    known = [one for one in round_sizes if one is not None and label in ("", one.label)]
    return known[-1].length_mm if known else None


def length_of(
    length: Around, own_piece: str, sizes: dict[str, tuple[RoundSize | None, ...]]
) -> tuple[float, float] | None:
    """A length given as so many times around a round.

    (length, around) in mm; None where that round isn't known.
    """
    piece = own_piece if length.around == "self" else length.around
    number = length.round or length.row
    around_mm = around_of(sizes.get(piece, ()), str(number) if number else "")
    return None if around_mm is None else (length.times * around_mm, around_mm)


def threaded_round(pattern: Pattern, cord: str) -> tuple[str, str] | None:
    """(piece, round's label) that the finishing threads a cord through, None where it isn't told."""
    for step in pattern.finishing:
        if step.thread is not None and step.thread.piece == cord:
            number = step.thread.round or step.thread.row
            return step.thread.through, str(number) if number else ""
    return None


def worked_cord(
    pattern: Pattern,
    piece: str,
    size: Mapping[What, Band],
    sizes: dict[str, tuple[RoundSize | None, ...]],
    offs: Mapping[str, float],
) -> Cord | None:
    """The cord that a piece in rows or rounds is: long and thin, and threaded through another one.

    size: what it measures, {} without a gauge. sizes, offs: as in `cord_of`.
    """
    threaded = threaded_round(pattern, piece)
    extents = [size[what] for what in ("width", "across", "length", "height") if what in size]
    if threaded is None or threaded[0] == piece or not extents:
        return None
    long = max(extents, key=lambda one: one.middle)
    if long.middle < LONG_FOR_WIDE * min(one.middle for one in extents):
        return None
    around_mm, off = around_of(sizes.get(threaded[0], ()), threaded[1]), offs.get(threaded[0], 0.0)
    make = pattern.pieces[piece].make
    return Cord(piece, make, long.middle, None, around_mm, off, worked=True, length_off=long.off)


def cord_of(
    pattern: Pattern,
    piece: str,
    sizes: dict[str, tuple[RoundSize | None, ...]],
    size: int,
    chain_width_mm: float | None,
    offs: Mapping[str, float],
) -> Cord | None:
    """The cord that a piece worked as a chain makes, so long or of so many chains; None where its length
    isn't said or can't be worked out.

    sizes: every piece's rounds in this size. offs: the share by which each piece's gauge may be off.
    """
    model = pattern.pieces[piece]
    threaded = threaded_round(pattern, piece)
    around_mm = around_of(sizes.get(threaded[0], ()), threaded[1]) if threaded else None
    off = offs.get(threaded[0], 0.0) if threaded else 0.0
    if model.length is None:
        chains = model.start.chain.of(size) if model.start is not None and model.start.chain else None
        if not chains or not chain_width_mm or model.entries:
            return None
        return Cord(piece, model.make, chains * chain_width_mm, None, around_mm, off, worked=True)
    if isinstance(model.length, Around):
        found = length_of(model.length, piece, sizes)
        if found is None:
            return None
        length_mm, around_mm, off = found[0], around_mm or found[1], 0.0
    else:
        stated = model.length.of(size)
        if stated is None:
            return None
        length_mm = stated.mm
    chains = chains_for(length_mm, chain_width_mm) if chain_width_mm else None
    return Cord(piece, model.make, length_mm, chains, around_mm, off)
