"""The strokes of a picture, one by one, as its canvas is given them."""

from collections.abc import Sequence

from loopleaf.draw.canvas import Canvas, Point
from loopleaf.draw.in_rows import draw_rows
from loopleaf.draw.in_the_round import draw_rounds
from loopleaf.draw.stand import stand_of
from loopleaf.fabric import PatternWork

from .pieces import subject


class Strokes(Canvas):
    """A canvas that notes its lines as (layer, width, points), its shapes as (layer, colour, points)."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[tuple[int, float, Sequence[Point]]] = []
        self.shapes: list[tuple[int, str, Sequence[Point]]] = []

    def line(self, layer: int, colour: str, width: float, points: Sequence[Point]) -> None:
        """One more."""
        self.lines.append((layer, width, points))

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        """One more."""
        self.shapes.append((layer, colour, points))


class Flat:
    """A straight sheet that is drawn row by row."""

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies."""
        return ((along - 0.5) * width, high)


def strokes_of(work: PatternWork) -> list[float]:
    """How high each stroke of a piece's stitches reaches, from its lowest to its highest point, in mm."""
    canvas, found = Strokes(), subject(work)
    if found.in_rows:
        draw_rows(canvas, found, Flat())
    else:
        stand, rounds = stand_of(found)
        draw_rounds(canvas, stand, found, rounds)
    return [max(y for _, y in points) - min(y for _, y in points) for *_, points in canvas.lines]
