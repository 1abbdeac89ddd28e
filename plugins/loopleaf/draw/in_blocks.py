"""The picture of a piece worked corner to corner, laid flat: its blocks in their squares."""

from collections.abc import Iterator, Sequence

from ..fabric.squares import Block
from .blocks import Frame, blocks_of
from .canvas import Canvas, Point
from .hem import Hem, Way, stitches_of, ways
from .in_rows import ROW_LAYERS
from .items import Item
from .signing import between
from .stitchwork import Patch, Placed, draw_row
from .subject import Subject

SUNK = 0.4
"""An edging pulls the corners of the blocks that it goes along so much of a block's side into line."""

CHAINS_SHARE, MIDDLE = 0.14, 0.45
"""A block's chains take so much of its width; their middle lies so far in."""


def draw_blocks(canvas: Canvas, subject: Subject) -> bool:
    """The blocks, row by row, their right side to the viewer; False for a piece that isn't made of them."""
    rows = blocks_of(subject)
    sides = [
        max(
            len(block.stitches) * subject.scale.width_mm,
            *(subject.scale.height_of(made.kind, made.post) for made in block.stitches),
        )
        for row in rows
        for block in row
    ]
    for at, row in enumerate(rows):
        for block in row:
            frame = Frame(block, max(sides))
            draw_row(canvas, ROW_LAYERS * at, _stitches(frame), subject.colours)
            draw_row(canvas, ROW_LAYERS * len(rows), [_chains(frame)], subject.colours)
            canvas.outline(
                [frame.at(x * frame.side, y * frame.side) for x, y in ((0, 0), (1, 0), (1, 1), (0, 1))]
            )
    if rows and len(rows) < len(subject.worked):
        _draw_edging(canvas, subject, rows, max(sides))
    return bool(rows)


def _draw_edging(canvas: Canvas, subject: Subject, rows: Sequence[Sequence[Block]], side: float) -> None:
    done = len(rows)
    hems = [
        Hem(stitches_of(worked), size.rise_mm, 0.0, work.side != "WS")
        for work, worked, size in zip(
            subject.piece.rounds[done:], subject.worked[done:], subject.sizes[done:], strict=True
        )
    ]
    for at, (hem, (lower, upper)) in enumerate(zip(hems, ways(rows, side, hems, SUNK * side), strict=True)):
        step = 1 / len(hem.things)
        placed = [
            Placed(Item(thing, start, start + step, (start, start + step)), patch, 1.0, not hem.right, True)
            for start, thing in ((number * step, thing) for number, thing in enumerate(hem.things))
            for patch in (_between(lower, upper, start, step),)
        ]
        draw_row(canvas, ROW_LAYERS * (done + 1 + at), placed, subject.colours)
        canvas.outline(
            [way.at(i / 40) for way, steps in ((lower, range(41)), (upper, range(40, -1, -1))) for i in steps]
        )


def _between(lower: Way, upper: Way, start: float, step: float) -> Patch:
    return lambda across, up: between(lower.at(start + step * across), upper.at(start + step * across), up)


def _chains(frame: Frame) -> Placed:
    """A block's chains along its side, over the feet of the block that is fastened into them."""

    def lying(across: float, up: float) -> Point:
        return frame.at((MIDDLE + 0.9 - up) * CHAINS_SHARE * frame.side, (0.1 + 0.8 * across) * frame.side)

    item = Item(frame.block.chains, 0.0, CHAINS_SHARE)
    return Placed(item, lying, 1.0, not frame.block.upright, True)


def _stitches(frame: Frame) -> Iterator[Placed]:
    """A block's stitches; the wrong side of those that point to the right."""
    many = len(frame.block.stitches)

    def standing(start: float, end: float) -> Patch:
        return lambda across, up: frame.at((start + (end - start) * across) * frame.side, up * frame.side)

    for at, made in enumerate(frame.block.stitches):
        start, end = (CHAINS_SHARE + (1 - CHAINS_SHARE) * share / many for share in (at, at + 1))
        item = Item(made, start, end, (start, end))
        yield Placed(item, standing(start, end), 1.0, not frame.block.upright, True)
