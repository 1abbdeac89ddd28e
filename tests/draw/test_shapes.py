"""Forms that are defined once: in dashed strokes the bars that tell a stitch's height stay whole."""

import re

import pytest

from loopleaf.draw import chart_of
from loopleaf.draw.colour import WORDS, ink_on_light
from loopleaf.draw.drawn_together import drawn_together
from loopleaf.draw.shapes import is_bar, stroked
from loopleaf.draw.signs import CROSS, Sign, lines
from tests.measure.worked_patterns import worked

TWO_YARNS = """
mat:
  yarn: A
  worked: joined rounds
  start: magic ring
  rounds:
    - {round: 1, work: "ch 3 (counts as dc), 11 dc in ring, join"}
    - {round: 2, yarn: B, work: "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join"}
    - {round: 3, yarn: B, work: "ch 2 (counts as dc), dc2tog over next 2 sts, dc in each st around, join"}
"""
ONE_YARN = TWO_YARNS.replace("yarn: B, ", "")


@pytest.mark.parametrize(
    ("kind", "bars"), [("half", 1), ("double", 2), ("treble", 3), ("double-treble", 4), ("single", 0)]
)
def test_the_head_and_a_bar_for_each_yarn_over_stay_whole(kind: str, bars: int) -> None:
    """A bar for each yarn over from the double on: as in `signs`, common practice."""
    found = stroked(lines(Sign(kind)), "", True)
    whole = re.findall('<path stroke-dasharray="none" d="([^"]*)"', found)
    assert sum(way.count("M") for way in whole) == bars
    assert stroked(lines(Sign(kind)), "", False).count("<path") == 1


def test_a_stem_and_the_arms_of_a_cross_are_no_bars() -> None:
    assert not is_bar("M0 -.6V-18.4")
    assert not any(is_bar(f"M{part}") for part in CROSS.split("M") if part)
    assert is_bar("M-2.4 -12l4.8 -2.2")
    assert is_bar("M-3.4 -18h6.8")
    assert not is_bar("M-3.4 -18h9")


def test_bars_of_stitches_drawn_together_stay_whole_and_their_legs_do_not() -> None:
    way = drawn_together("double", [(-5.0, 19.0), (5.0, 19.0)])
    whole = re.findall('<path stroke-dasharray="none" d="([^"]*)"', stroked(way, "", True))
    assert [part.count("M") for part in whole] == [3]


def test_only_a_chart_of_several_yarns_has_whole_bars_beside_dashed_strokes() -> None:
    charts = [chart_of(worked(text)) for text in (TWO_YARNS, ONE_YARN)]
    dashes = [chart.svg().count('stroke-dasharray="none"') if chart is not None else -1 for chart in charts]
    assert dashes[0] > 0
    assert dashes[1] == 0


def test_signs_in_the_key_are_in_the_ink_of_words_where_yarns_are_several() -> None:
    several, single = (chart_of(worked(text)) for text in (TWO_YARNS, ONE_YARN))
    assert several is not None
    assert single is not None
    assert several.pieces[0].colour == WORDS
    assert single.pieces[0].colour != WORDS
    assert f".ink-{WORDS[1:]}{{" in several.svg()
    assert single.pieces[0].colour in {ink_on_light("#3d5c74"), *single.pieces[0].inks}
