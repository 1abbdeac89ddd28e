"""The scale of a piece from what the author measured: a swatch, so many rounds, a whole piece, a block.

A gauge by how far something is across is worked back from its stitches: measured with stitches one millimetre
wide it would be so many millimetres across, so each is as wide as the one goes into the other.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from .. import trade
from ..fabric import PieceWork
from ..pattern import Gauge, Pattern
from .across import across_rounds
from .blocks import stitch_width
from .finished import lies_flat, measured_at, rounds_across, use_of
from .gauge import Kind, Sample, Scale, height_ratio, specials_of, start_mm
from .pieces import blocks_of, counted, sizes_of, worked_in
from .shape import stretches

_WIDTHS_DIFFER = 0.05


def scale_of(pattern: Pattern, piece: PieceWork, pieces: Sequence[PieceWork] = ()) -> Scale | None:
    """The scale of one piece, or None where the pattern's gauge doesn't give one.

    A gauge that names the piece comes before one for the whole pattern. A gauge by how far rounds or a whole
    piece measure across is worked back from the stitches of that piece (`pieces`: all of them).
    """
    specials = specials_of(pattern)
    own = [g for g in pattern.gauge if g.over is not None and g.piece == piece.name]
    general = [g for g in pattern.gauge if g.over is not None and not g.piece]
    samples: dict[Kind, Sample] = {}
    for gauge in own + general:
        kind, sample = _sample_over(gauge, pattern, specials)
        if kind[0] == gauge.stitch and kind[0] not in pattern.special_stitches:
            kind, sample = _of_a_block(piece, kind, sample, specials)
        samples.setdefault(kind, sample)
    if samples:
        return Scale(samples, specials)
    for gauge in sorted(pattern.gauge, key=lambda g: g.piece != piece.name):
        found = measured_at(gauge, pieces or (piece,)) if gauge.across is not None else None
        if found is not None:
            scale = _scale_across(gauge, pattern, *found, specials)
            if scale is not None:
                return scale
    return None


def _sample_over(gauge: Gauge, pattern: Pattern, specials: Mapping[str, int]) -> tuple[Kind, Sample]:
    named = trade.stitch_named(gauge.stitch, pattern.terms)
    kind: Kind = (named[0].key, named[1]) if named else (gauge.stitch, "")
    over_mm = gauge.over.mm if gauge.over else 0.0
    ratio = height_ratio(kind[0], specials)
    width = over_mm / gauge.stitches if gauge.stitches else None
    height = over_mm / gauge.rows if gauge.rows else None
    width_off = 0.5 / gauge.stitches if gauge.stitches else 0.15
    height_off = 0.5 / gauge.rows if gauge.rows else 0.15
    if width is None:
        width = (height or over_mm) / ratio.middle
    if height is None:
        height = width * ratio.middle
    return kind, Sample(width, height, width_off, height_off)


def _of_a_block(
    piece: PieceWork, kind: Kind, sample: Sample, specials: Mapping[str, int]
) -> tuple[Kind, Sample]:
    """A gauge in blocks, as corner to corner is measured: what it says of the stitches that they are made of.
    The same gauge for other pieces.
    """
    rows = blocks_of(worked_in(piece, 0))
    if not rows:
        return kind, sample
    block = rows[0][0]
    made, ratio = block.stitches[0].kind, height_ratio(block.stitches[0].kind, specials)
    width = stitch_width(block, (sample.width_mm + sample.height_mm) / 2, ratio.middle)
    off = (sample.width_off + sample.height_off) / 2
    return (made, ""), Sample(width, width * ratio.middle, off, off)


def _scale_across(
    gauge: Gauge, pattern: Pattern, piece: PieceWork, at: int, specials: Mapping[str, int]
) -> Scale | None:
    """A scale from a measured diameter (or, in rows, a measured width) and the stitches that made it."""
    model = pattern.pieces.get(piece.name)
    chosen = replace(piece, rounds=piece.rounds[: at + 1])
    first = next(
        (sort.kind for one in counted(chosen, 0) if one for sort in one.stitches if sort.counted), ""
    )
    if model is None or not first or gauge.across is None:
        return None
    ratio = height_ratio(first, specials)
    off = ratio.off
    unit = Scale({(first, ""): Sample(1.0, ratio.middle, 0.0, 0.0)}, specials)
    across = _across_at(pattern, piece, at, unit) if "rounds" in model.worked else _row_at(piece, at, unit)
    if not across:
        return None
    width = gauge.across.mm / across
    return Scale({(first, ""): Sample(width, width * ratio.middle, off + _WIDTHS_DIFFER, off)}, specials)


def _across_at(pattern: Pattern, piece: PieceWork, at: int, scale: Scale) -> float | None:
    """How far across a piece in the round is at that round, as its table says it; an oval by its heights."""
    rounds = sizes_of(piece, 0, counted(piece, 0), scale, in_rounds=True)
    known = [one for one in rounds if one is not None]
    use = use_of(pattern, piece.name)
    begins_mm = start_mm(piece, 0, scale)
    shape = stretches(known, begins_mm, scale.width_mm, use.lies_flat)
    found = across_rounds(piece, 0, rounds, scale, lies_flat(known, shape, use, begins_mm))[at]
    if found is not None:
        return found
    done = [one for one in rounds[: at + 1] if one is not None]
    return rounds_across(piece, 0, done, scale) if done else None


def _row_at(piece: PieceWork, at: int, scale: Scale) -> float | None:
    row = sizes_of(piece, 0, counted(piece, 0), scale, in_rounds=False)[at]
    return None if row is None else row.length_mm
