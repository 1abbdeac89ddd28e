"""Lines set for reading: what stays together, and that nothing else changes."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from loopleaf.publish.typesetting import set_amounts, set_count, set_line


@pytest.mark.parametrize(
    ("line", "together"),
    [
        ("ch 1, 8 hdc in ring", ["ch 1", "8 hdc"]),
        ("sk 2 sts, sh in next st", ["2 sts", "next st"]),
        ("2 sl st in next 3 sts", ["2 sl st", "next 3 sts"]),
        ("24 dc, 24 ch-1 sps", ["24 dc", "24 ch-1 sps"]),
        ("rep from * 4 more times", ["rep from *", "4 more times"]),
        ("25 cm (9¾ in) around", ["25 cm", "9¾ in"]),
    ],
)
def test_a_number_stays_with_its_stitch(line: str, together: list[str]) -> None:
    assert re.findall(r'<span class="k">([^<]*)</span>', set_line(line)) == together


def test_a_short_repeat_stays_whole_on_a_phone_and_a_longer_one_on_a_desk() -> None:
    assert '<span class="r">' in set_line("(inc, hdc in next 2 sts) × 8, join")
    assert '<span class="rr">' in set_line("(hdc in next 9 sts, 2 hdc in next st) × 8, join")
    assert 'class="r' not in set_line(f"({'hdc in next st, ' * 9}inc) × 8")


def test_the_comma_after_a_repeat_stays_with_it() -> None:
    assert "8</span>,</span>" in set_line("(inc, hdc in next 2 sts) × 8, join")


def test_what_the_author_wrote_is_escaped() -> None:
    assert set_line("<b> & (2 < 3) × 2") == Markup(
        '&lt;b&gt; &amp; <span class="r">(2 &lt; 3) <span class="k">× 2</span></span>'
    )


@given(st.text(alphabet="ab2 ()[]*,×<&'next st", max_size=60))
def test_the_words_and_their_order_stay(line: str) -> None:
    assert Markup(set_line(line)).striptags() == Markup.escape(line).striptags()


def test_a_number_before_a_name_that_begins_with_one_stands_out() -> None:
    assert set_count("12 tr, 4 2ch-sps") == Markup(
        '<span class="k">12 tr</span>, <span class="k"><span class="n">4</span> 2ch-sps</span>'
    )
    assert set_count("15 (17, 19) dc, 3 (4, 4) 12ch-sps").count('class="n"') == 1
    assert 'class="n"' not in set_count("24 dc, 24 ch-1 sps")
    assert 'class="n"' not in set_count("40 (48, 56)")


def test_a_cell_keeps_amounts_with_their_units():
    set_cell = str(set_amounts("about 53.5 cm (21 in) <wide>"))
    assert set_cell == 'about <span class="k">53.5 cm</span> <span class="k">(21 in)</span> &lt;wide&gt;'


def test_a_sentence_keeps_what_runs_from_one_number_to_another() -> None:
    assert set_line("over stitches 11–14.") == Markup('over <span class="k">stitches 11–14</span>.')
    assert set_amounts("over stitches 11–14.") == Markup('over stitches <span class="k">11–14</span>.')
