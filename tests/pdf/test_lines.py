"""Where a round's line may break. The words themselves must come through untouched."""

import re

import pytest
from markupsafe import Markup

from loopleaf.publish.booklet_lines import LONGEST_WHOLE, kept_together

FIRM = "\u00a0"


@pytest.mark.parametrize(
    ("text", "firm"),
    [
        ("2 hdc in next st", ["2 hdc", "next st"]),
        ("ch 3, turn", ["ch 3"]),
        ("2tr in next 3 sts", ["next 3 sts"]),
        ("join to 3rd ch of tch", ["3rd ch"]),
        ("join with sl st to first hdc", ["first hdc"]),
    ],
)
def test_a_number_stays_with_its_stitch(text, firm):
    made = str(kept_together(text))
    assert made.replace(FIRM, " ") == text
    for together in firm:
        assert together.replace(" ", FIRM) in made


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("ch 1, (inc, hdc in next 4 sts) × 8, join", "(inc, hdc in next 4 sts) × 8,"),
        ("[sc in next st, inc] 10 times", "[sc in next st, inc] 10 times"),
        ("(2 dc, ch 2, 2 dc) in next ch-2 sp", "(2 dc, ch 2, 2 dc)"),
        ("rep from * around, join", "from * around,"),
        ("24 dc, 24 ch-1 sps", "ch-1"),
    ],
)
def test_a_short_repeat_and_a_word_with_a_hyphen_stay_whole(text, whole):
    kept = re.findall(r'<span class="keep">(.*?)</span>', str(kept_together(text)))
    assert whole in [piece.replace(FIRM, " ") for piece in kept]


def test_a_long_repeat_may_break():
    text = "(sc in next st, hdc in next st, dc in next st, 3 tr in next st) × 8"
    assert len(text) > LONGEST_WHOLE
    assert "keep" not in str(kept_together(text))


@pytest.mark.parametrize("text", ["a < b & c", "(a < b) × 2", "ch-<i>1</i>"])
def test_markup_in_a_line_stays_text(text):
    assert Markup(kept_together(text)).striptags().replace(FIRM, " ") == text
