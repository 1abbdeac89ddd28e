"""The picture of a piece, computed from its stitches: standing or lying, with what is sewn on and threaded."""

from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from math import pi

from ..fabric import Made, PatternWork, PieceWork, WorkedRound
from ..measure import Measured, measure
from ..measure.gauge import Sample, Scale, ring_radius
from ..measure.made import contents
from ..measure.size import RoundSize, round_sizes
from .additions import draw_additions
from .canvas import Canvas, svg
from .colour import UNDYED
from .in_rows import draw_rows
from .in_the_round import LOOKING_DOWN, Stand, draw_rounds
from .profile import is_flat, lying, standing
from .section import Oval, Polygon, Section

NO_GAUGE = Scale({("single", ""): Sample(6.0, 5.5, 1.0, 1.0)})
"""A piece without a gauge is drawn as in a medium yarn: its form is right, its size means nothing."""

USUAL_CORNERS = range(3, 9)
FRONT = 0.75
"""Where along the way around a standing piece faces the viewer, begun at the right."""


@dataclass(frozen=True, slots=True)
class Subject:
    """A piece in one size with all that its drawing needs; rounds that the size lacks are left out."""

    work: PatternWork
    piece: PieceWork
    worked: list[WorkedRound]
    sizes: list[RoundSize]
    scale: Scale
    colours: Mapping[str, str]

    @property
    def in_rows(self) -> bool:
        """Whether the piece is worked in rows."""
        return self.work.pattern.pieces[self.piece.name].worked.startswith("rows")


def first_picture(work: PatternWork, measured: Measured | None = None) -> str:
    """The first piece that has rounds, finished as far as the pattern says, as SVG in mm.

    "" where nothing is worked.
    """
    measured = measured or measure(work)
    for piece in work.pieces:
        subject = subject_of(work, piece, measured)
        if subject is None:
            continue
        canvas = Canvas()
        stand = _draw(canvas, subject)
        if stand is not None:
            draw_additions(canvas, subject, stand, _discs(work, measured, subject))
        body, box = _laid_out(work, piece.name, canvas)
        return svg(body, box, f"{work.pattern.title}, drawn from its stitches")
    return ""


def piece_picture(work: PatternWork, name: str, measured: Measured | None = None) -> str:
    """One piece on its own, as SVG in mm; "" where it has no rounds."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    if subject is None:
        return ""
    canvas = Canvas()
    _draw(canvas, subject)
    title = work.pattern.pieces[name].title or name
    return svg(canvas.body(), canvas.box, f"{title}, drawn from its stitches")


def subject_of(work: PatternWork, piece: PieceWork, measured: Measured, size: int = 0) -> Subject | None:
    """What there is to draw of a piece; None where nothing was worked."""
    pairs = [(r, r.sizes[size]) for r in piece.rounds if size < len(r.sizes)]
    kept = [(r, one) for r, one in pairs if one is not None and one.made]
    if not kept:
        return None
    own = measured.piece(piece.name)
    sizes: list[RoundSize | None] = []
    scale = NO_GAUGE
    if own is not None and own.scale is not None and own.rounds:
        scale = own.scale
        sizes = [one for (_, w), one in zip(pairs, own.rounds[size], strict=True) if w is not None and w.made]
    if len(sizes) != len(kept):
        sizes = list(round_sizes([r.plan.label for r, _ in kept], [contents(one) for _, one in kept], scale))
    yarns = work.pattern.materials.yarns if work.pattern.materials is not None else {}
    colours = {letter: yarn.colour or UNDYED for letter, yarn in yarns.items()}
    for _, one in kept:
        colours.update({made.yarn: UNDYED for made in one.made if made.yarn not in colours})
    shown = PieceWork(piece.name, piece.path, piece.starts, [r for r, _ in kept])
    return Subject(work, shown, [one for _, one in kept], [s for s in sizes if s is not None], scale, colours)


def _draw(canvas: Canvas, subject: Subject) -> Stand | None:
    """Draw the cloth; how it stands, or None for rows."""
    if subject.in_rows:
        draw_rows(canvas, subject.piece.rounds, subject.worked, subject.sizes, subject.scale, subject.colours)
        return None
    stand = stand_of(subject)
    draw_rounds(canvas, stand, subject.worked, subject.scale, subject.colours)
    return stand


def stand_of(subject: Subject) -> Stand:
    """How a piece in the round stands or lies: from its start, its corners and the length of its rounds."""
    first_out = ring_radius(subject.piece, 0, subject.scale.width_mm)
    section = _section(subject)
    pressed = standing(subject.sizes, section, first_out, range(len(subject.sizes)))
    if is_flat(pressed) or isinstance(section, Polygon):
        return Stand(section, lying(subject.sizes, first_out), pi / 2)
    runs = subject.work.pattern.pieces[subject.piece.name].lies_flat
    flat = [at for at, r in enumerate(subject.piece.rounds) if any(r.plan.number in run for run in runs)]
    return Stand(section, standing(subject.sizes, section, first_out, flat), LOOKING_DOWN)


def _section(subject: Subject) -> Section:
    corners = subject.sizes[-1].corners
    if corners in USUAL_CORNERS:
        return Polygon(corners)
    spine = _spine(subject)
    turn = 0.0 if spine else 2 * pi * (FRONT - _faced(subject))
    return Oval(spine, turn)


def _spine(subject: Subject) -> float:
    """The length between the two ends of an oval; 0 for a piece that doesn't begin on both sides of a
    chain.
    """
    start = subject.work.pattern.pieces[subject.piece.name].start
    if start is None or start.kind != "both sides":
        return 0.0
    used = {
        place.number
        for made in subject.worked[0].made
        if isinstance(made, Made)
        for place in made.into
        if isinstance(place, Made) and place.role == "foundation"
    }
    return max(len(used) - 1, 0) * subject.scale.width_mm


def _faced(subject: Subject) -> float:
    """Which part of the way around faces the viewer: where something is sewn on, else the half away from
    the join.
    """
    for step in subject.work.pattern.finishing:
        sew = step.sew
        if sew is not None and sew.to == subject.piece.name and sew.stitches:
            number = sew.round if sew.round is not None else sew.row
            for work, one in zip(subject.piece.rounds, subject.worked, strict=True):
                if work.plan.number == number and one.count:
                    run = sew.stitches[0]
                    return ((run.first + (run.last or run.first)) / 2 - 0.5) / one.count
    return 0.5


def _discs(work: PatternWork, measured: Measured, onto: Subject) -> Mapping[str, Subject]:
    """The pieces that are sewn onto this one."""
    found: dict[str, Subject] = {}
    for step in work.pattern.finishing:
        if step.sew is not None and step.sew.to == onto.piece.name:
            piece = work.piece(step.sew.piece)
            subject = subject_of(work, piece, measured) if piece is not None else None
            if subject is not None and not subject.in_rows:
                found[step.sew.piece] = subject
    return found


def _laid_out(work: PatternWork, name: str, canvas: Canvas) -> tuple[str, tuple[float, float, float, float]]:
    """The drawing once, or as often as the finishing lays the piece out."""
    box = canvas.box
    for step in work.pattern.finishing:
        lay = step.lay_out
        if lay is None or lay.piece != name:
            continue
        width, height = box[2] - box[0], box[3] - box[1]
        mark = escape(f"{work.pattern.title}-{name}".lower().replace(" ", "-"), quote=True)
        uses = "".join(
            f'<use href="#{mark}" x="{across * width:.1f}" y="{down * height:.1f}"/>'
            for down in range(lay.down)
            for across in range(lay.across)
        )
        whole = (box[0], box[1], box[0] + lay.across * width, box[1] + lay.down * height)
        return f'<defs><g id="{mark}">{canvas.body()}</g></defs>{uses}', whole
    return canvas.body(), box
