"""The picture of a piece, computed from its stitches: standing or lying, with what is sewn on."""

from collections.abc import Iterator
from html import escape

from ..fabric import PatternWork
from ..measure import Measured, measure
from .additions import draw_additions
from .canvas import Box, Canvas, svg
from .colour import outline_of
from .in_rows import ROW_LAYERS, Edging, Sheet, draw_rows, sheet_for
from .in_the_round import draw_rounds
from .stand import stand_of
from .subject import Subject, main_colour, subject_of

HAIRLINE = 0.005
"""Width of the outline as a share of the drawing's longer side."""

MARGIN_MM = 2.0


def first_picture(work: PatternWork, measured: Measured | None = None, left_handed: bool = False) -> str:
    """The first piece that has rounds, finished as far as the pattern says, as SVG in mm.

    left_handed: as a left-hander's comes out, the mirror image. "" where nothing is worked.
    """
    measured = measured or measure(work)
    for piece in work.pieces:
        subject = subject_of(work, piece, measured)
        if subject is None:
            continue
        canvas = Canvas()
        if subject.in_rows:
            sheet = sheet_for(subject.sizes)
            draw_rows(canvas, subject, sheet)
            for at, (band, end) in enumerate(_bands(subject, sheet, measured)):
                draw_rows(canvas, band, end, ROW_LAYERS * (at + 1) * len(subject.sizes))
        else:
            stand, rounds = stand_of(subject)
            draw_rounds(canvas, stand, subject, rounds)
            draw_additions(canvas, subject, stand, rounds, measured)
        body, box = _laid_out(work, piece.name, _body(canvas, subject), canvas.box)
        return _finished(body, box, work.pattern.title, left_handed)
    return ""


def piece_picture(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> str:
    """One piece on its own, as SVG in mm; "" where it has no rounds."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    if subject is None:
        return ""
    canvas = Canvas()
    if subject.in_rows:
        draw_rows(canvas, subject, sheet_for(subject.sizes))
    else:
        stand, rounds = stand_of(subject)
        draw_rounds(canvas, stand, subject, rounds)
    title = work.pattern.pieces[name].title or name
    return _finished(_body(canvas, subject), canvas.box, title, left_handed)


def _finished(body: str, box: Box, title: str, left_handed: bool) -> str:
    if left_handed:
        body = f'<g transform="scale(-1 1)">{body}</g>'
        box = (-box[2], box[1], -box[0], box[3])
    return svg(body, box, f"{title}, drawn from its stitches", MARGIN_MM)


def _body(canvas: Canvas, subject: Subject) -> str:
    left, top, right, bottom = canvas.box
    return canvas.body(outline_of(main_colour(subject)), HAIRLINE * max(right - left, bottom - top))


def _bands(subject: Subject, sheet: Sheet, measured: Measured) -> Iterator[tuple[Subject, Edging]]:
    """The pieces worked onto the row ends of this one, turn by turn at its left and its right end."""
    first, last = subject.sizes[0], subject.sizes[-1]
    inner = [sheet.point(first.length_mm, along, 0.0) for along in (0.0, 1.0)]
    outer = [sheet.point(last.length_mm, along, last.height_mm) for along in (0.0, 1.0)]
    ends = (Edging(inner[0], outer[0]), Edging(outer[1], inner[1]))
    side = 0
    for piece in subject.work.pieces:
        start = subject.work.pattern.pieces[piece.name].start
        if start is None or start.edge != subject.piece.name or not start.row_ends:
            continue
        band = subject_of(subject.work, piece, measured)
        if band is not None and band.in_rows:
            yield band, ends[side % 2]
            side += 1


def _laid_out(work: PatternWork, name: str, body: str, box: Box) -> tuple[str, Box]:
    """The drawing once, or as often as the finishing lays the piece out."""
    for step in work.pattern.finishing:
        lay = step.lay_out
        if lay is None or lay.piece != name:
            continue
        width, height = box[2] - box[0], box[3] - box[1]
        mark = escape(f"{work.pattern.title}-{name}".lower().replace(" ", "-"), quote=True)
        uses = "".join(
            f'<use href="#{mark}" x="{across * width:.2f}" y="{down * height:.2f}"/>'
            for down in range(lay.down)
            for across in range(lay.across)
        )
        whole = (box[0], box[1], box[0] + lay.across * width, box[1] + lay.down * height)
        return f'<defs><g id="{mark}">{body}</g></defs>{uses}', whole
    return body, box
