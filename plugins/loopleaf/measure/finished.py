"""The finished size: what the author states, and what gauge and counts make of it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from ..fabric.worked import PieceWork
from ..pattern import FinishedSize, Lengths, Pattern, Run
from .gauge import Scale, ring_radius
from .shape import Stretch, standing_height_mm
from .size import RoundSize
from .units import Band

What = Literal["around", "across", "width", "length", "height"]
_MEASURED_OFF = 0.02
WHATS: tuple[What, ...] = ("around", "across", "width", "length", "height")


@dataclass(frozen=True, slots=True)
class StatedSize:
    """A size that the author states: what it is, as typed, and of which piece.

    piece: "" for the file's own, which is the first piece's or of the whole laid out.
    """

    piece: str
    what: What
    lengths: Lengths

    def mm(self, size: int) -> float | None:
        """In one size, in mm; None for a size that has none."""
        length = self.lengths.of(size)
        return None if length is None else length.mm


def stated_sizes(pattern: Pattern) -> tuple[StatedSize, ...]:
    """All stated sizes, the file's first, then those of the pieces in their order."""
    stated = list(_stated("", pattern.finished_size))
    for name, piece in pattern.pieces.items():
        stated += _stated(name, piece.finished_size)
    return tuple(stated)


def _stated(piece: str, finished: FinishedSize | None) -> list[StatedSize]:
    found: list[tuple[What, Lengths | None]] = [(what, getattr(finished, what, None)) for what in WHATS]
    return [StatedSize(piece, what, lengths) for what, lengths in found if lengths is not None]


def rows_size(rows: Sequence[RoundSize]) -> dict[What, Band]:
    """A piece in rows.

    Its usual width (around, where it closes: between its narrowest and widest row), and its length.
    """
    if not rows:
        return {}
    usual = _usual(rows)
    shortest = min(rows, key=lambda one: one.length_mm)
    longest = max(rows, key=lambda one: one.length_mm)
    return {
        "around": Band(shortest.length.low, longest.length.high),
        "width": usual.length,
        "length": rows[-1].height,
        "height": rows[-1].height,
    }


def rounds_size(
    piece: PieceWork,
    size: int,
    rounds: Sequence[RoundSize],
    shape: Sequence[Stretch],
    scale: Scale,
    lies_flat: Sequence[Run] = (),
) -> dict[What, Band]:
    """A piece in the round: the way around where it is widest for longest, its diameter, its standing height.

    Flat pieces are across twice their height along the fabric and the hole. An oval is longer than it is
    wide by the chain between its two ends.

    lies_flat: the rounds that the author means to lie flat. Where the last one is among them the whole piece
    is measured flat: rounds of lace cup and ruffle by turns, and come out even once blocked.
    """
    if not rounds:
        return {}
    last, usual = rounds[-1], _usual(rounds)
    rise_off = (last.height.high - last.height.low) / (last.height.high + last.height.low)
    base_mm = next((one.height_mm for one in rounds if shape and one.label == shape[0].last), last.height_mm)
    chain_mm = oval_chain_mm(piece, size, scale)
    found: dict[What, Band] = {"around": usual.length, "across": usual.length * (1 / math.pi)}
    meant_flat = any(last.label in map(str, run.numbers) for run in lies_flat)
    if meant_flat or all(stretch.form in ("flat", "ruffles") for stretch in shape):
        across_mm = 2 * (ring_radius(piece, size, scale.width_mm) + last.height_mm)
        found["across"] = found["width"] = found["length"] = Band.about(across_mm, rise_off)
    if chain_mm is not None:
        found["width"] = Band.about(2 * base_mm, rise_off)
        found["length"] = Band.about(2 * base_mm + chain_mm, max(rise_off, scale.width_off))
    height_mm = standing_height_mm(rounds, shape)
    if height_mm and not meant_flat:
        found["height"] = Band.about(height_mm, rise_off)
    return found


def as_measured(pattern: Pattern, piece: str) -> dict[What, Band]:
    """What the gauge says of a whole piece: `{piece: square, across: 17 cm}`, good to 2 % (chosen here)."""
    for gauge in pattern.gauge:
        if gauge.across is not None and gauge.rounds is None and gauge.piece == piece:
            across = Band.about(gauge.across.mm, _MEASURED_OFF)
            return {"across": across, "width": across, "length": across}
    return {}


def laid_out_size(pattern: Pattern, piece: str, across: Band, scale: Scale) -> dict[What, Band] | None:
    """A piece laid out in rows and joined.

    From just the pieces to one row of single crochet more at every seam and edge.
    """
    step = next(
        (s.lay_out for s in pattern.finishing if s.lay_out is not None and s.lay_out.piece == piece), None
    )
    if step is None:
        return None
    seam_mm = scale.height_of("single")
    return {
        "width": Band(across.low * step.across, across.high * step.across + (step.across + 1) * seam_mm),
        "length": Band(across.low * step.down, across.high * step.down + (step.down + 1) * seam_mm),
    }


def _usual(rounds: Sequence[RoundSize]) -> RoundSize:
    """The round whose length most rounds share; among as many, the longest."""
    alike = {round(one.length_mm, 1): 0 for one in rounds}
    for one in rounds:
        alike[round(one.length_mm, 1)] += 1
    return max(rounds, key=lambda one: (alike[round(one.length_mm, 1)], one.length_mm))


def oval_chain_mm(piece: PieceWork, size: int, scale: Scale) -> float | None:
    """Length between the two ends that an oval is worked around.

    None where it doesn't begin on both sides of a chain.
    """
    used = _chains_used(piece, size)
    return (used - 1) * scale.width_mm if used else None


def _chains_used(piece: PieceWork, size: int) -> int:
    start = piece.starts[size] if size < len(piece.starts) else []
    first = piece.rounds[0].sizes[size] if piece.rounds and size < len(piece.rounds[0].sizes) else None
    if first is None or not start:
        return 0
    numbers = {
        place.number
        for one in first.made
        for place in getattr(one, "into", ())
        if getattr(place, "role", "") == "foundation"
    }
    return len(numbers)
