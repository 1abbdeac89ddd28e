"""A piece worked corner to corner: so many blocks wide and high.

Neighbouring blocks stand at right angles to each other, like the squares of a chessboard: along each side
of the piece one lies with its stitches side by side, the next with its stitches' height. So a block's side
is the mean of the two (derived). The chain that it begins with goes up its edge, at the most as wide as one
stitch more.
"""

from collections.abc import Sequence
from itertools import accumulate

from ..fabric.squares import Block
from .gauge import Scale
from .made import Contents
from .size import RoundSize
from .units import Band

_CHAIN_WIDE = 0.5
"""Of a stitch's width: the middle between a chain that takes no room and one as wide as a stitch."""


def stitch_width(block: Block, side_mm: float, ratio: float) -> float:
    """Width in mm of the stitches of a block with so long a side. ratio: their height over their width."""
    return 2 * side_mm / (len(block.stitches) + _CHAIN_WIDE + ratio)


def block_band(block: Block, scale: Scale) -> Band:
    """A block's side in mm."""
    wide = sum(scale.width_of(made.kind, made.post) for made in block.stitches)
    heights = [scale.height_band(made.kind, made.post) for made in block.stitches]
    low = wide * (1 - scale.width_off) + sum(one.low for one in heights) / len(heights)
    high = (wide + scale.width_mm) * (1 + scale.width_off) + sum(one.high for one in heights) / len(heights)
    return Band(low / 2, high / 2)


def block_sizes(
    labels: Sequence[str], made: Sequence[Contents], rows: Sequence[Sequence[Block]], scale: Scale
) -> tuple[RoundSize, ...]:
    """The rows of a piece in one size: how wide and how high the work is by then."""
    side = block_band(rows[0][0], scale)
    wide = list(accumulate((max(block.square[0] + 1 for block in row) for row in rows), max))
    high = list(accumulate((max(block.square[1] + 1 for block in row) for row in rows), max))
    sizes = []
    for at, (label, one) in enumerate(zip(labels, made, strict=True)):
        rises = high[at] - (high[at - 1] if at else 0)
        width, height = side * wide[at], side * high[at]
        sizes.append(
            RoundSize(
                label,
                width.middle,
                width,
                side.middle * rises,
                height.middle,
                height,
                one.counted,
                corners=0,
                blocks=(wide[at], high[at]),
            )
        )
    return tuple(sizes)
