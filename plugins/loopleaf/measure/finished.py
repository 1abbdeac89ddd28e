"""The finished size: what the author states, and what gauge and counts make of it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from ..fabric.worked import PieceWork
from ..pattern import FinishedSize, Lengths, Pattern
from .gauge import Scale, ring_radius
from .shape import Stretch, standing_height_mm
from .size import RoundSize, diameter_mm
from .units import Band

What = Literal["around", "across", "width", "length", "height"]
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
    piece: PieceWork, size: int, rounds: Sequence[RoundSize], shape: Sequence[Stretch], scale: Scale
) -> dict[What, Band]:
    """A piece in the round.

    The way around where it is widest for longest, its diameter, and its height as it stands.

    Flat pieces are across twice their height along the fabric and the hole. An oval is longer than it is
    wide by the chain between its two ends.
    """
    if not rounds:
        return {}
    flat_until = shape[0].last if shape and shape[0].form == "flat" else ""
    base_mm = next((one.height_mm for one in rounds if one.label == flat_until), 0.0)
    hole_mm = ring_radius(piece, size, scale.width_mm)
    off = scale.width_off
    usual = _usual(rounds)
    all_flat = len(shape) == 1 and shape[0].form == "flat"
    chain_mm = _oval_chain_mm(piece, size, scale)
    across_mm = 2 * (hole_mm + rounds[-1].height_mm) if all_flat else diameter_mm(usual.length_mm)
    found: dict[What, Band] = {"around": usual.length, "across": Band.about(across_mm, off)}
    if chain_mm is not None and base_mm:
        found["width"] = Band.about(2 * base_mm, off)
        found["length"] = Band.about(2 * base_mm + chain_mm, off)
    elif all_flat:
        found["width"] = found["length"] = found["across"]
    height_mm = standing_height_mm(rounds, shape)
    if height_mm:
        rise_off = (rounds[-1].height.high - rounds[-1].height.low) / 2 / rounds[-1].height_mm
        found["height"] = Band.about(height_mm, rise_off)
    return found


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


def _oval_chain_mm(piece: PieceWork, size: int, scale: Scale) -> float | None:
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
