"""Corner to corner: which square of the piece each of its blocks fills.

Seen from the right side, the first block lies at the lower left. A row made with that side up stands on
the upper sides of the blocks below it and is worked from the lower right to the upper left. The next one,
turned, stands on their right sides and is worked back down. (From first principles: each block is fastened
into the chains that the block beneath begins with, which go up its last side.)
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .worked import Made, Space, WorkedRound

Square = tuple[int, int]
"""How many blocks to the right of the first, and above it."""


@dataclass(frozen=True, slots=True)
class Block:
    """chains: its side; stitches: in the order made. upright: they point upwards, else to the right. own: it
    stands on chains of its own, at the piece's edge.
    """

    square: Square
    chains: Space
    stitches: Sequence[Made]
    upright: bool

    @property
    def own(self) -> bool:
        """Whether it stands on a chain of its own, at the edge of the piece."""
        return not any(isinstance(place, Space) for place in self.stitches[0].into)


def blocks_in(rows: Sequence[WorkedRound]) -> list[list[Block]]:
    """The blocks of each row; [] for rows that aren't wholly made of them."""
    squares: dict[int, Square] = {}
    found: list[list[Block]] = []
    for at, worked in enumerate(rows):
        groups = list(_groups(worked))
        if not groups or not all(chains.block and stitches for chains, stitches in groups):
            return []
        upright = at % 2 == 0
        row: list[Block] = []
        for chains, stitches in groups:
            square = _square(stitches[0], squares, found[-1] if found else [], upright)
            if square is None or square in squares.values():
                return []
            squares[id(chains)] = square
            row.append(Block(square, chains, stitches, upright))
        found.append(row)
    return found


def _groups(worked: WorkedRound) -> Iterator[tuple[Space, list[Made]]]:
    """Chains with the stitches that follow them; what else there is as a group without stitches."""
    found: list[tuple[Space, list[Made]]] = []
    for made in worked.made:
        if isinstance(made, Space):
            if not made.block:
                return
            found.append((made, []))
        elif made.number and found:
            found[-1][1].append(made)
        elif made.role != "travel":
            return
    yield from found


def _square(first: Made, squares: dict[int, Square], below: Sequence[Block], upright: bool) -> Square | None:
    """The square on from the one that a block's first stitch stands on; on from the last block of the row
    below, where it stands on chains of its own.
    """
    if not first.into:
        return None
    place = first.into[0]
    if isinstance(place, Space):
        if id(place) not in squares:
            return None
        x, y = squares[id(place)]
        return (x, y + 1) if upright else (x + 1, y)
    if not below:
        return (0, 0)
    x, y = below[-1].square
    return (x + 1, y) if upright else (x, y + 1)
