"""How big the work should be by now, where its shaping ends, so that a wrong gauge shows before the end.

Across is around ÷ π; a polygon is told from side to side and from corner to corner (stacked increases make
one, but for heptagon and octagon, whose two ways differ by less than the gauge tells), an oval by its length
and its width. Only where the growing rounds are plain: lace is blocked to its size, and layers lie on one
another, so they say nothing before.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from ..fabric.worked import PieceWork
from .finished import oval_chain_mm
from .gauge import Scale
from .made import Contents
from .polygon import across_a_side, corners_of, diagonal_across
from .shape import Stretch
from .size import RoundSize

What = Literal["across", "around", "width", "oval", "polygon"]
_AT_LEAST = 3
"""Rounds after which a size is worth measuring (chosen here): before, half a stitch decides."""
_TWO_WAYS: tuple[What, ...] = ("oval", "polygon")
_STACKED_AT_MOST = 6
"""Corners of pairs: an octagon's two ways lie within 5 % of a circle's (geometry), a hexagon's don't."""


@dataclass(frozen=True, slots=True)
class Checkpoint:
    """What a piece should measure when a round is done, in mm, one a size; None for a size that isn't there.

    across: a flat base; around: work that bends; width: rows; oval: how long, with `wide_mm` how wide;
    polygon: from side to side, with `wide_mm` from corner to corner.
    """

    piece: str
    label: str
    what: What
    length_mm: tuple[float | None, ...]
    wide_mm: tuple[float | None, ...] = ()


@dataclass(frozen=True, slots=True)
class _Here:
    label: str
    what: What
    length_mm: float
    wide_mm: float | None


def checkpoints(
    work: PieceWork,
    in_rounds: bool,
    scale: Scale | None,
    rounds: Sequence[Sequence[RoundSize | None]],
    shape: Sequence[Sequence[Stretch]],
    contents: Sequence[Sequence[Contents | None]],
) -> tuple[Checkpoint, ...]:
    """The checkpoints of a piece: one, where its first shaping ends; with sizes, one a round that ends it.

    rounds, shape, contents: one a size, as in `PieceMeasure`. () where nothing is shaped, or without a gauge.
    """
    if scale is None:
        return ()
    found = [
        _end_of_shaping(work, size, in_rounds, scale, rounds[size], shape[size], contents[size])
        for size in range(len(rounds))
    ]
    told = dict.fromkeys((one.label, one.what) for one in found if one is not None)
    return tuple(
        Checkpoint(
            work.name,
            label,
            what,
            tuple(one.length_mm if one and (one.label, one.what) == (label, what) else None for one in found),
            tuple(one.wide_mm if one and one.label == label else None for one in found)
            if what in _TWO_WAYS
            else (),
        )
        for label, what in told
    )


def _end_of_shaping(
    work: PieceWork,
    size: int,
    in_rounds: bool,
    scale: Scale,
    rounds: Sequence[RoundSize | None],
    shape: Sequence[Stretch],
    contents: Sequence[Contents | None],
) -> _Here | None:
    known = [
        (one, made)
        for one, made in zip(rounds, contents, strict=True)
        if one is not None and made is not None
    ]
    if known and known[0][0].blocks:
        return _end_of_blocks([one for one, _ in known])
    for at in range(_AT_LEAST - 1, len(known) - 1):
        before, here, after = (known[index][0].stitches for index in (at - 1, at, at + 1))
        further = known[at + 2][0].stitches if at + 2 < len(known) else here
        if before == here or not here == after == further:
            continue
        if any(made.gaps for _, made in known[: at + 1]) or any(one.on for one, _ in known[: at + 2]):
            return None
        one = known[at][0]
        if not in_rounds:
            return _Here(one.label, "width", one.length_mm, None)
        if not _flat(shape, [known[index][0].label for index in range(at + 1)]):
            return _Here(one.label, "around", one.length_mm, None)
        chain_mm = oval_chain_mm(work, size, scale)
        if chain_mm is not None:
            return _Here(one.label, "oval", 2 * one.height_mm + chain_mm, 2 * one.height_mm)
        corners = corners_of([grown for grown, _ in known[: at + 1]])
        corners = corners or (one.stacked if one.stacked <= _STACKED_AT_MOST else 0)
        if corners:
            across_mm = one.length_mm / corners * across_a_side(corners)
            return _Here(one.label, "polygon", across_mm, across_mm * diagonal_across(corners))
        return _Here(one.label, "across", one.length_mm / math.pi, None)
    return None


def _end_of_blocks(rows: Sequence[RoundSize]) -> _Here | None:
    """The last row of a piece worked corner to corner that makes it both wider and higher."""
    for one, after in pairwise(rows):
        sides = zip(one.blocks or (), after.blocks or (), strict=True)
        if not all(later > now for now, later in sides):
            return _Here(one.label, "width", one.length_mm, None)
    return None


def _flat(shape: Sequence[Stretch], labels: Sequence[str]) -> bool:
    """Whether all these rounds lie in the flat base that the piece begins with."""
    first = shape[0] if shape else None
    return (
        first is not None and first.form == "flat" and first.first == labels[0] and first.last == labels[-1]
    )
