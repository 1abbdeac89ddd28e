"""Flat, cups, ruffles, tube."""

import pytest

from loopleaf.measure.shape import ball_stitches, flatness, polygon_growth, standing_height_mm, stretches
from loopleaf.measure.size import RoundSize
from loopleaf.measure.units import Band


def rounds(*counts: int, width: float = 1.0, rise: float = 1.0, corners: int = 0) -> list[RoundSize]:
    return [
        RoundSize(
            str(at),
            n * width,
            Band(n * width, n * width),
            rise,
            at * rise,
            Band(at * rise, at * rise),
            n,
            corners,
        )
        for at, n in enumerate(counts, start=1)
    ]


def forms(*counts: int, start: float | None = 0.0, corners: int = 0) -> list[tuple[str, str, str]]:
    return [(s.form, s.first, s.last) for s in stretches(rounds(*counts, corners=corners), start, 1.0)]


def test_six_a_round_lies_flat():
    assert forms(6, 12, 18, 24) == [("flat", "1", "4")]


def test_four_a_round_cups_and_nine_ruffles():
    assert forms(4, 8, 12) == [("cups", "1", "3")]
    assert forms(9, 18, 27) == [("ruffles", "1", "3")]


def test_a_bag_is_flat_and_then_a_tube():
    assert forms(6, 12, 18, 24, 24, 24) == [("flat", "1", "4"), ("tube", "5", "6")]


def test_increases_every_other_round_are_judged_together():
    assert forms(6, 12, 12, 24, 24, 36) == [("flat", "1", "6")]


def test_drawing_in_cups():
    assert forms(6, 12, 12, 12, 6)[-1] == ("cups", "5", "5")


def test_a_square_with_eight_a_round_lies_flat():
    assert forms(8, 16, 24, 32, corners=4)[-1][0] == "flat"


def test_the_first_round_of_a_motif_spreads_into_the_next():
    """Nine, then six a round: 27 after four rounds, where 4 × 2π are 25. Twenty-four are too many."""
    assert forms(9, 15, 21, 27) == [("flat", "1", "4")]
    assert forms(24, 30, 36)[0] == ("ruffles", "1", "1")
    assert forms(12, 12, 12)[0] == ("ruffles", "1", "1")


def test_a_piece_on_an_edge_is_not_measured_against_a_point():
    assert forms(40, 40, 40, start=None) == [("tube", "1", "3")]
    assert forms(40, start=None) == [("flat", "1", "1")]


def test_flatness_of_some_rounds():
    six = flatness(rounds(6, 12, 18), 0.0, 1.0)
    assert six is not None
    assert six.grows == 6
    assert six.ratio == pytest.approx(6 / 6.2832, abs=1e-3)
    assert six.form == "flat"
    later = flatness(rounds(20, 30), 10.0, 1.0)
    assert later is not None
    assert later.form == "ruffles"


def test_flatness_needs_something_to_compare():
    assert flatness([], 0.0, 1.0) is None
    assert flatness(rounds(10), None, 1.0) is None
    grown = flatness(rounds(10, 16), None, 1.0)
    assert grown is not None
    assert grown.grows == 6


def test_a_flat_piece_has_no_height_and_a_bag_its_sides():
    flat = rounds(6, 12, 18)
    assert standing_height_mm(flat, stretches(flat, 0.0, 1.0), 0.0) == 0
    bag = rounds(6, 12, 18, 18, 18)
    assert standing_height_mm(bag, stretches(bag, 0.0, 1.0), 0.0) == pytest.approx(2)


def test_a_polygon_of_many_corners_is_a_circle():
    assert polygon_growth(10_000, 1, 1) == pytest.approx(6.283185, abs=1e-4)
    assert polygon_growth(4, 1, 1) == pytest.approx(8)


def test_a_ball_has_no_round_beyond_its_pole():
    with pytest.raises(ValueError, match="no round 14"):
        ball_stitches(14, 12 / 3.14159, 1, 1)
