"""Corner to corner: which square of the piece each of its blocks fills.

Seen from the right side, the first block lies at the lower left. A row made with that side up stands on
the upper sides of the blocks below it and is worked from the lower right to the upper left. The next one,
turned, stands on their right sides and is worked back down. (From first principles: each block is fastened
into the chains that the block beneath begins with, which go up its last side.)
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .subject import Subject

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


@dataclass(frozen=True, slots=True)
class Frame:
    """A block's square, `side` long: points so far from the edge that it begins at, and so far up its
    stitches.
    """

    block: Block
    side: float

    def at(self, across: float, up: float) -> Point:
        """The point, y up, from the lower left of the first block."""
        x, y = (step * self.side for step in self.block.square)
        if self.block.upright:
            return (x + self.side - across, y + up)
        return (x + up, y + self.side - across)


def blocks_of(subject: Subject) -> list[list[Block]]:
    """The blocks of each row; [] for a piece that isn't made of them. Rows of other stitches that go on from
    the last blocks are left out: its edging.
    """
    if not subject.in_rows:
        return []
    squares: dict[int, Square] = {}
    rows: list[list[Block]] = []
    for at, worked in enumerate(subject.worked):
        groups = list(_groups(worked))
        if not groups or not all(chains.block and stitches for chains, stitches in groups):
            return rows if len(rows) > 1 and all(map(_is_edging, subject.worked[at:])) else []
        upright = at % 2 == 0
        row: list[Block] = []
        for chains, stitches in groups:
            square = _square(stitches[0], squares, rows[-1] if rows else [], upright)
            if square is None or square in squares.values():
                return []
            squares[id(chains)] = square
            row.append(Block(square, chains, stitches, upright))
        rows.append(row)
    return rows


def _is_edging(worked: WorkedRound) -> bool:
    """Whether a row has stitches, and none of them in blocks."""
    blocks = any(isinstance(made, Space) and made.block for made in worked.made)
    return not blocks and any(isinstance(made, Made) and made.number for made in worked.made)


def _groups(worked: WorkedRound) -> Iterator[tuple[Space, list[Made]]]:
    """Chains with the stitches that follow them; what else there is as a group without stitches."""
    found: list[tuple[Space, list[Made]]] = []
    for made in worked.made:
        if isinstance(made, Space):
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
