"""Yarn and time for a whole pattern in one size.

All pieces in all their copies, cords, tails, ends, seams.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ..pattern import Pattern
from .cords import Cord
from .made import Contents
from .tails import END_MM, Tail
from .time import Hours, hours, pace_time, single_equivalents
from .units import Band
from .yarn import ESTIMATE_OFF, YarnNeed, chain_metres, metres_by_yarn, need_of, seam_metres, weighed_amount

if TYPE_CHECKING:
    from .measured import PieceMeasure


def yarn_needed(
    pattern: Pattern,
    pieces: "Sequence[PieceMeasure]",
    cords: Sequence[Cord],
    tails: Sequence[Tail],
    size: int,
) -> tuple[YarnNeed, ...]:
    """What each of the pattern's yarns takes, in the order of the materials.

    Where a piece has no gauge the model says nothing of any yarn; what was weighed is still told.
    """
    yarns = pattern.materials.yarns
    first = next(iter(yarns), "")
    metres: dict[str, dict[str, float]] = {}
    known = all(piece.scale is not None for piece in pieces)
    for piece in pieces if known else ():
        for letter, amount in _piece_metres(pattern, piece, cords, tails, size, first):
            taken = metres.setdefault(letter, {})
            taken[piece.name] = taken.get(piece.name, 0.0) + amount
    needs = []
    for letter, yarn in yarns.items():
        taken = metres.get(letter, {})
        total = sum(taken.values())
        model = Band.about(total, ESTIMATE_OFF) if taken else None
        need = need_of(letter, yarn, model, weighed_amount(yarn, size))
        shares = tuple((name, amount / total) for name, amount in taken.items()) if total else ()
        needs.append(replace(need, shares=shares))
    return tuple(needs)


def _piece_metres(
    pattern: Pattern,
    piece: "PieceMeasure",
    cords: Sequence[Cord],
    tails: Sequence[Tail],
    size: int,
    first: str,
) -> Iterator[tuple[str, float]]:
    own = pattern.pieces[piece.name].yarn or first
    assert piece.scale is not None
    stitches = metres_by_yarn(_all_made(piece, size), piece.scale)
    for yarn, amount in stitches.items():
        yield yarn or own, amount * piece.make
    for yarn, ends in piece.threads[size].ends.items():
        yield yarn, ends * END_MM.middle / 1000 * piece.make
    for cord in cords:
        if cord.piece == piece.name and not cord.worked:
            yield own, chain_metres(cord.length_mm) * piece.make
    for tail in tails:
        if tail.piece == piece.name:
            yield own, tail.length_mm / 1000 * piece.make
    seams_mm = _seams_mm(pattern, piece, size)
    if seams_mm:
        yield list(stitches)[-1] or own if stitches else own, seam_metres(seams_mm)


def _all_made(piece: "PieceMeasure", size: int) -> list[Contents]:
    return [piece.start[size], *(made for made in piece.contents[size] if made is not None)]


def _seams_mm(pattern: Pattern, piece: "PieceMeasure", size: int) -> float:
    """Length of all the seams of pieces laid out and joined.

    0 where there are none or their size isn't known.
    """
    across = piece.size[size].get("across")
    total = 0.0
    for step in pattern.finishing:
        lay = step.lay_out
        if lay is not None and lay.piece == piece.name and across is not None:
            total += (lay.across * (lay.down - 1) + lay.down * (lay.across - 1)) * across.middle
    return total


def time_needed(
    pattern: Pattern, pieces: "Sequence[PieceMeasure]", cords: Sequence[Cord], size: int
) -> Hours:
    """Hours for everything, from the stitches alone.

    A gauge isn't needed, but for seams and cords given by length.
    """
    single_stitches, ends, taken_up, sewn = 0.0, 0, 0, 0.0
    for piece in pieces:
        specials = piece.scale.specials if piece.scale else {}
        single_stitches += single_equivalents(_all_made(piece, size), specials) * piece.make
        ends += sum(piece.threads[size].ends.values()) * piece.make
        taken_up += piece.threads[size].taken_up * piece.make
        if piece.scale is not None:
            single_stitches += _seams_mm(pattern, piece, size) / piece.scale.width_mm
    for cord in cords:
        single_stitches += (cord.chains or 0) * pace_time("chain", {}) * cord.make
    for step in pattern.finishing:
        sewn_piece = next((p for p in pieces if step.sew is not None and p.name == step.sew.piece), None)
        made = [one for one in sewn_piece.contents[size] if one is not None] if sewn_piece else []
        sewn += made[-1].counted if made else 0
    return hours(single_stitches, ends, sewn, taken_up)
