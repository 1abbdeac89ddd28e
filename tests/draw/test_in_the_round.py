"""What a standing piece shows: its cloth reaches its very edges."""

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, pi, tau

import pytest

from loopleaf.draw.canvas import Canvas, Point
from loopleaf.draw.in_the_round import OUTSIDE, draw_rounds
from loopleaf.draw.stand import stand_of

from .pieces import rounds, subject_from


class Cloth(Canvas):
    """A canvas that keeps what is filled on the outside, by layer and colour: these share one path."""

    def __init__(self) -> None:
        super().__init__()
        self.filled: dict[tuple[int, str], list[Sequence[Point]]] = {}

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        if layer >= OUTSIDE:
            self.filled.setdefault((layer, colour), []).append(points)

    def covers(self, at: Point) -> bool:
        """Whether a path lies there: its shapes go around the point, one way more often than the other."""
        return any(round(sum(turns(shape, at) for shape in shapes)) for shapes in self.filled.values())


def turns(shape: Sequence[Point], at: Point) -> float:
    """How often a closed shape goes around a point."""
    angles = [atan2(y - at[1], x - at[0]) for x, y in [*shape, shape[0]]]
    return sum((after - before + pi) % tau - pi for before, after in pairwise(angles)) / tau


@pytest.mark.parametrize("many", [8, 12, 15, 24, 32])
@pytest.mark.parametrize("side", [-1, 1])
def test_no_light_shows_at_the_sides_of_a_standing_piece(many: int, side: int) -> None:
    """There its cloth goes on to the back, over itself the other way around, which would cut it away."""
    plain = "ch 1, sc in each st around, join"
    tube = subject_from(rounds(f"ch 1, {many} sc in ring, join", *[plain] * 9))
    stand, items = stand_of(tube)
    canvas = Cloth()
    draw_rounds(canvas, stand, tube, items)
    ring = stand.rings[6]
    edge = max(
        (stand.point(ring.out1, ring.high1, at / 720) for at in range(720)), key=lambda one: side * one[0]
    )
    corner = 1.0 - (1.0 if many < 24 else 0.4) * (pi / many) ** 2
    for low in (1.0, 2.5, 4.0):
        assert canvas.covers((edge[0] * corner, edge[1] - low))
    assert not canvas.covers((edge[0] * 1.1, edge[1] - 2.5))
