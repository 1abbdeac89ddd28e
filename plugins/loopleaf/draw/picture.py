"""The picture of a piece, computed from its stitches: standing or lying, with what is sewn on."""

from collections.abc import Iterator
from dataclasses import replace
from html import escape

from ..fabric import PatternWork
from ..measure import Measured, measure
from .additions import draw_additions
from .along_side import parted
from .assembled import draw_assembled, is_assembled
from .border import borders_of
from .canvas import THINNEST, Box, Canvas, svg
from .colour import outline_of
from .cord import cord_of, draw_cord
from .flaps import draw_flaps
from .flat import draw_flat
from .fringe import draw_pompon
from .garland import band_of, draw_garland
from .in_the_round import draw_rounds
from .items import Item
from .leaf import draw_leaf
from .marks import draw_marks
from .pose import worn
from .profile import over_a_head
from .section import Rectangle
from .stand import Stand, is_leaf, stand_of
from .straps import draw_straps
from .subject import Subject, main_colour, subject_of
from .trimmings import pompon_of
from .tubes import draw_tubes
from .went_on import went_on

HAIRLINE = 0.005
"""Width of the outline as a share of the drawing's longer side."""

MARGIN_MM = 2.0

APART = 0.08
"""A piece that is drawn beside the one that it begins on is so far from it, as a share of its longer side."""


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
        shown = {piece.name}
        if not subject.in_rows:
            subject = went_on(subject, measured, shown)
        canvas = Canvas()
        _draw_whole(canvas, subject, measured, shown)
        body, box = _laid_out(work, piece.name, *_body(canvas, subject, "whole"))
        for border in (*_own_border(subject), *borders_of(work, piece.name, measured)):
            body, box = _bordered(border, body, box)
            shown.add(border.piece.name)
        for name in _left_over(work, shown):
            alone = _alone(work, name, measured, shown)
            body, box = _beside((body, box), alone) if alone is not None else (body, box)
        return _finished(body, box, work.pattern.title, left_handed)
    cords = (piece_picture(work, piece.name, measured, left_handed) for piece in work.pieces)
    return next((cord for cord in cords if cord), "")


def piece_picture(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> str:
    """One piece on its own, as SVG in mm; "" where it has no rounds and is no cord."""
    drawn = _alone(work, name, measured or measure(work), None)
    if drawn is None:
        return ""
    return _finished(*drawn, work.pattern.pieces[name].title or name, left_handed)


def _alone(
    work: PatternWork, name: str, measured: Measured, shown: set[str] | None
) -> tuple[str, Box] | None:
    """The drawing of one piece and its box; None for one that has no rounds and is no cord. shown: what
    begins on one in rows is drawn with it, and its name added; None to draw nothing else.
    """
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    canvas = Canvas()
    if subject is None:
        cord = cord_of(work, name, measured)
        if cord is None:
            return None
        draw_cord(canvas, cord)
        return canvas.body(outline_of(cord.colour), 0.0, _mark(work, name), canvas.box), canvas.box
    if subject.in_rows:
        draw_flat(canvas, subject, None if shown is None else measured, shown or set())
    elif is_leaf(subject):
        draw_leaf(canvas, subject)
    else:
        stand, rounds = _standing(subject)
        draw_rounds(canvas, stand, subject, rounds)
    body, box = _body(canvas, subject, name)
    for border in _own_border(subject):
        body, box = _bordered(border, body, box)
    return body, box


def _draw_whole(canvas: Canvas, subject: Subject, measured: Measured, shown: set[str]) -> None:
    """A piece with what is worked onto it, and added to it in the finishing. shown: the names of the pieces
    that are worked onto it are added.
    """
    outline = HAIRLINE * max(size.height_mm for size in subject.sizes)
    if subject.in_rows:
        draw_flat(canvas, subject, measured, shown)
    elif is_leaf(subject):
        draw_leaf(canvas, subject)
    elif is_assembled(subject, measured):
        draw_assembled(canvas, subject, measured, shown, outline)
    else:
        stand, rounds = _standing(subject)
        draw_rounds(canvas, stand, subject, rounds)
        draw_flaps(canvas, subject, stand, rounds, measured, shown)
        draw_marks(canvas, stand, subject, rounds)
        draw_tubes(canvas, subject, stand, rounds, measured, shown, outline)
        draw_additions(canvas, subject, stand, rounds, measured)
        draw_straps(canvas, subject, stand, rounds, measured, outline)
        if (pompon := pompon_of(subject.work.pattern)) is not None:
            draw_pompon(canvas, stand, subject, pompon)


def _left_over(work: PatternWork, shown: set[str]) -> Iterator[str]:
    """The pieces that begin on one that is shown, and aren't shown yet. shown: their names are added."""
    for piece in work.pieces:
        start = work.pattern.pieces[piece.name].start
        if start is not None and start.edge in shown and piece.name not in shown:
            shown.add(piece.name)
            yield piece.name


def _beside(whole: tuple[str, Box], other: tuple[str, Box]) -> tuple[str, Box]:
    """One drawing and another below it, or to its right where it is higher than wide."""
    (body, (left, top, right, bottom)), (more, reach) = whole, other
    wide, high = reach[2] - reach[0], reach[3] - reach[1]
    apart = APART * max(right - left, bottom - top)
    if right - left > bottom - top:
        x, y = (left + right - wide) / 2 - reach[0], bottom + apart - reach[1]
    else:
        x, y = right + apart - reach[0], (top + bottom - high) / 2 - reach[1]
    box = (
        min(left, x + reach[0]), min(top, y + reach[1]), max(right, x + reach[2]), max(bottom, y + reach[3])
    )  # fmt: skip
    return f'{body}<g transform="translate({x:.2f} {y:.2f})">{more}</g>', box


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
