"""Another height: numbers, names, counts, sizes, placements follow, and it always checks."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.alter import Altered, CannotAlter, NotUnderstood, adjust, wish
from loopleaf.alter import settings as offered
from loopleaf.review import Checked, check
from tests.alter.patterns import POUCH, checked, demo

ADJUSTABLE = ("lantern-pouch", "curlew-cap", "reed-tray")


def lines(altered: Altered) -> list[str]:
    return altered.text.splitlines()


def test_the_rounds_marked_grow_and_all_later_numbers_follow() -> None:
    made = adjust(checked(POUCH), wish("+3 rounds"))
    assert '- {rounds: 4-12, work: "ch 1, hdc in each st around, join", count: 24, adjustable: height}' in (
        made.text
    )
    assert "- {round: 13," in made.text
    assert "- round: 15\n" in made.text
    assert "- {round: 14, as: 13, count: 24}" in made.text
    assert "start: {edge: pouch, round: 15}" in made.text
    assert "note: Like round 12.}" in made.text
    assert "Fold the edge over at round 13." in made.text
    assert "lies flat: 1-3" in made.text


def test_a_round_within_keeps_its_share_of_the_way() -> None:
    """Round 5 is a fifth of the way from 4 to 9; of 4 to 14 that is round 6."""
    assert "Try it on after round 6." in adjust(checked(POUCH), wish("+5 rounds")).text


def test_stated_height_follows_and_the_weighed_yarn_goes() -> None:
    """Three rounds of 10 mm each (ten over 10 cm): 10 cm become 13."""
    made = adjust(checked(POUCH), wish("+3 rounds"))
    assert "finished size: {height: 13 cm}" in made.text
    assert "weighed:" not in made.text
    (need,) = made.yarn[0]
    assert need.grams is not None
    assert 40 < need.grams.middle < 40 * 13 / 10 * 1.1  # more than before, by no more than the height is


def test_comments_and_layout_stay() -> None:
    before, after = POUCH.splitlines(), lines(adjust(checked(POUCH), wish("+3 rounds")))
    assert len(before) == len(after)
    assert "# A pouch of my own." in after
    assert any(line.endswith("count: 8}   # eight, not six") for line in after)
    assert after[7] == "    A: {weight: 4, name: lichen}   # weighed on the kitchen scale"


def test_centimetres_are_whole_rounds() -> None:
    """Ten rounds over 10 cm: 2.6 cm are nearest to three rounds."""
    assert adjust(checked(POUCH), wish("+2.6 cm")).text == adjust(checked(POUCH), wish("+3 rounds")).text
    with pytest.raises(CannotAlter, match="about 10 mm high"):
        adjust(checked(POUCH), wish("+3 mm"))


def test_inches_may_be_halves_and_quarters() -> None:
    """1¼ in are 3.2 cm: three rounds."""
    for text in ("+1¼ in", "+1 1/4 in", '+1.25"', "+ 1¼ inches"):
        assert wish(text).mm == pytest.approx(31.75), text
    assert wish("-1½ in").mm == pytest.approx(-38.1)
    for text in ("", "+", "--3 cm", "+3", "tall", "+2.5 rounds", "+0 cm"):
        with pytest.raises(CannotAlter, match="isn't a change of height"):
            wish(text)


def test_one_round_must_stay() -> None:
    assert "- {rounds: 4-5," not in adjust(checked(POUCH), wish("-5 rounds")).text
    assert "- {rounds: 4," in adjust(checked(POUCH), wish("-5 rounds")).text
    with pytest.raises(CannotAlter, match="must stay"):
        adjust(checked(POUCH), wish("-6 rounds"))


def test_repeated_rows_change_by_whole_repeats() -> None:
    text = """\
title: Band
terms: US
materials: {yarns: {A: {name: oat}}, hook: 4 mm}
gauge: not critical
turning chains: {sc: does not count, dc: counts}
pieces:
  band:
    title: Band
    yarn: A
    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}
      - {row: 2, work: "ch 3 (counts as dc), dc in each remaining st, turn", count: 10}
      - {row: 3, work: "ch 1, sc in each st across, turn", count: 10}
      - {rows: 4-11, repeat: 2-3, adjustable: height}
      - {row: 12, as: 2, count: 10}
"""
    assert "{rows: 4-13, repeat: 2-3, adjustable: height}" in adjust(checked(text), wish("+2 rows")).text
    with pytest.raises(CannotAlter, match="2, 4, 6"):
        adjust(checked(text), wish("+3 rows"))
    with pytest.raises(CannotAlter, match="Without a gauge"):
        adjust(checked(text), wish("+3 cm"))
    gauge = text.replace("gauge: not critical", "gauge: {stitch: dc, stitches: 14, rows: 8, over: 10 cm}")
    taller = adjust(checked(gauge), wish("+3 cm"))  # 2 rows, of sc and dc, are about 19 mm
    assert "{rows: 4-15, repeat: 2-3, adjustable: height}" in taller.text
    with pytest.raises(CannotAlter, match="2 rounds, worked in turn, are about 19 mm"):
        adjust(checked(gauge), wish("+5 mm"))


def test_rounds_that_grow_cant_be_more() -> None:
    text = POUCH.replace(
        """{rounds: 4-9, work: "ch 1, hdc in each st around, join", count: 24, adjustable: height}""",
        """{rounds: 4-9, work: "ch 1, (inc, hdc in next n sts) x 8, join", n: {from: 2, step: 1},
        count: {from: 32, step: 8}, adjustable: height}""",
    )
    with pytest.raises(CannotAlter, match="differ from one another"):
        adjust(checked(text), wish("+1 round"))


def test_nothing_marked_nothing_offered() -> None:
    text = POUCH.replace(", adjustable: height", "")
    assert offered(checked(text)) == ()
    with pytest.raises(CannotAlter, match="marked `adjustable: height`"):
        adjust(checked(text), wish("+1 round"))


@pytest.mark.parametrize("text", ["3", "+three rounds", "+2.5 rounds", "wider", ""])
def test_a_wish_that_cant_be_read(text: str) -> None:
    with pytest.raises(CannotAlter, match="isn't a change of height"):
        wish(text)


@pytest.mark.parametrize(
    ("asked", "readings"),
    [
        ("20 cm", ["“+20 cm”", "about 10 cm high", "“+10 cm”"]),
        ("6 in", ["“+6 in”", "about 4 in high", "“+2 in”"]),
        ("7 cm", ["“+7 cm”", "about 10 cm high", "“-3 cm”"]),
        ("9 rounds", ["“+9 rounds”", "rounds 4-9 are 6 now", "“+3 rounds”"]),
        ("1 round", ["“+1 round”", "rounds 4-9 are 6 now", "“-5 rounds”"]),
    ],
)
def test_without_a_sign_both_readings_are_offered(asked: str, readings: list[str]) -> None:
    """A maker may mean so much more, or so much in all; the pouch is ten rounds of 10 mm."""
    with pytest.raises(NotUnderstood, match="more, or in all") as told:
        adjust(checked(POUCH), wish(asked))
    for one in readings:
        assert one in str(told.value), told.value


@pytest.mark.parametrize("asked", ["10 cm", "6 rounds"])
def test_as_high_as_it_is_may_still_be_meant_as_more(asked: str) -> None:
    with pytest.raises(NotUnderstood, match="as it is now") as told:
        adjust(checked(POUCH), wish(asked))
    assert f"“+{asked}”" in str(told.value)


def test_with_a_sign_nothing_is_asked_back() -> None:
    assert adjust(checked(POUCH), wish("+1 round")).text


@pytest.mark.parametrize("name", ADJUSTABLE)
def test_every_setting_offered_checks(name: str) -> None:
    before = demo(name)
    found = offered(before)
    assert len(found) >= 6
    for setting in found:
        assert setting.altered.checked.findings == []
        assert setting.altered.measured.yarn
        assert _rounds(setting.altered.checked) == _rounds(before) + setting.more


def _rounds(checked: Checked) -> int:
    assert checked.work is not None
    return sum(len(piece.rounds) for piece in checked.work.pieces)


def test_the_pouch_made_taller() -> None:
    """Worked out by hand: rounds 7-16 are ten; with three more the casing is round 20 and the edge round 22.

    The moon's middle lies on round 11, four ninths of the way up; four ninths of twelve are 5⅓, so round 12.
    Cords are twice the way around and stay as they are.
    """
    before = demo("lantern-pouch")
    made = adjust(before, wish("+3 cm"))
    assert "rounds: 7-19" in made.text
    assert "thread: {piece: cord, through: pouch, round: 20," in made.text
    assert "sew: {piece: moon, to: pouch, round: 12," in made.text
    assert "length: {times: 2, around: pouch, round: 20}" in made.text
    assert "add plain rounds between rounds 7 and 19" in made.text
    assert "The base lies flat to the end of round 6." in made.text
    assert before.measured is not None
    assert [cord.length_mm for cord in made.measured.cords[0]] == [
        cord.length_mm for cord in before.measured.cords[0]
    ]
    assert any("1 cm" in remark for remark in made.remarks)


def test_what_is_put_between_two_rounds_stays_between_neighbours() -> None:
    """Three ninths of the way up lies round 10; a third of twelve is 4, so round 11 of the taller one."""
    put = "finishing:\n  - place: {what: button, to: pouch, between: 10-11, stitches: 24}\n"
    before = check(demo("lantern-pouch").source.text.replace("finishing:\n", put, 1).encode(), "a.yml")
    made = adjust(before, wish("+3 cm"))
    assert "place: {what: button, to: pouch, between: 11-12, stitches: 24}" in made.text


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(ADJUSTABLE), st.integers(-3, 9).filter(lambda more: more != 0))
def test_an_adjusted_pattern_always_checks(name: str, more: int) -> None:
    assert adjust(demo(name), wish(f"{more:+d} rounds")).checked.findings == []
