"""Amounts as patterns print them."""

import pytest

from loopleaf.measure import amounts
from loopleaf.measure.units import Band
from loopleaf.pattern.values import Length, Lengths, LengthUnit


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (345, "34.5 cm (13½ in)"),
        (135, "13.5 cm (5¼ in)"),
        (342.857, "34.5 cm (13½ in)"),
        (700, "70 cm (27½ in)"),
        (18, "18 mm (¾ in)"),
        (22.2, "2 cm (⅞ in)"),
        (15, "15 mm (⅝ in)"),
    ],
)
def test_length(mm: float, text: str):
    assert amounts.length(mm) == text


def test_lengths_one_a_size():
    assert amounts.lengths((370, 405, None)) == "37 (40.5, -) cm, 14½ (16, -) in"
    assert amounts.lengths((345, 345)) == "34.5 cm (13½ in)"


def test_spans_outward_and_never_a_decimal():
    assert amounts.spans((Band(200, 300),)) == "20 to 30 cm (7 to 12 in)"
    assert amounts.spans((Band(150, 150),)) == "15 cm (6 in)"
    assert amounts.spans((Band(162.3, 243.4),)) == "15 to 25 cm (6 to 10 in)"
    assert amounts.spans((Band(200, 300), None)) == "20 to 30 (-) cm, 7 to 12 (-) in"


@pytest.mark.parametrize(
    ("typed", "count", "text"),
    [
        (Lengths((Length(34.5, "cm"),)), 1, "34.5 cm (13½ in)"),
        (Lengths((Length(11.3, "cm"),)), 3, "11.3 cm (4½ in)"),
        (Lengths((Length(13.5, "in"),)), 1, "34.5 cm (13½ in)"),
        (
            Lengths((Length(37, "cm"), Length(40.5, "cm"), Length(44, "cm"))),
            3,
            "37 (40.5, 44) cm, 14½ (16, 17¼) in",
        ),
        (Lengths((Length(37, "cm"), None)), 2, "37 (-) cm, 14½ (-) in"),
    ],
)
def test_a_stated_length_keeps_the_authors_figure(typed: Lengths, count: int, text: str):
    assert amounts.stated(typed, count) == text


def test_yarn_is_rounded_up():
    assert amounts.metres(88.4) == "89 m (97 yd)"
    assert amounts.metres(85) == "85 m (93 yd)"


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (50, "50 g (1¾ oz)"),
        (100, "100 g (3½ oz)"),
        (52, "52 g (1¾ oz)"),
        (200, "200 g (7 oz)"),
        (9, "9 g (¼ oz)"),
        (2, "2 g (under ⅛ oz)"),
    ],
)
def test_weight(grams: float, text: str):
    assert amounts.weight(grams) == text


def test_a_small_estimate_isnt_stretched():
    assert amounts.about_grams(Band(0.95, 1.05)) == "about 1 g (under ⅛ oz)"
    assert amounts.about_grams(Band(0.85, 1.2)) == "up to 2 g (under ⅛ oz)"
    assert amounts.about_metres(Band(0.8, 2.4)) == "up to 3 m (up to 3 yd)"
    assert amounts.about_metres(Band(1.3, 2.4)) == "about 1 to 3 m (1 to 3 yd)"


def test_an_estimate_says_about_and_is_never_finer_than_it_is():
    assert amounts.about_metres(Band(66.2, 110.4)) == "about 60 to 120 m (70 to 130 yd)"
    assert amounts.about_grams(Band(38.9, 64.9)) == "about 35 to 65 g (1¼ to 2½ oz)"
    assert amounts.about_grams(Band(27, 28)) == "about 25 to 30 g (¾ to 1 oz)"
    assert amounts.about_grams(Band(17.6, 31)) == "about 15 to 35 g (½ to 1¼ oz)"


@pytest.mark.parametrize(("mm", "text"), [(19.4, "19 mm"), (19.6, "2 cm"), (20.2, "2 cm"), (23, "2.5 cm")])
def test_millimetres_end_where_centimetres_begin(mm: float, text: str):
    assert amounts.centimetres(mm) == text


@pytest.mark.parametrize(
    ("hours", "text"),
    [
        (Band(0.5, 0.85), "about 30 to 50 minutes"),
        (Band(0.01, 0.02), "about 5 minutes"),
        (Band(1.1, 2.1), "about 1 to 2 hours"),
        (Band(2.6, 4.4), "about 2½ to 4½ hours"),
        (Band(20.4, 33.3), "about 20 to 33 hours"),
        (Band(1.9, 2.1), "about 2 hours"),
    ],
)
def test_hours(hours: Band, text: str):
    assert amounts.about_hours(hours) == text


def test_coarse_rounds_outward():
    for low, high in ((3.2, 4.9), (61, 88), (180, 260), (490, 1210)):
        band = amounts.coarse(Band(low, high))
        assert band.low <= low
        assert band.high >= high


def test_a_gram_is_not_no_ounce() -> None:
    """28.349523125 g to the ounce, by the international agreement of 1959: 1 g is 0.035 oz."""
    assert amounts.weight(1) == "1 g (under ⅛ oz)"
    assert amounts.weight(4) == "4 g (⅛ oz)"


def test_sizes_that_read_alike_are_told_once() -> None:
    assert amounts.lengths((121.4, 121.1, 121.3)) == "12 cm (4¾ in)"
    assert amounts.lengths((121.4, 131.1)) == "12 (13) cm, 4¾ (5¼) in"


@pytest.mark.parametrize(
    ("sizes", "text"),
    [
        ((297.0,), "30 cm (11½ in)"),
        ((84.0,), "8.5 cm (3¼ in)"),
        ((297.0, None, 352.0), "30 (-, 35) cm, 11½ (-, 14) in"),
        ((300.0, 303.0), "30 cm (12 in)"),
    ],
)
def test_what_is_good_to_a_tenth_has_no_false_decimal(sizes: tuple[float | None, ...], text: str) -> None:
    assert amounts.coarse_lengths(sizes) == text


@pytest.mark.parametrize(
    ("amount", "unit", "said"),
    [
        (14.3, "cm", "14.3 cm (5¾ in)"),
        (143, "mm", "143 mm (5¾ in)"),
        (7.1, "in", "7.1 in (18 cm)"),
        (1, "ft", "1 ft (30.5 cm)"),
    ],
)
def test_a_length_is_quoted_as_typed(amount: float, unit: LengthUnit, said: str) -> None:
    assert amounts.as_typed(Length(amount, unit)) == said
