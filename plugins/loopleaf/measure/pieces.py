"""The rounds of one piece in one size: counted over the edges below them, and measured by a scale."""

from collections.abc import Sequence

from ..fabric import PieceWork, WorkedRound
from ..fabric.squares import Block, blocks_in
from .aside import asides
from .blocks import block_sizes
from .gauge import Scale
from .made import Contents, contents
from .size import RoundSize, round_sizes
from .standing import standings


def worked_in(piece: PieceWork, size: int) -> list[WorkedRound | None]:
    """The rounds as that size works them, None where it has no such round."""
    return [round.sizes[size] if size < len(round.sizes) else None for round in piece.rounds]


def counted(piece: PieceWork, size: int) -> tuple[Contents | None, ...]:
    """The rounds of one size, each counted over the edge below it."""
    below = piece.starts[size] if size < len(piece.starts) else []
    found: list[Contents | None] = []
    for one in worked_in(piece, size):
        found.append(None if one is None else contents(one, below))
        below = below if one is None else one.edge
    return tuple(found)


def sizes_of(
    piece: PieceWork, size: int, made: Sequence[Contents | None], scale: Scale, in_rounds: bool
) -> tuple[RoundSize | None, ...]:
    """The rounds of one size, measured. made: as `counted`."""
    labels, worked = [round.plan.label for round in piece.rounds], worked_in(piece, size)
    blocks = [] if in_rounds else blocks_of(worked)
    if blocks:
        return block_sizes(labels, [one for one in made if one is not None], blocks, scale)
    along = () if in_rounds else asides(piece, worked, size)
    return round_sizes(labels, made, scale, standings(worked, made, in_rounds), along)


def blocks_of(rows: Sequence[WorkedRound | None]) -> list[list[Block]]:
    """The blocks of each row of a piece worked corner to corner; [] for others."""
    known = [one for one in rows if one is not None]
    return blocks_in(known) if len(known) == len(rows) else []
