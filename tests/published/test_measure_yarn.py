"""Yarn against one hobbyist's published sample: worsted, 5 mm hook, all in inches.

Yarn per length of chain 5.1, of a row of sc 10.6, hdc 15.7, dc 20.4; cloth 31.4, 32.1, 31.6 inches of yarn
per square inch of sc, hdc, dc; rows 8.6, 12.4, 16.4 mm tall, a stitch near 9 mm wide.
"""

import pytest

from loopleaf.fabric.worked import Made, WorkedRound
from loopleaf.measure.gauge import Sample, Scale
from loopleaf.measure.made import contents
from loopleaf.measure.units import (
    grams_to_ounces,
    inches_to_mm,
    metres_to_yards,
    mm_to_inches,
    ounces_to_grams,
    yards_to_metres,
)
from loopleaf.measure.yarn import ESTIMATE_OFF, chain_metres, metres_by_yarn

STITCH_MM = 9.0


def cloth(kind: str, row_mm: float, rows: int = 20, stitches: int = 30) -> tuple[float, float]:
    """Metres of yarn in a cloth, and its area in square metres."""
    scale = Scale({(kind, ""): Sample(STITCH_MM, row_mm, 0.03, 0.03)})
    row = contents(WorkedRound(made=[Made(kind, (), 0, "A", number=n) for n in range(1, stitches + 1)]))
    metres = metres_by_yarn([row] * rows, scale)["A"]
    return metres, stitches * STITCH_MM * rows * row_mm / 1e6


@pytest.mark.parametrize(
    ("kind", "row_mm", "inches_per_square_inch"),
    [("single", 8.6, 31.4), ("half", 12.4, 32.1), ("double", 16.4, 31.6)],
)
def test_yarn_in_a_square_inch_of_cloth(kind: str, row_mm: float, inches_per_square_inch: float) -> None:
    """The rows' own figures give the cloth's within a few per cent, far inside the model's stated 25 %."""
    metres, area = cloth(kind, row_mm)
    ours = metres / area * 0.0254
    assert ours == pytest.approx(inches_per_square_inch, rel=0.04)
    assert ESTIMATE_OFF > 0.04


def test_a_chain() -> None:
    """5.1 inches of yarn an inch of chain."""
    assert chain_metres(25.4) == pytest.approx(5.1 * 0.0254)


def test_units_are_exact() -> None:
    """The international yard and pound, 1959: 0.9144 m, 25.4 mm an inch, 28.349523125 g an ounce."""
    assert yards_to_metres(1) == 0.9144
    assert metres_to_yards(0.9144) == pytest.approx(1)
    assert inches_to_mm(1) == 25.4
    assert mm_to_inches(25.4) == pytest.approx(1)
    assert ounces_to_grams(16) == pytest.approx(453.59237)
    assert grams_to_ounces(453.59237) == pytest.approx(16)


def test_the_ounces_on_ball_bands() -> None:
    """Balls as sold: 50 g is 1.75 oz, 100 g is 3.5 oz, 200 g is 7 oz (common practice, no source)."""
    for grams, ounces in ((50, 1.75), (100, 3.5), (200, 7)):
        assert round(grams_to_ounces(grams) * 4) / 4 == ounces
