"""The picture of a piece, computed from its stitches: standing or lying, with what is sewn on."""

from collections.abc import Iterator
from dataclasses import replace
from html import escape

from ..fabric import PatternWork
from ..measure import Measured, measure
from .additions import draw_additions
from .along_side import parted, side_edge
from .assembled import draw_assembled, is_assembled
from .border import borders_of
from .canvas import THINNEST, Box, Canvas, svg
from .colour import outline_of
from .cord import cord_of, draw_cord
from .fringe import draw_fringe, draw_pompon
from .from_middle import sheet_of
from .garland import band_of, draw_garland
from .in_blocks import draw_blocks
from .in_rows import ROW_LAYERS, Lay, draw_rows
from .in_the_round import draw_rounds
from .items import Item
from .leaf import draw_leaf
from .marks import draw_marks
from .mitre import mitre_of
from .nets import as_hung
from .parts_on_rows import with_parts
from .pose import worn
from .profile import over_a_head
from .ruffle import gathered_in, ruffled
from .section import Rectangle
from .sheet import Edging, Sheet
from .stand import Stand, is_leaf, stand_of
from .straps import draw_straps
from .subject import Subject, main_colour, subject_of
from .trimmings import fringe_of, pompon_of
from .tubes import draw_tubes
from .uneven_picture import draw_unevenly
from .uneven_rows import laid_unevenly
from .wave import wave_of
from .yoke import yoke_of

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
        garland = band_of(subject, measured)
        if garland is not None:
            body, box = draw_garland(garland, measured, HAIRLINE, _mark(work, "garland"))
            return _finished(body, box, work.pattern.title, left_handed)
        canvas = Canvas()
        if subject.in_rows:
            _draw_flat(canvas, subject, measured)
        elif is_leaf(subject):
            draw_leaf(canvas, subject)
        elif is_assembled(subject, measured):
            draw_assembled(canvas, subject, measured, HAIRLINE * max(s.height_mm for s in subject.sizes))
        else:
            stand, rounds = _standing(subject)
            draw_rounds(canvas, stand, subject, rounds)
            draw_marks(canvas, stand, subject, rounds)
            draw_tubes(
                canvas, subject, stand, rounds, measured, HAIRLINE * max(s.height_mm for s in subject.sizes)
            )
            draw_additions(canvas, subject, stand, rounds, measured)
            draw_straps(
                canvas, subject, stand, rounds, measured, HAIRLINE * max(s.height_mm for s in subject.sizes)
            )
            if (pompon := pompon_of(work.pattern)) is not None:
                draw_pompon(canvas, stand, subject, pompon)
        body, box = _laid_out(work, piece.name, *_body(canvas, subject, "whole"))
        for border in (*_own_border(subject), *borders_of(work, piece.name, measured)):
            body, box = _bordered(border, body, box)
        return _finished(body, box, work.pattern.title, left_handed)
    cords = (piece_picture(work, piece.name, measured, left_handed) for piece in work.pieces)
    return next((cord for cord in cords if cord), "")


def piece_picture(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> str:
    """One piece on its own, as SVG in mm; "" where it has no rounds and is no cord."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    canvas = Canvas()
    if subject is None:
        cord = cord_of(work, name, measured)
        if cord is None:
            return ""
        draw_cord(canvas, cord)
        body = canvas.body(outline_of(cord.colour), 0.0, _mark(work, name), canvas.box)
        return _finished(body, canvas.box, work.pattern.pieces[name].title or name, left_handed)
    if subject.in_rows:
        _draw_flat(canvas, subject)
    elif is_leaf(subject):
        draw_leaf(canvas, subject)
    else:
        stand, rounds = _standing(subject)
        draw_rounds(canvas, stand, subject, rounds)
    title = work.pattern.pieces[name].title or name
    body, box = _body(canvas, subject, name)
    for border in _own_border(subject):
        body, box = _bordered(border, body, box)
    return _finished(body, box, title, left_handed)


def _own_border(subject: Subject) -> Iterator[Subject]:
    """The last rows of a piece, where they go all around the others."""
    last = parted(subject)[1] if subject.in_rows else None
    if last is not None and last.whole is not None:
        yield last


def _standing(subject: Subject) -> tuple[Stand, list[list[Item]]]:
    """As it stands or lies; what fits a head as it is worn."""
    stand, rounds = stand_of(subject)
    if stand.from_above or "head" not in subject.work.pattern.to_fit:
        return stand, rounds
    return worn(stand, over_a_head(subject.sizes, stand.section, stand.rings[0].out0)), rounds


def _draw_flat(canvas: Canvas, subject: Subject, measured: Measured | None = None) -> None:
    """A piece in rows; with what is worked onto its stitches and row ends, where the measures are given."""
    if draw_blocks(canvas, subject):
        return
    rows, aside = parted(as_hung(subject))
    sheet = _sheet(rows)
    mitre = mitre_of(rows) if aside is None else None
    cloth = with_parts(subject, rows, measured) if measured is not None else rows
    uneven = laid_unevenly(cloth) if not sheet.arc and not sheet.wave.knots else None
    gathered = (ruffled(rows, sheet) or gathered_in(rows, sheet)) if uneven is None else None
    yoke = yoke_of(rows) if aside is None else None
    if mitre is not None:
        draw_rows(canvas, rows, mitre)
    elif yoke is not None:
        draw_rows(canvas, rows, yoke)
    elif gathered is not None:
        draw_rows(canvas, *gathered)
    elif uneven is not None:
        draw_unevenly(canvas, cloth, uneven)
    else:
        draw_rows(canvas, rows, sheet)
    fringe = fringe_of(subject.work.pattern) if measured is not None and aside is None else None
    if fringe is not None and mitre is None and uneven is None:
        draw_fringe(canvas, rows, gathered[1] if gathered is not None else sheet, fringe)
    if aside is not None and aside.whole is None:
        draw_rows(canvas, aside, side_edge(sheet, rows, aside), ROW_LAYERS * len(rows.sizes))
    for at, (band, end) in enumerate(_bands(rows, sheet, measured) if measured is not None else ()):
        draw_rows(canvas, band, end, ROW_LAYERS * (at + 1) * len(subject.sizes))


def _sheet(subject: Subject) -> Sheet:
    return replace(sheet_of(subject), wave=wave_of(subject))


def _finished(body: str, box: Box, title: str, left_handed: bool) -> str:
    if left_handed:
        body = f'<g transform="scale(-1 1)">{body}</g>'
        box = (-box[2], box[1], -box[0], box[3])
    return svg(body, box, f"{title}, drawn from its stitches", MARGIN_MM)


def _body(canvas: Canvas, subject: Subject, name: str) -> tuple[str, Box]:
    """The drawing and its box; rows that are alike are drawn once under a name that no other drawing of the
    page has.
    """
    left, top, right, bottom = box = canvas.box
    width = HAIRLINE * max(right - left, bottom - top)
    thin = THINNEST * max(right - left, bottom - top)
    return canvas.body(outline_of(main_colour(subject)), width, _mark(subject.work, name), box, thin), box


def _mark(work: PatternWork, name: str) -> str:
    return escape("-".join(f"{work.pattern.title} {name}".lower().split()), quote=True)


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


def _laid_out(work: PatternWork, name: str, body: str, box: Box) -> tuple[str, Box]:
    """The drawing once, or as often as the finishing lays the piece out."""
    for step in work.pattern.finishing:
        lay = step.lay_out
        if lay is None or lay.piece != name:
            continue
        width, height = box[2] - box[0], box[3] - box[1]
        mark = _mark(work, name)
        uses = "".join(
            f'<use href="#{mark}" x="{across * width:.2f}" y="{down * height:.2f}"/>'
            for down in range(lay.down)
            for across in range(lay.across)
        )
        whole = (box[0], box[1], box[0] + lay.across * width, box[1] + lay.down * height)
        return f'<defs><g id="{mark}">{body}</g></defs>{uses}', whole
    return body, box


def _bordered(border: Subject, body: str, box: Box) -> tuple[str, Box]:
    """Pieces laid out, with the border around them that lies beneath their edges."""
    left, top, right, bottom = box
    stand, rounds = stand_of(border)
    canvas = Canvas()
    around = Rectangle(wide=right - left, high=bottom - top)
    draw_rounds(canvas, replace(stand, section=around), border, rounds)
    frame, reach = _body(canvas, border, border.piece.name)
    x, y = (left + right) / 2, (top + bottom) / 2
    whole = (x + reach[0], y + reach[1], x + reach[2], y + reach[3])
    return f'<g transform="translate({x:.2f} {y:.2f})">{frame}</g>{body}', whole
