"""A long thin tube in section: its walls stand apart, its rounds have room, a break says that it is long."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw import Figure, profile
from tests.measure.worked_patterns import worked

from .pieces import rounds

AROUND = "ch 1, sc in each st around, join"


def tube(many: int) -> Figure:
    """So many rounds of twelve stitches."""
    first = "ch 1, sc in each ch around, join"
    figure = profile(
        worked(rounds(first, *[AROUND] * (many - 1), start="chain 12, joined")), "piece", left_handed=False
    )
    assert figure is not None
    return figure


def lines(figure: Figure, width: str) -> list[list[tuple[float, float]]]:
    """The points of all lines so thick."""
    ways = re.findall(rf'stroke-width="{width}" d="M([-.\d L]+)"', figure.svg)
    return [[(float(x), float(y)) for x, y in (p.split(" ") for p in way.split("L"))] for way in ways]


@pytest.mark.parametrize(("many", "shortened"), [(12, False), (120, True)])
def test_its_walls_stand_apart(many: int, shortened: bool) -> None:
    figure = tube(many)
    left, right = (wall[0][0] for wall in sorted(lines(figure, "1.1")))
    assert right - left > 6 * 1.1
    assert ("shorter than it is" in figure.alt) == shortened
    waves = [way for way in lines(figure, ".25") if len(way) == 13]
    assert len(waves) == 2 * shortened, "the two waved lines of a break"


def test_ticks_of_many_rounds_dont_run_together() -> None:
    ticks = sorted({way[0][1] for way in lines(tube(120), ".25") if len(way) == 2})
    assert min(b - a for a, b in pairwise(ticks)) > 0.8
    short = [way for way in lines(tube(12), ".25") if len(way) == 2]
    assert len(short) == 2 * 12, "each round's on both walls"
