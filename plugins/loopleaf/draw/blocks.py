"""Corner to corner: the blocks of a piece, and a block's square as a frame to draw in."""

from dataclasses import dataclass

from ..fabric.squares import Block, blocks_in
from .canvas import Point
from .subject import Subject


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
    """The blocks of each row; [] for a piece that isn't wholly made of them."""
    return blocks_in(subject.worked) if subject.in_rows else []
