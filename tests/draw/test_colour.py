"""Light and shade; an edge that shows on both papers (WCAG 2.2, 1.4.11; luminance as there)."""

import pytest

from loopleaf.draw.colour import (
    FAINT,
    FAINT_ON_DARK,
    ink_on_dark,
    ink_on_light,
    level,
    luminance,
    outline_of,
    shaded,
)

LIGHT, DARK = "#fbf8f2", "#15191b"


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_luminance_of_black_and_white() -> None:
    assert luminance("#000000") == 0.0
    assert luminance("#ffffff") == pytest.approx(1.0)
    assert contrast("#ffffff", "#000000") == pytest.approx(21.0)


YARNS = ["#ffffff", "#efe9dc", "#c8553d", "#1f4e63", "#0a0a0a", "#000000", "#ffff00", "#0000ff"]


def laid_on(ink: str, paper: str, strength: float) -> str:
    """What an ink looks like that lets the paper through."""
    both = [(int(ink[at : at + 2], 16), int(paper[at : at + 2], 16)) for at in (1, 3, 5)]
    return "#" + "".join(f"{round(over * strength + below * (1 - strength)):02x}" for over, below in both)


@pytest.mark.parametrize("colour", YARNS)
def test_repeats_drawn_lighter_keep_three_to_one_on_either_paper(colour: str) -> None:
    """A chart's strokes 6.9 : 1 and more, what only repeats 3 : 1 (WCAG 2.2, 1.4.11), on dark paper 4.5 : 1,
    and plainly lighter.
    """
    for ink, paper, faint, least, apart in (
        (ink_on_light(colour), LIGHT, FAINT, 3.0, 1.6),
        (ink_on_dark(colour), DARK, FAINT_ON_DARK, 4.5, 1.4),
    ):
        light = laid_on(ink, paper, faint)
        assert contrast(ink, paper) >= 6.9
        assert contrast(light, paper) >= least
        assert contrast(ink, light) >= apart


@pytest.mark.parametrize("colour", YARNS)
def test_an_edge_of_any_yarn_shows_on_light_and_on_dark_paper(colour: str) -> None:
    edge = outline_of(colour)
    assert contrast(edge, LIGHT) >= 3
    assert contrast(edge, DARK) >= 3


def test_light_and_shade() -> None:
    assert shaded("#406080", 1.0) == "#406080"
    assert shaded("#406080", 0.5) == "#203040"
    assert shaded("#406080", 2.0) == "#ffffff"
    assert shaded("#406080", 0.0) == "#000000"


def test_levels_are_few_and_near() -> None:
    lights = [at / 100 for at in range(30, 120)]
    assert all(abs(level(light) - light) <= 0.025 + 1e-9 for light in lights)
    assert level(1.0) == 1.0
    assert len({level(light) for light in lights}) < 20
