"""Pieces laid out in rows and joined: how large the whole is, with what is worked around it."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ..fabric.laid_out import laid_out_steps
from ..pattern import Pattern
from .finished import What
from .units import NOTHING, Band

if TYPE_CHECKING:
    from .measured import PieceMeasure


def is_around_laid_out(pattern: Pattern, piece: str) -> bool:
    """Whether a piece is a border around others laid out: how it lies, and its size, is the whole's."""
    start = pattern.pieces[piece].start
    return start is not None and start.laid_out


def laid_out_size(pattern: Pattern, pieces: "Sequence[PieceMeasure]") -> dict[What, Band] | None:
    """The first piece of known size that is laid out in rows and joined, and its border.

    A seam adds nothing, or one row of single crochet; so does an edge whose border the pattern doesn't tell
    as a piece of its own.
    """
    steps = laid_out_steps(pattern)
    for piece in pieces:
        step = steps.get(piece.name)
        across = piece.size[0].get("across") if piece.size else None
        if piece.scale is None or across is None or step is None:
            continue
        seam = Band(0.0, piece.scale.height_of("single"))
        edges = (_border(pattern, pieces, piece.name) or seam) * 2
        return {
            "width": across * step.across + seam * (step.across - 1) + edges,
            "length": across * step.down + seam * (step.down - 1) + edges,
        }
    return None


def with_the_whole(
    pattern: Pattern, pieces: "Sequence[PieceMeasure]", whole: Mapping[What, Band] | None
) -> "tuple[PieceMeasure, ...]":
    """The pieces, their borders as wide and as long as the whole that they go around."""
    return tuple(
        replace(piece, size=tuple({**size, **(whole or {})} for size in piece.size))
        if is_around_laid_out(pattern, piece.name)
        else piece
        for piece in pieces
    )


def _border(pattern: Pattern, pieces: "Sequence[PieceMeasure]", within: str) -> Band | None:
    """How wide all that is worked around a piece laid out is; None without any."""
    total: Band | None = None
    for piece in pieces:
        start = pattern.pieces[piece.name].start
        if start is not None and start.laid_out and start.edge == within and piece.rounds:
            total = sum((one.height for one in piece.known_rounds(0)[-1:]), total or NOTHING)
    return total
