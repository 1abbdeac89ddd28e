"""A garland: a long band with what is sewn to it, hung up by its two ends."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import asinh, atan2, cos, degrees, hypot, pi, radians, sin, sinh

from ..fabric import Made
from ..measure import Measured
from .canvas import THINNEST, Box, Canvas, Point, number
from .colour import outline_of
from .in_rows import draw_rows
from .in_the_round import draw_rounds
from .items import items_of_rows
from .leaf import draw_leaf
from .stand import is_leaf, lies, stand_of
from .subject import Subject, main_colour, subject_of

LONG, FEWEST = 12.0, 3
"""A band so many times as long as it is high, with so many parts at least, is a garland."""

SPAN = 0.82
"""It hangs between two points so far apart, of its length."""

SWAYS = 7.0
"""What hangs is turned by so many degrees to one side and the other, two by two."""


@dataclass(frozen=True, slots=True)
class Swag:
    """A band that hangs: a catenary so long, with the radius of its lowest point, in mm."""

    length: float
    radius: float

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: rows of any width are eased along it; `high` mm above its lower edge."""
        way, a = (along - 0.5) * self.length, self.radius
        steep = hypot(a, way)
        return (a * asinh(way / a) - way / steep * high, steep - a + a / steep * high)


@dataclass(frozen=True, slots=True)
class _Hung:
    """One part: the piece's name, and where its end is sewn on."""

    name: str
    at: Point


def hung(length: float) -> Swag:
    """A band so long, hung up."""
    low, high = 0.01, 10.0  # half the span, in radii: its sine grows faster than it does
    for _ in range(40):
        half = (low + high) / 2
        low, high = (half, high) if sinh(half) / half < 1 / SPAN else (low, half)
    return Swag(length, SPAN * length / 2 / low)


def band_of(subject: Subject, measured: Measured) -> Subject | None:
    """The long band that a piece is sewn to again and again; None where there is none."""
    sewn = [step.sew for step in subject.work.pattern.finishing if step.sew is not None]
    for name in dict.fromkeys(sew.to for sew in sewn if sew.piece == subject.piece.name):
        piece = subject.work.piece(name)
        band = subject_of(subject.work, piece, measured) if piece is not None else None
        if band is None or not band.in_rows or len(list(_parts(band, hung(1.0)))) < FEWEST:
            continue
        if max(size.length_mm for size in band.sizes) > LONG * band.sizes[-1].height_mm:
            return band
    return None


def _parts(band: Subject, swag: Swag) -> Iterator[_Hung]:
    """What is sewn to the band, from its beginning."""
    mirrored = [one.side != "WS" for one in band.piece.rounds]
    start = band.piece.starts[0] if band.piece.starts else []
    rows = items_of_rows(band.worked, mirrored, band.scale, start)
    for step in band.work.pattern.finishing:
        sew = step.sew
        if sew is None or sew.to != band.piece.name:
            continue
        row = next((at for at, one in enumerate(band.piece.rounds) if one.plan.number == sew.row), None)
        for run in sew.stitches if row is not None else ():
            under = [
                item.middle
                for item in rows[row or 0]
                if isinstance(item.thing, Made) and item.thing.number in run
            ]
            if under:
                high = band.sizes[row or 0].height_mm - band.sizes[row or 0].rise_mm / 2
                yield _Hung(sew.piece, swag.point(0.0, sum(under) / len(under), high))


def draw_garland(band: Subject, measured: Measured, hairline: float, mark: str) -> tuple[str, Box]:
    """The band with its parts behind it, as SVG without the frame, and its box. hairline: the width of its
    outlines, of its longer side. mark: what is used several times is named after it.
    """
    swag = hung(max(size.length_mm for size in band.sizes))
    canvas = Canvas()
    draw_rows(canvas, band, swag)
    boxes = [canvas.box]
    width, thin = (share * (boxes[0][2] - boxes[0][0]) for share in (hairline, THINNEST))
    shapes = dict(_shapes(band, measured))
    names = {name: f"{mark}-{at}" for at, name in enumerate(shapes, 1)}
    defined = "".join(
        f'<g id="{names[name]}">{one.canvas.body(one.outline, width, "", one.canvas.box, thin)}</g>'
        for name, one in shapes.items()
    )
    used = ""
    parts = [part for part in _parts(band, swag) if part.name in shapes]
    for at, part in enumerate(sorted(parts, key=lambda part: part.at[0])):
        one = shapes[part.name]
        turn, (x, y), (end_x, end_y) = one.turn + (SWAYS if at % 4 < 2 else -SWAYS), part.at, one.end
        used += (
            f'<use href="#{names[part.name]}" transform="translate({number(x)} {number(-y)}) '
            f'rotate({number(turn)}) translate({number(-end_x)} {number(end_y)})"/>'
        )
        boxes.append(_turned(one, turn, part.at))
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    body = canvas.body(outline_of(main_colour(band)), width, mark, boxes[0], thin)
    return f"<defs>{defined}</defs>{used}{body}", (min(lefts), min(tops), max(rights), max(bottoms))


@dataclass(frozen=True, slots=True)
class _Shape:
    """A part drawn. end: the point that it hangs by, y up. turn: in degrees, clockwise, so that it hangs."""

    canvas: Canvas
    outline: str
    end: Point
    turn: float


def _shapes(band: Subject, measured: Measured) -> Iterator[tuple[str, _Shape]]:
    """Leaves hang by their stems, other flat parts by their upper edges; what isn't flat isn't drawn."""
    for name in dict.fromkeys(part.name for part in _parts(band, hung(1.0))):
        piece = band.work.piece(name)
        subject = subject_of(band.work, piece, measured) if piece is not None else None
        if subject is None or subject.in_rows or not (is_leaf(subject) or lies(subject)):
            continue
        canvas = Canvas()
        stems: list[Point] = []
        if is_leaf(subject):
            stems = draw_leaf(canvas, subject)
        else:
            stand, rounds = stand_of(subject)
            draw_rounds(canvas, stand, subject, rounds)
        left, top, right, bottom = canvas.box
        middle = ((left + right) / 2, -(top + bottom) / 2)
        end = stems[-1] if stems else (middle[0], -top)
        down = atan2(middle[1] - end[1], middle[0] - end[0])
        yield name, _Shape(canvas, outline_of(main_colour(subject)), end, degrees(down + pi / 2))


def _turned(one: _Shape, turn: float, at: Point) -> Box:
    """The box of a part in its place."""
    left, top, right, bottom = one.canvas.box
    across, along = cos(radians(turn)), sin(radians(turn))
    corners = [(x - one.end[0], y + one.end[1]) for x in (left, right) for y in (top, bottom)]
    xs = [at[0] + x * across - y * along for x, y in corners]
    ys = [-at[1] + x * along + y * across for x, y in corners]
    return (min(xs), min(ys), max(xs), max(ys))
