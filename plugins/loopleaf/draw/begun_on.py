"""Which pieces begin on stitches of another one, and where, in the picture; and rows laid on what they begin
on, which may be bent or stand.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, dist, hypot
from typing import NamedTuple, Protocol

from ..measure import Measured
from .canvas import Canvas, Point
from .colour import level, outline_of, shaded
from .in_rows import Lay
from .items import Item
from .openings import begun_in_rows
from .sheet import Sheet
from .subject import Subject, main_colour, subject_of

IN_FRONT, BEHIND = 3000, -1000
"""Layers of what begins on a piece and is seen before it, or behind it."""

HAIRLINE = 0.005
"""Width of its outline as a share of the piece's longer side."""

STEP_MM = 2.0
"""A long line is bent at points so far apart."""

STRIP_MM, OVER_MM = 6.0, 0.1
"""A wide shape is cut into strips no wider than this to be bent, which lie over each other by so much."""

SEAM_MM = 0.5
"""So near to what it begins on a piece has no outline."""

NEARBY = 0.01
"""The direction of an edge is found between places so far apart along it."""


class Placed(NamedTuple):
    """part: a piece in rows. at, along: the index of the row or round that it begins on, and where on its
    way its middle lies.
    """

    part: Subject
    at: int
    along: float


class Surface(Protocol):
    """What a piece laid flat is put on: points are so far to the right of the middle that it begins at, as
    its right side shows it, and so far up, in mm.
    """

    def point(self, x: float, y: float) -> Point:
        """Where it comes to lie in the drawing."""

    def light(self, x: float, y: float) -> float:
        """Light on it: 1 of what lies."""

    def is_near(self, x: float, y: float) -> bool:
        """Whether it is seen from its right side, before the piece that it begins on."""


def begun_on(
    subject: Subject, rounds: Sequence[Sequence[Item]], measured: Measured, around: bool = False
) -> Iterator[Placed]:
    """The pieces in rows that begin on stitches of one row or round of a piece, in their order.

    rounds: its items. around: they lie around it.
    """
    for begun in begun_in_rows(subject, rounds, around):
        piece = subject.work.piece(begun.name)
        part = subject_of(subject.work, piece, measured) if piece is not None else None
        if part is not None:
            yield Placed(part, begun.at, begun.along)


@dataclass(frozen=True, slots=True)
class Bent:
    """A row's upper edge, and what goes on from it: lay: what that row lies on, `wide` mm long, its top so
    high. along: the middle of what begins there, as a share of the row.
    """

    lay: Lay
    wide: float
    along: float
    high: float

    def point(self, x: float, y: float) -> Point:
        """Where it comes to lie in the drawing."""
        lay, high = self.lay, self.high + y
        if not isinstance(lay, Sheet) or not lay.arc:
            return lay.point(self.wide, self.along + x / (self.wide or 1.0), high)
        if not (lay.sides or lay.corners):
            share = x / (self.wide or 1.0) * (lay.below + self.high) / (lay.below + high)
            return lay.point(self.wide, self.along + share, high)
        middle, ahead = (lay.point(self.wide, self.along + by, self.high) for by in (0.0, NEARBY))
        dx, dy = ahead[0] - middle[0], ahead[1] - middle[1]
        long = hypot(dx, dy) or 1.0
        return (middle[0] + (dx * x - dy * y) / long, middle[1] + (dy * x + dx * y) / long)

    def light(self, x: float, y: float) -> float:
        """Light on it: 1 of what lies."""
        return 1.0

    def is_near(self, x: float, y: float) -> bool:
        """Whether it is seen from its right side, before the piece that it begins on."""
        return True


@dataclass(frozen=True, slots=True)
class Upright:
    """A place on a flat cloth, above which rows go straight up."""

    left: float
    low: float

    def point(self, x: float, y: float) -> Point:
        """Where it comes to lie in the drawing."""
        return (self.left + x, self.low + y)

    def light(self, x: float, y: float) -> float:
        """Light on it: 1 of what lies."""
        return 1.0

    def is_near(self, x: float, y: float) -> bool:
        """Whether it is seen from its right side, before the piece that it begins on."""
        return True


def lay_on(canvas: Canvas, flat: Canvas, surface: Surface, part: Subject) -> None:
    """A piece drawn flat, on what it begins on, with its outline."""
    layers: Mapping[int, int] = {
        layer: at for at, layer in enumerate(sorted({shape.layer for shape in flat.in_order()}), 1)
    }
    for shape in flat.in_order():
        for points in [shape.points] if shape.width is not None else _strips(shape.points):
            x, y = _middle(points)
            layer = (IN_FRONT if surface.is_near(x, y) else BEHIND) + layers[shape.layer]
            colour = shaded(shape.colour, level(surface.light(x, y)))
            bent = [surface.point(*point) for point in points]
            if shape.width is None:
                canvas.fill(layer, colour, bent)
            else:
                canvas.line(layer, colour, shape.width, bent)
    left, top, right, bottom = canvas.box
    width = HAIRLINE * max(right - left, bottom - top)
    colour = outline_of(main_colour(part))
    for outline in flat.outlines:
        for start, end in zip(outline, [*outline[1:], outline[0]], strict=True):
            if max(start[1], end[1]) < SEAM_MM:
                continue
            way = [surface.point(*point) for point in _finely(start, end)]
            layer = IN_FRONT if surface.is_near(*_middle([start, end])) else BEHIND
            canvas.line(layer, colour, width, way)


def _middle(points: Sequence[Point]) -> Point:
    return (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))


def _strips(points: Sequence[Point]) -> Iterator[Sequence[Point]]:
    """A closed shape, cut from top to bottom into strips that can be bent."""
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    many = ceil((right - left) / STRIP_MM)
    if many < 2:
        yield points
        return
    for at in range(many):
        start, end = (left + (right - left) * edge / many for edge in (at, at + 1))
        strip = _cut(_cut(points, start, 1), end + OVER_MM, -1)
        if len(strip) > 2:
            yield strip


def _cut(points: Sequence[Point], at: float, side: int) -> list[Point]:
    """What of a closed shape lies to the right (1) or the left (-1) of an upright line."""
    found: list[Point] = []
    for (ax, ay), (bx, by) in zip(points, [*points[1:], *points[:1]], strict=True):
        if (ax - at) * side >= 0:
            found.append((ax, ay))
        if (ax - at) * (bx - at) < 0:
            found.append((at, ay + (by - ay) * (at - ax) / (bx - ax)))
    return found


def _finely(start: Point, end: Point) -> list[Point]:
    """From one point to another in short steps."""
    many = max(ceil(dist(start, end) / STEP_MM), 1)
    return [
        (start[0] + (end[0] - start[0]) * at / many, start[1] + (end[1] - start[1]) * at / many)
        for at in range(many + 1)
    ]
