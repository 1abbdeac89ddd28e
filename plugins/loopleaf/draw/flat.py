"""A piece in rows laid flat, in the picture: with what is worked onto its stitches and its row ends."""

from collections.abc import Iterator
from dataclasses import replace

from ..measure import Measured
from .along_side import parted, side_edge
from .begun_on import Bent, Surface, Upright, begun_on, lay_on
from .canvas import Canvas
from .fringe import draw_fringe
from .from_middle import sheet_of
from .in_blocks import draw_blocks
from .in_rows import ROW_LAYERS, Lay, draw_rows
from .items import items_of_rows
from .laid_row import LaidRow
from .mitre import mitre_of
from .nets import as_hung
from .parts_on_rows import with_parts
from .ruffle import gathered_in, ruffled
from .sheet import Edging, Sheet
from .subject import Subject, subject_of
from .trimmings import fringe_of
from .uneven_picture import draw_unevenly
from .uneven_rows import laid_unevenly
from .wave import wave_of
from .yoke import yoke_of


def draw_flat(
    canvas: Canvas, subject: Subject, measured: Measured | None, shown: set[str], straight: bool = False
) -> None:
    """A piece in rows; with what is worked onto its stitches and row ends, where the measures are given.

    shown: the names of those pieces are added. straight: its rows are, as on an edge that they begin at.
    """
    if draw_blocks(canvas, subject):
        return
    rows, aside = parted(as_hung(subject))
    sheet = _sheet(rows, straight)
    mitre = mitre_of(rows) if aside is None else None
    standing: list[str] = []
    cloth = with_parts(subject, rows, measured, standing) if measured is not None else rows
    uneven = laid_unevenly(cloth) if not sheet.arc and not sheet.wave.knots else None
    gathered = (ruffled(rows, sheet) or gathered_in(rows, sheet)) if uneven is None else None
    yoke = yoke_of(rows) if aside is None else None
    lay: Lay = sheet
    if mitre is not None:
        lay, uneven = mitre, None
    elif yoke is not None:
        lay, uneven = yoke, None
    elif gathered is not None:
        (rows, lay), uneven = gathered, None
    if uneven is not None:
        draw_unevenly(canvas, cloth, uneven)
        shown.update(standing)
    else:
        draw_rows(canvas, rows, lay)
    fringe = fringe_of(subject.work.pattern) if measured is not None and aside is None else None
    if fringe is not None and mitre is None and uneven is None:
        draw_fringe(canvas, rows, gathered[1] if gathered is not None else sheet, fringe)
    if aside is not None and aside.whole is None:
        draw_rows(canvas, aside, side_edge(sheet, rows, aside), ROW_LAYERS * len(rows.sizes))
    if measured is None:
        return
    for at, (band, end) in enumerate(_bands(rows, sheet, measured)):
        draw_rows(canvas, band, end, ROW_LAYERS * (at + 1) * len(subject.sizes))
        shown.add(band.piece.name)
        _draw_parts(canvas, band, end, None, measured, shown)
    _draw_parts(canvas, rows, lay, uneven, measured, shown)


def _sheet(subject: Subject, straight: bool) -> Sheet:
    sheet = replace(sheet_of(subject), wave=wave_of(subject))
    return Sheet(0.0, 0.0, sheet.wave) if straight else sheet


def _draw_parts(
    canvas: Canvas, rows: Subject, lay: Lay, uneven: list[LaidRow] | None, measured: Measured, shown: set[str]
) -> None:
    """The pieces in rows that begin on a piece's stitches and aren't one cloth with it."""
    mirrored = [work.side != "WS" for work in rows.piece.rounds]
    start = rows.piece.starts[0] if rows.piece.starts else []
    items = items_of_rows(rows.worked, mirrored, rows.scale, start)
    for begun in begun_on(rows, items, measured):
        if begun.part.piece.name in shown:
            continue
        surface: Surface
        if uneven is not None:
            surface = Upright(*_on_laid(uneven[begun.at], begun.along))
        else:
            high = sum(size.rise_mm for size in rows.sizes[: begun.at + 1])
            surface = Bent(lay, rows.sizes[begun.at].length_mm, begun.along, high)
        draw_on(canvas, begun.part, surface, measured, shown)


def draw_on(canvas: Canvas, part: Subject, surface: Surface, measured: Measured, shown: set[str]) -> None:
    """A piece in rows, with all that begins on it, on what it begins on; and so in the picture."""
    own = Canvas()
    shown.add(part.piece.name)
    draw_flat(own, part, measured, shown, straight=True)
    lay_on(canvas, own, surface, part)


def _on_laid(row: LaidRow, along: float) -> tuple[float, float]:
    """A place at the top of a row, so far along it."""
    x = row.left + along * (row.right - row.left)
    tops = [corner.tops for corner in row.corners]
    (left, low), (right, high) = min(tops, key=lambda top: abs((top[0][0] + top[1][0]) / 2 - x))
    return x, low + (high - low) * (x - left) / ((right - left) or 1.0)


def _bands(subject: Subject, sheet: Lay, measured: Measured) -> Iterator[tuple[Subject, Edging]]:
    """The pieces worked onto the row ends of this one, turn by turn at its left and its right end, each with
    those on its own row ends.
    """
    first, last = subject.sizes[0], subject.sizes[-1]
    inner = [sheet.point(first.length_mm, along, 0.0) for along in (0.0, 1.0)]
    outer = [sheet.point(last.length_mm, along, last.height_mm) for along in (0.0, 1.0)]
    ends = (Edging(inner[0], outer[0]), Edging(outer[1], inner[1]))
    side = 0
    for piece in subject.work.pieces:
        own = subject.work.pattern.pieces[piece.name]
        start = own.start
        if start is None or start.edge != subject.piece.name or not start.row_ends:
            continue
        band = subject_of(subject.work, piece, measured)
        if band is None or not band.in_rows:
            continue
        for number in range(own.make):
            yield band, ends[side % 2]
            if not number:
                yield from _bands(band, ends[side % 2], measured)
            side += 1
