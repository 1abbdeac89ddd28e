"""The finished size: what the author states, and what gauge and counts make of it."""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import takewhile
from typing import Literal

from ..fabric.long_sides import rectangle_of
from ..fabric.worked import PieceWork
from ..pattern import FinishedSize, Gauge, Lengths, Pattern, Run
from .fan import Fan
from .filled import filled_height, has_waist
from .gauge import Scale, ring_radius
from .polygon import across_a_height, across_a_side, corners_of, diagonal_across
from .reach import reaches, spreads_flat
from .shape import CUPS_BELOW, RUFFLES_ABOVE, Stretch, standing_height_mm
from .size import RoundSize, enclosed
from .units import Band

What = Literal["around", "across", "width", "length", "height", "diagonal"]
_MEASURED_OFF = 0.02
_SQUARE = 4
_SQUARES_DIAGONAL = 1.4
"""Times its side, a little less than √2."""
_ALIKE = 0.9
"""Rows are about as long where the shortest is so much of the longest (chosen here)."""
_SHARED = 0.25
"""A length that fewer of its rounds share isn't a piece's usual one: it is measured at its widest (chosen
here)."""
_WORN = {"head", "hand"}
"""Bodies whose coverings print measures lying folded, crown to edge (common practice, no source)."""
WHATS: tuple[What, ...] = ("around", "across", "width", "length", "height")
"""What an author may state; a diagonal is only worked out."""


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


def rows_size(
    rows: Sequence[RoundSize], lengthwise: bool = False, fan: Fan | None = None
) -> dict[What, Band]:
    """A piece in rows: its usual width, which is the way around where it closes, and its length; the other
    way about where it is called long along its rows.

    fan: of rows that come out of a point and bend. Their longest is how long the lower edge is; the width
    lies between the tips, and the length is the depth below the point.
    """
    if not rows:
        return {}
    rows = enclosed(rows)
    if fan is not None:
        edge = max(rows[0].length, rows[-1].length, key=lambda one: one.middle)
        found: dict[What, Band] = {"around": edge, "across": fan.width, "width": fan.width}
        found |= {"length": fan.depth, "height": fan.depth}
        return found | ({"diagonal": fan.diagonal} if fan.diagonal else {})
    wide = (_usual(rows) if rows[-1].blocks is None else rows[-1]).length
    high = max(rows, key=lambda one: one.height_mm).height
    width, length = (high, wide) if lengthwise else (wide, high)
    return {"around": wide, "width": width, "length": length, "height": high}


def is_lengthwise(pattern: Pattern, piece: str, rows: Sequence[RoundSize]) -> bool:
    """Whether a piece in rows is called long along them, as a string is, or a scarf worked from side to side.

    Its author states a length and no width, and the rows are about as long, and longer than they are high.
    """
    first = next(iter(pattern.pieces)) == piece
    stated = {one.what for one in stated_sizes(pattern) if one.piece == piece or (first and not one.piece)}
    rows = enclosed(rows)
    lengths = [one.length_mm for one in rows]
    if not lengths or "length" not in stated or "width" in stated:
        return False
    return min(lengths) > max(_ALIKE * max(lengths), *(one.height_mm for one in rows))


@dataclass(frozen=True, slots=True)
class Use:
    """What a piece is for, as far as it says how the piece stands or lies when it is measured.

    lies_flat: the rounds that the author means to lie flat. stuffed: it is filled. worn: it is measured lying
    folded, from end to end along the cloth, as what fits a head or a hand is.
    """

    lies_flat: Sequence[Run] = ()
    stuffed: bool = False
    worn: bool = False

    def is_flat(self, label: str) -> bool:
        """Whether the round is meant to lie flat."""
        return any(label in map(str, run.numbers) for run in self.lies_flat)


def use_of(pattern: Pattern, piece: str) -> Use:
    """How one piece is measured; what the file says of no piece is said of the first one."""
    return Use(pattern.pieces[piece].lies_flat, is_stuffed(pattern, piece), _is_worn(pattern, piece))


def _is_worn(pattern: Pattern, piece: str) -> bool:
    """Whether a piece fits a head or a hand, or is worked on from one that does: a crown on its brim."""
    first, seen = next(iter(pattern.pieces)), set[str]()
    while piece in pattern.pieces and piece not in seen:
        seen.add(piece)
        model = pattern.pieces[piece]
        if {*model.to_fit, *(pattern.to_fit if piece == first else ())} & _WORN:
            return True
        piece = model.start.edge if model.start is not None and model.start.edge else ""
    return False


def is_stuffed(pattern: Pattern, piece: str) -> bool:
    """Whether a step between a piece's rounds, or one of the finishing, fills it."""
    first = next(iter(pattern.pieces))
    stuffings = [(entry.stuff, piece) for entry in pattern.pieces[piece].entries if entry.stuff is not None]
    stuffings += [(step.stuff, first) for step in pattern.finishing if step.stuff is not None]
    return any((stuff.piece or unsaid) == piece for stuff, unsaid in stuffings)


def rounds_size(
    piece: PieceWork,
    size: int,
    rounds: Sequence[RoundSize],
    shape: Sequence[Stretch],
    scale: Scale,
    start_mm: float | None,
    use: Use,
) -> dict[What, Band]:
    """A piece in the round: the way around where it is widest for longest, its diameter, its standing height.

    Flat pieces are as far around as their edge, and across twice their height along the fabric and the hole;
    where the last round is meant to lie flat the whole piece is measured so: rounds of lace cup and ruffle by
    turns, and come out even once blocked. A polygon is measured from side to side, and has a diagonal, be it
    solid or of stacked increases. An oval is longer than it is wide by the chain between its two ends. A tube
    that is open at its beginning, and what is worn, lies folded: half of the way around wide.
    """
    if not rounds:
        return {}
    last, usual, furthest = rounds[-1], _usual(rounds), max(rounds, key=lambda one: one.height_mm)
    rise_off = last.height.off
    base_mm = next((one.height_mm for one in rounds if shape and one.label == shape[0].last), last.height_mm)
    chain_mm = oval_chain_mm(piece, size, scale)
    open_tube = bool(shape) and shape[0].form == "tube"
    corners = corners_of(rounds) if chain_mm is None and not open_tube else 0
    widest_mm = max(reaches(rounds, start_mm, corners)) * (across_a_height(corners) if corners else 2)
    around_a_width = corners / across_a_side(corners) if corners else math.pi
    across = _no_wider(usual.length * (1 / around_a_width), widest_mm, rise_off)
    found: dict[What, Band] = {"around": usual.length, "across": across}
    edge = max(rounds, key=lambda one: one.length_mm)
    flat = lies_flat(rounds, shape, use, start_mm)
    if flat:
        across = Band.about(rounds_across(piece, size, rounds, scale), furthest.height.off)
        if corners == _SQUARE:
            across = _side(across, last.length * (1 / corners))
        found["around"], found["across"] = edge.length, across
        found["width"] = found["length"] = across
    worked = [one for r in piece.rounds if (one := r.sizes[size]) is not None]
    sides = rectangle_of(worked) if flat and corners == _SQUARE else None
    if sides is not None:
        del found["across"]  # a rectangle has a length and a width
        found["length"], found["width"] = last.length * sides.long, last.length * sides.short
        found["diagonal"] = last.length * math.hypot(sides.long, sides.short)
    elif corners:
        found["diagonal"] = found["across"] * diagonal_across(corners)
    elif flat and last.stacked and chain_mm is None:
        found["diagonal"] = _from_corner_to_corner(last, found["across"])
    if chain_mm is not None and not open_tube:
        if not flat:
            del found["across"]  # an oval vessel has a width and a length, and no one way across
        found["width"] = Band.about(2 * base_mm, rise_off)
        found["length"] = Band.about(2 * base_mm + chain_mm, max(rise_off, scale.width_off))
    height = None if flat else _height(rounds, shape, start_mm, use, chain_mm or 0.0)
    if height is not None:
        found["height"] = height
    if height is not None and (open_tube or use.worn):
        found["width"], found["length"] = usual.length * 0.5, height
    return found


def _no_wider(by_stitches: Band, widest_mm: float, off: float) -> Band:
    """How far across by the stitches, or, where these wave, as wide as the cloth lets its widest round lie.

    off: the share by which the cloth's length may be off.
    """
    return by_stitches if by_stitches.middle <= widest_mm else Band.about(widest_mm, off)


def lies_flat(
    rounds: Sequence[RoundSize], shape: Sequence[Stretch], use: Use, start_mm: float | None
) -> bool:
    """Whether a whole piece in the round lies flat when it is done: its author means it to, it ends in
    petals, nothing of it bends up, or its edge is long enough for all of it (`reach`). The points of a crown
    stand on its tube; longer ones than that is wide from its middle lie around it, as a sun's rays do.
    """
    if not rounds:
        return False
    return (
        use.is_flat(rounds[-1].label)
        or (rounds[-1].petals and not _is_crown(rounds[-1], shape))
        or all(stretch.form in ("flat", "ruffles") for stretch in shape)
        or (shape[0].form != "tube" and spreads_flat(rounds, start_mm))
    )


def _is_crown(last: RoundSize, shape: Sequence[Stretch]) -> bool:
    return bool(shape) and shape[-1].form == "tube" and 0 < last.points_mm <= last.length_mm / math.tau


def rounds_across(
    piece: PieceWork, size: int, rounds: Sequence[RoundSize], scale: Scale, corners: int | None = None
) -> float:
    """How far across flat rounds are, in mm: their heights and the hole, from the middle out both ways.

    corners: of the whole piece, where these are its first rounds only.
    """
    out_mm = ring_radius(piece, size, scale.width_mm) + max(one.height_mm for one in rounds)
    corners = corners_of(rounds) if corners is None else corners
    return out_mm * (across_a_height(corners) if corners else 2)


def _from_corner_to_corner(last: RoundSize, across: Band) -> Band:
    """Where pairs of increases stack up: from what the stitches of its sides make to what the rounds' heights
    would make. A pair brings one stitch of a corner's two, so it lies between.
    """
    by_stitches = last.length * (across_a_side(last.stacked) / last.stacked)
    return Band(by_stitches.low, across.high) * diagonal_across(last.stacked)


def _side(by_heights: Band, by_stitches: Band) -> Band:
    """A square's side: its stitches side by side, as far off as both ways to work it out allow."""
    side = by_stitches.middle
    off = max(side - by_heights.low, by_heights.high - side, side - by_stitches.low)
    return Band(side - off, side + off)


def _height(
    rounds: Sequence[RoundSize],
    shape: Sequence[Stretch],
    start_mm: float | None,
    use: Use,
    spine_mm: float,
) -> Band | None:
    """Of a piece that isn't flat; None where none of it rises, or where how it stands is open."""
    last = max(rounds, key=lambda one: one.height_mm)
    if use.worn:
        return last.height
    base = list(takewhile(lambda one: use.is_flat(one.label), rounds))
    standing = rounds[len(base) :]
    below_mm = base[-1].length_mm if base else start_mm
    rise_off = last.height.off
    if use.stuffed:
        filled = filled_height(standing, below_mm, spine_mm)
        if filled is not None:
            return Band(filled.low * (1 - rise_off), filled.high * (1 + rise_off))
        if has_waist([one.length_mm for one in standing]):
            return None
    height_mm = standing_height_mm(rounds, shape, start_mm)
    return Band.about(height_mm, rise_off) if height_mm else None


def measured_at(gauge: Gauge, pieces: Sequence[PieceWork]) -> tuple[PieceWork, int] | None:
    """The piece that a gauge by how far it is across was measured on, and the index of its round or row.

    Where it names no piece, the first one that has all the rounds that it names, else some of them. None
    where there is none.
    """
    within: list[tuple[PieceWork, int]] = []
    for piece in pieces:
        numbers = [one.plan.number for one in piece.rounds]
        named = [at for at, number in enumerate(numbers) if gauge.rounds is None or number in gauge.rounds]
        if named and gauge.piece in ("", piece.name):
            within.append((piece, named[-1]))
            if gauge.rounds is None or gauge.rounds.last in (None, numbers[named[-1]]):
                return within[-1]
    return within[0] if within else None


def as_measured(
    pattern: Pattern, piece: PieceWork, pieces: Sequence[PieceWork], corners: int, flat: bool
) -> dict[What, Band]:
    """What the gauge says of a whole piece: `{piece: square, across: 17 cm}`, or by its rounds up to the last
    one; good to 2 % (chosen here). Of a piece in rows its width. flat: whether the whole piece lies flat.
    """
    for gauge in pattern.gauge:
        found = measured_at(gauge, pieces) if gauge.across is not None else None
        if gauge.across is None or found is None or found != (piece, len(piece.rounds) - 1):
            continue
        across = Band.about(gauge.across.mm, _MEASURED_OFF)
        if "rounds" not in pattern.pieces[piece.name].worked:
            return {"width": across, "across": across}
        whole: dict[What, Band] = {"across": across}
        if corners == _SQUARE:
            whole["around"] = across * corners
        if flat:
            whole |= {"width": across, "length": across}
        return whole | ({"diagonal": across * diagonal_across(corners)} if corners else {})
    return {}


def meant_by(what: What, size: Mapping[What, Band], rows: Sequence[RoundSize] = ()) -> tuple[Band, ...]:
    """The measures that an author may mean: a polygon is measured from side to side, and, but for a square,
    from corner to corner as well.

    rows: of a piece worked in rows; what closes around a body may be measured at any of them.

    How far round work is across by its heights and by its last round's stitches differs where its counts
    aren't just those that lie flat, and hand fabric gives on either side: both are right, and all between.
    """
    known = [size[what]] if what in size else []
    if what == "around" and rows:
        rows = enclosed(rows)
        known.append(Band(min(one.length.low for one in rows), max(one.length.high for one in rows)))
    across, around, diagonal = size.get("across"), size.get("around"), size.get("diagonal")
    if across is None or around is None or size.get(what) != across:
        return tuple(known)
    by_stitches = around * (1 / math.pi)
    if CUPS_BELOW <= by_stitches.middle / across.middle <= RUFFLES_ABOVE:
        known.append(Band(min(across.low, by_stitches.low), max(across.high, by_stitches.high)))
    if diagonal and diagonal.middle < _SQUARES_DIAGONAL * across.middle:
        known.append(diagonal)
    return tuple(known)


def _usual(rounds: Sequence[RoundSize]) -> RoundSize:
    """The round whose length most rounds share; among as many, or where few do, the longest."""
    alike = Counter(round(one.length_mm, 1) for one in rounds)
    if max(alike.values()) < _SHARED * len(rounds):
        return max(rounds, key=lambda one: one.length_mm)
    return max(rounds, key=lambda one: (alike[round(one.length_mm, 1)], one.length_mm))


def oval_chain_mm(piece: PieceWork, size: int, scale: Scale) -> float | None:
    """Length between the two ends that an oval is worked around.

    None where its first round isn't worked along both sides of a chain.
    """
    start = piece.starts[size] if size < len(piece.starts) else []
    first = piece.rounds[0].sizes[size] if piece.rounds and size < len(piece.rounds[0].sizes) else None
    if first is None:
        return None
    near = {id(place) for place in start}
    used = {
        id(place): place.number
        for one in first.made
        for place in getattr(one, "into", ())
        if getattr(place, "role", "") == "foundation"
    }
    sides = {chain in near for chain in used}
    return (len(set(used.values())) - 1) * scale.width_mm if len(sides) > 1 else None
