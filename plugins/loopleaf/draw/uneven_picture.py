"""The picture of rows that don't all go from edge to edge."""

from collections.abc import Iterator, Sequence

from .canvas import Canvas, Point
from .colour import level, shaded
from .in_rows import ROW_LAYERS
from .laid_row import Corner, LaidRow
from .stitchwork import GROUND, Patch, Placed, between, draw_row, straight
from .subject import Subject
from .turned_rows import turned
from .worked_back import draw_leaf_on, goes_on, in_line, leaves_of, standing_out


def draw_unevenly(canvas: Canvas, subject: Subject, rows: Sequence[LaidRow]) -> None:
    """The rows from the first up, their right side to the viewer; turned as far as their wedges turn them."""
    turn = turned(rows, subject)
    if turn is not None:
        rows = [turn.row(row) for row in rows]
    for at, (row, work) in enumerate(zip(rows, subject.piece.rounds, strict=True)):
        placed = [
            Placed(item, _patch(corner), 1.0, work.side == "WS", True)
            for item, corner in zip(row.items, row.corners, strict=True)
        ]
        for item, corner in zip(row.items, row.corners, strict=True):
            if corner.cloth is not None:
                ground = shaded(subject.colours[item.thing.yarn], level(GROUND))
                canvas.fill(ROW_LAYERS * at, ground, [*corner.cloth, *reversed(corner.feet)])
        draw_row(canvas, ROW_LAYERS * at, placed, subject.colours)
        canvas.outline([*_edge(row)])
        tops = {id(item.thing): corner.tops for item, corner in zip(row.items, row.corners, strict=True)}
        for leaf in leaves_of(subject.worked[at]):
            (x, y), (other, also) = tops[id(leaf.on)]
            if goes_on(subject.worked[at]):
                surface = in_line(*((x, y, -1) if work.side != "WS" else (other, also, 1)))
            else:
                surface = standing_out((x + other) / 2, (y + also) / 2)
            draw_leaf_on(canvas, ROW_LAYERS * (len(rows) + 1), leaf, surface, subject.scale, subject.colours)


def _patch(corner: Corner) -> Patch:
    return between(straight(*corner.feet), straight(*corner.tops))


def _edge(row: LaidRow) -> Iterator[Point]:
    """Around a row: along its feet and back along its tops."""
    for corner in row.corners:
        yield from corner.cloth or corner.feet
    for corner in reversed(row.corners):
        yield from reversed(corner.tops)
