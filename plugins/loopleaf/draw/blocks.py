"""Corner to corner: the blocks of a piece, and a block's square as a frame to draw in."""

from dataclasses import dataclass
from itertools import takewhile

from ..fabric import Made, Space, WorkedRound
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
    """The blocks of each row; [] for a piece that isn't made of them. Rows of other stitches that go on from
    the last blocks are left out: its edging.
    """
    if not subject.in_rows:
        return []
    edging = sum(1 for _ in takewhile(_is_edging, reversed(subject.worked)))
    rows = blocks_in(subject.worked[: len(subject.worked) - edging])
    return rows if len(rows) > 1 or not edging else []


def _is_edging(worked: WorkedRound) -> bool:
    """Whether a row has stitches, and none of them in blocks."""
    blocks = any(isinstance(made, Space) and made.block for made in worked.made)
    return not blocks and any(isinstance(made, Made) and made.number for made in worked.made)
