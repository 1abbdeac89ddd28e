"""How tall stuffed pieces stand, against the ball, the cylinder and the ellipse of the textbooks."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.measure.filled import CLOTH_GIVES, domed_height, filled_height, has_waist
from loopleaf.measure.size import RoundSize
from loopleaf.measure.units import Band

TOY = (6, 12, 18, 24, 24, 24, 24, 24, 18, 12, 6)


def rounds(*counts: float, rise: float = 1.0) -> list[RoundSize]:
    return [
        RoundSize(str(at), n, Band(n, n), rise, at * rise, Band(at * rise, at * rise), round(n), 0)
        for at, n in enumerate(counts, start=1)
    ]


def test_a_quarter_of_a_circle_makes_half_a_ball() -> None:
    """A great circle's quarter is πr/2 long (textbook geometry)."""
    assert domed_height(math.pi * 5, 10) == pytest.approx(10)


def test_a_longer_way_stands_on_a_cylinder() -> None:
    assert domed_height(math.pi * 5 + 7, 10) == pytest.approx(17)


def test_a_shorter_way_is_a_quarter_of_an_ellipse() -> None:
    """The ellipse with half axes 10 and 5 is 48.442 around (tables of the complete elliptic integral)."""
    assert domed_height(48.442 / 4, 10) == pytest.approx(5, abs=0.001)


def test_a_way_as_short_as_the_radius_lies_flat() -> None:
    assert domed_height(9.9, 10) == pytest.approx(0, abs=0.01)


@pytest.mark.parametrize("rounds_in_all", [12, 24, 48])
def test_a_true_ball_is_as_high_as_it_is_across(rounds_in_all: int) -> None:
    """Counts of the sphere's own formula 2πR·sin(s/R) at the upper edge of each round: 2R from pole to pole,
    and never above what a tenth of give adds to half of its great circle.
    """
    radius = rounds_in_all / math.pi
    counts = [math.tau * radius * math.sin(k / radius) for k in range(1, rounds_in_all + 1)]
    found = filled_height(rounds(*counts), 0.0)
    assert found is not None
    assert found.low == pytest.approx(2 * radius, rel=0.03)
    assert found.high == pytest.approx(2 * radius + CLOTH_GIVES * rounds_in_all)


def test_the_toys_usual_ball() -> None:
    """6, 12, 18, 24, four plain, 18, 12, 6 with stitches of 5 mm is printed as a ball of 38 mm (24 × 5 ÷ π):
    common practice, no source.
    """
    found = filled_height(rounds(*(n * 5.0 for n in TOY), rise=5.0), 0.0)
    assert found is not None
    assert 38 in found
    assert 25 not in found


def test_one_open_end_has_one_dome() -> None:
    """A finger of a toy: the dome of 24 around, then 20 rounds straight up."""
    found = filled_height(rounds(6, 12, 18, *[24] * 21), 0.0)
    assert found is not None
    assert found.low == pytest.approx(20 + 4 * math.sqrt(1 - (6 / math.tau) ** 2))
    assert found.high == pytest.approx(24 * 1.1 - 24 / 4 + 24 / math.tau)


def test_what_is_open_isnt_told() -> None:
    assert filled_height([], 0.0) is None
    assert filled_height(rounds(24, 24, 24), 24.0) is None
    assert filled_height(rounds(24, 24, 24), None) is None
    snowman = (6, 12, 24, 24, 12, 20, 20, 10, 5)
    assert has_waist(snowman)
    assert filled_height(rounds(*snowman), 0.0) is None


@given(st.floats(1, 100), st.floats(0.1, 300), st.floats(0.1, 300))
def test_a_longer_way_never_stands_lower(radius: float, one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert domed_height(short, radius) <= domed_height(long, radius) + 1e-9
    assert domed_height(long, radius) <= long


def test_sums_that_differ_by_a_hair_make_no_waist() -> None:
    """18 stitches of 100/22 mm, added up kind by kind, differ in the last digit."""
    pear = (27.3, 54.5, 163.6, 163.6, 81.81818181818181, 81.81818181818183, 81.81818181818183, 27.3)
    assert not has_waist(pear)
    assert has_waist((*pear[:5], 82.0, 27.3))
    assert filled_height(rounds(*pear, rise=20.0), 0.0) is not None
