"""The second ink, against published reference values of its colour space and contrast rule."""

from math import degrees

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.publish.ink import DARK_PAPER, INK, PAPER, contrast, luminance, oklab, oklch, second_ink

# OKLab of the sRGB primaries: CSS Color Module Level 4, section on OKLab, and its reference conversions
# (red oklch 62.8% 0.258 29.2, lime 86.6% 0.295 142.5, blue 45.2% 0.313 264.1).
PRIMARIES = [
    ("#ff0000", 0.628, 0.258, 29.2),
    ("#00ff00", 0.866, 0.295, 142.5),
    ("#0000ff", 0.452, 0.313, 264.1),
]


@pytest.mark.parametrize(("colour", "lightness", "chroma", "hue"), PRIMARIES)
def test_primaries_stand_where_css_color_4_puts_them(
    colour: str, lightness: float, chroma: float, hue: float
) -> None:
    worked = oklch(colour)
    assert worked[0] == pytest.approx(lightness, abs=0.001)
    assert worked[1] == pytest.approx(chroma, abs=0.001)
    assert degrees(worked[2]) % 360 == pytest.approx(hue, abs=0.1)


def test_white_has_full_lightness_and_no_colour() -> None:
    assert oklab("#ffffff") == pytest.approx((1.0, 0.0, 0.0), abs=1e-4)
    assert oklab("#000000") == pytest.approx((0.0, 0.0, 0.0), abs=1e-6)


def test_contrast_follows_wcag() -> None:
    # WCAG 2.2: black on white is 21 : 1; #767676 is the lightest grey with 4.5 : 1 on white (WebAIM's
    # well-known example: 4.54, and #777777 has 4.48).
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)
    assert luminance("#ffffff") == pytest.approx(1)


@given(st.integers(0, 0xFFFFFF), st.sampled_from([PAPER, DARK_PAPER]))
def test_every_yarn_reads_on_either_paper(number: int, paper: str) -> None:
    assert contrast(second_ink(f"#{number:06x}", paper), paper) >= 4.5


@given(st.integers(0, 0xFFFFFF), st.sampled_from([PAPER, DARK_PAPER]))
def test_the_hue_stays_where_there_is_one(number: int, paper: str) -> None:
    _, chroma, hue = oklch(f"#{number:06x}")
    _, ink_chroma, ink_hue = oklch(second_ink(f"#{number:06x}", paper))
    if chroma > 0.06 and ink_chroma > 0.06:
        away = abs(degrees(hue - ink_hue)) % 360
        assert min(away, 360 - away) < 4


def test_a_readable_yarn_is_left_alone_and_a_pale_one_darkened() -> None:
    assert second_ink("#3b6e6a", PAPER) == "#3b6e6a"
    assert oklch(second_ink("#e6d9bd", PAPER))[0] < oklch("#e6d9bd")[0] - 0.2


def test_a_black_yarn_still_differs_from_the_ink() -> None:
    assert oklch(second_ink("#101010", PAPER))[0] > oklch(INK)[0] + 0.08
