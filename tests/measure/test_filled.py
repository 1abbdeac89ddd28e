"""How tall stuffed pieces stand, against the ball, the dome and the cylinder of the textbooks."""

import itertools
import math

import pytest

from loopleaf.measure.filled import CLOTH_GIVES, PRESSED, filled_height, filled_side, has_waist
from loopleaf.measure.size import RoundSize
from loopleaf.measure.units import Band

TOY = (6, 12, 18, 24, 24, 24, 24, 24, 18, 12, 6)


def rounds(*counts: float, rise: float = 1.0) -> list[RoundSize]:
    return [
        RoundSize(str(at), n, Band(n, n), rise, at * rise, Band(at * rise, at * rise), round(n), 0)
        for at, n in enumerate(counts, start=1)
    ]


@pytest.mark.parametrize("rounds_in_all", [12, 24, 48])
def test_a_true_ball_is_as_high_as_it_is_across(rounds_in_all: int) -> None:
    """Counts of the sphere's own formula 2πR·sin(s/R) in the middle of each round: 2R from pole to pole."""
    radius = rounds_in_all / math.pi
    counts = [math.tau * radius * math.sin((k - 0.5) / radius) for k in range(1, rounds_in_all + 1)]
    found = filled_height(rounds(*counts), 0.0)
    assert found is not None
    assert found.middle == pytest.approx(2 * radius, rel=0.04)


def test_the_toys_usual_ball() -> None:
    """6, 12, 18, 24, four plain, 18, 12, 6 with stitches of 5 mm is printed as a ball of 38 mm (24 × 5 ÷ π):
    common practice, no source.
    """
    found = filled_height(rounds(*(n * 5.0 for n in TOY), rise=5.0), 0.0)
    assert found is not None
    assert found.middle == pytest.approx(24 * 5 / math.pi, rel=0.1)


def test_a_head_open_at_its_neck_is_no_higher_than_its_ball() -> None:
    """Twelve rounds of 4.35 mm, 30 stitches of 4.55 mm around, 18 at the neck: on a ball of 21.7 mm they
    reach 52.2 ÷ 21.7 = 2.4 rad from the pole, which is 21.7·(1 − cos 2.4) = 37.7 mm high (textbook geometry).
    """
    counts = (6, 12, 18, 24, 30, 30, 30, 30, 30, 30, 24, 18)
    found = filled_height(rounds(*(n * 4.545 for n in counts), rise=4.348), 0.0)
    assert found is not None
    assert found.middle == pytest.approx(37.7, rel=0.05)


def test_one_open_end_has_one_dome() -> None:
    """A finger of a toy: the dome of 24 around, 4 high or less, then 20 rounds straight up."""
    found = filled_height(rounds(6, 12, 18, *[24] * 21), 0.0)
    assert found is not None
    assert 20 * PRESSED < found.middle < 24 * PRESSED


def test_what_is_open_at_both_ends_is_as_high_as_its_cloth() -> None:
    """A cylinder."""
    for start in (24.0, None):
        found = filled_height(rounds(24, 24, 24), start)
        assert found is not None
        assert found.middle == pytest.approx(3)


def test_an_oval_begins_on_its_chain() -> None:
    """Straight along both sides of a chain of 10, round at its ends: as high as the ball between them."""
    ball = tuple(math.tau * 4 * math.sin((k - 0.5) / 4) for k in range(1, 13))
    oval = filled_height(rounds(*(20 + one for one in ball)), None, 10.0)
    round_one = filled_height(rounds(*ball), 0.0)
    assert oval is not None
    assert round_one is not None
    assert oval.middle == pytest.approx(round_one.middle)


@pytest.mark.parametrize("counts", [TOY, (6, 12, 18, 24, 30, 36), (6, 12, 12), (6, 24, 24, 12)])
def test_no_round_is_longer_than_its_cloth_gives(counts: tuple[int, ...]) -> None:
    side = filled_side(tuple(n / math.tau for n in counts), (1.0,) * len(counts), 0.0)
    longest = max(math.dist(below, above) for below, above in itertools.pairwise(side))
    assert longest <= PRESSED + 1e-9 < 1 + CLOTH_GIVES
    assert max(out for out, _ in side) <= max(counts) / math.tau + 1e-9


def test_a_longer_piece_stands_higher() -> None:
    heights = [filled_height(rounds(6, 12, 18, *[24] * plain, 18, 12, 6), 0.0) for plain in (3, 5, 9, 20)]
    known = [one.middle for one in heights if one is not None]
    assert len(known) == len(heights)
    assert known == sorted(known)


def test_what_is_open_isnt_told() -> None:
    assert filled_height([], 0.0) is None
    snowman = (6, 12, 24, 24, 12, 20, 20, 10, 5)
    assert has_waist(snowman)
    assert filled_height(rounds(*snowman), 0.0) is None


def test_sums_that_differ_by_a_hair_make_no_waist() -> None:
    """18 stitches of 100/22 mm, added up kind by kind, differ in the last digit."""
    pear = (27.3, 54.5, 163.6, 163.6, 81.81818181818181, 81.81818181818183, 81.81818181818183, 27.3)
    assert not has_waist(pear)
    assert has_waist((*pear[:5], 82.0, 27.3))
    assert filled_height(rounds(*pear, rise=20.0), 0.0) is not None
