"""What is worked on from the openings of a standing piece, in the picture of the whole: a mitten's thumb."""

from collections.abc import Sequence

from ..measure import Measured
from .canvas import Canvas
from .colour import outline_of
from .in_the_round import draw_rounds
from .items import Item
from .openings import openings_of
from .pose import Posed, Vector, added, around, scaled, unit
from .section import Oval
from .stand import Stand, narrows, stand_of
from .subject import Subject, main_colour, subject_of

ALONG = 1.1
"""A tube points out of its opening, and so much more along the piece, towards the end that is narrower."""

SUNK = 0.6
"""It begins so much of its radius within the piece, which covers the edge of the opening."""

LAYER = 4000


def draw_tubes(
    canvas: Canvas, subject: Subject, stand: Stand, rounds: Sequence[Sequence[Item]], measured: Measured,
    shown: set[str], outline: float,
) -> None:  # fmt: skip
    """The pieces in the round that begin at its openings. shown: their names are added. outline: the width of
    their outlines, in mm.
    """
    if stand.from_above or isinstance(stand, Posed):
        return
    upwards = 1 if narrows(stand.rings) else -1
    for at, opening in enumerate(openings_of(subject, rounds)):
        piece = subject.work.piece(opening.name)
        part = subject_of(subject.work, piece, measured) if piece is not None else None
        if part is None or part.in_rows:
            continue
        own, items = stand_of(part)
        if own.from_above:
            continue
        ring = stand.rings[opening.at]
        normal: Vector = (*stand.outside(ring, opening.along), 0.0)
        tip = unit(added(normal, (0.0, 0.0, upwards * ALONG)))
        wall: Vector = (*stand.across(ring.out1, opening.along), ring.high1)
        origin = added(wall, scaled(normal, -SUNK * own.rings[0].out0))
        section = Oval(own.section.spine) if isinstance(own.section, Oval) else own.section
        pose = Posed(section, own.rings, stand.slant, around(tip, (0.0, -1.0, 0.0), 0.5), origin)
        shown.add(opening.name)
        drawn = Canvas()  # over the piece, or behind it
        draw_rounds(drawn, pose, part, items)
        canvas.lay(drawn, upwards * LAYER * (at + 1), outline_of(main_colour(part)), outline)
