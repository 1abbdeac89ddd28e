"""What a standing piece shows: its cloth reaches its very edges."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, pi, tau

import pytest

from loopleaf.draw.canvas import Canvas, Point
from loopleaf.draw.in_the_round import OUTSIDE, draw_rounds
from loopleaf.draw.pose import worn
from loopleaf.draw.profile import over_a_head
from loopleaf.draw.stand import stand_of

from .pieces import rounds, subject_from

PLAIN = "ch 1, sc in each st around, join"


class Cloth(Canvas):
    """A canvas that keeps what is filled on the outside, by layer and colour: these share one path."""

    def __init__(self, lowest: int = OUTSIDE) -> None:
        super().__init__()
        self.lowest = lowest
        self.filled: dict[tuple[int, str], list[Sequence[Point]]] = {}

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        if layer >= self.lowest:
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
    tube = subject_from(rounds(f"ch 1, {many} sc in ring, join", *[PLAIN] * 9))
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


BRIM = (
    "ch 1, (sc in next st, 2 sc in next st) x 12, join",
    "ch 1, (sc in next 2 sts, 2 sc in next st) x 12, join",
)


@pytest.mark.parametrize(("last", "beneath"), [(BRIM, True), ((PLAIN, PLAIN), False)])
def test_what_of_a_brim_lies_behind_the_crown_is_beneath_it(last: tuple[str, ...], beneath: bool) -> None:
    crown = ("ch 1, 12 sc in ring, join", "ch 1, 2 sc in each st around, join", *[PLAIN] * 5)
    hat = rounds(*crown, *last).replace(f'"{last[0]}"', f'"{last[0]}", yarn: B')
    cap = subject_from(hat, "to fit: {head: 56 cm}\n")
    stand, items = stand_of(cap)
    on_head = worn(stand, over_a_head(cap.sizes, stand.section, stand.rings[0].out0))
    canvas = Cloth(lowest=1)
    draw_rounds(canvas, on_head, replace(cap, colours={"A": "#112233", "B": "#ffeedd"}), items)
    of_brim = [layer for layer, colour in canvas.filled if int(colour[1:3], 16) > int(colour[5:], 16)]
    of_crown = [layer for layer, colour in canvas.filled if int(colour[1:3], 16) < int(colour[5:], 16)]
    assert of_brim
    assert (min(of_brim) < min(of_crown)) is beneath
