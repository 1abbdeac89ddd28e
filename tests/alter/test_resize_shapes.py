"""Balls, ovals, other pieces than the first, one of several sizes: resized, they check and counts hold."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.alter import (
    CannotAlter,
    Fitted,
    NotUnderstood,
    fit_around,
    fit_gauge,
    fit_sized,
    in_size,
    swatch,
)
from loopleaf.alter.around import way_around
from loopleaf.review import Checked
from tests.alter.patterns import checked, demo

HEAD = """\
title: Sample
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
materials: {yarns: {A: {weight: 4, name: lichen}}, hook: 5.5 mm, notions: [stuffing, needle]}
gauge: {stitch: sc, stitches: 14, rows: 14, over: 10 cm}
turning chains: {sc: does not count}
"""
TOY = (
    HEAD
    + """\
finished size: {around: 17 cm}
pieces:
  toy:
    title: Toy
    yarn: A
    worked: spiral rounds
    start: magic ring
    rounds:
      - {round: 1, side: RS, work: "6 sc in ring", count: 6}
      - {rounds: 2-4, work: "(sc in next n sts, inc) x 6", n: {from: 0, step: 1}, count: {from: 12, step: 6}}
      - {rounds: 5-8, work: "sc in each st around", count: 24}
      - stuff: Fill it firmly.
      - rounds: 9-10
        work: (sc in next n sts, dec) x 6
        n: {from: 2, step: -1}
        count: {from: 18, step: -6}
      - {round: 11, work: "dec x 6, fasten off", count: 6}
finishing:
  - text: Draw the hole closed and weave in the end.
"""
)
MAT = (
    HEAD.replace("stuffing, ", "")
    + """\
finished size: {length: 13.5 cm, width: 4.5 cm}
pieces:
  mat:
    title: Mat
    yarn: A
    worked: joined rounds
    start: chain 15, both sides
    lies flat: 1-3
    rounds:
      - round: 1
        side: RS
        work: "2 sc in 2nd ch from hook, sc in next 12 chs, 3 sc in last ch,
          working along other side of foundation ch, sc in next 12 chs, sc in last ch, join"
        count: 30
      - {round: 2, work: "ch 1, (inc x 2, sc in next 12 sts, inc) x 2, join", count: 36}
      - round: 3
        work: "ch 1, (sc in next st, inc, sc in next st, inc, sc in next 13 sts, inc) x 2, join, fasten off"
        count: 42
"""
)


def text_of(fitted: Fitted) -> str:
    assert fitted.altered is not None
    return fitted.altered.text


def holds(fitted: Fitted) -> bool:
    """It checks from its file alone, and every stated count is what is worked."""
    again = checked(text_of(fitted))
    assert again.work is not None
    for piece in again.work.pieces:
        for round in piece.rounds:
            worked = round.sizes[0]
            assert worked is not None
            if round.plan.stated and round.plan.stated.isdigit():
                assert int(round.plan.stated) == worked.count
    return not [one for one in again.findings if one.severity != "note"]


def test_what_is_altered_here_is_right() -> None:
    assert checked(TOY).findings == []
    assert checked(MAT).findings == []


def test_a_ball_grows_on_both_sides_of_its_middle() -> None:
    """By hand: 17 cm at 14 over 10 cm are 24 stitches, 21 cm 30. Eleven rounds become 11 × 30 ÷ 24 = 13.75:
    14, of which one more grows and one more draws in, so that five stay plain.
    """
    fitted = fit_around(checked(TOY), checked(TOY), 214)
    text = text_of(fitted)
    assert "{rounds: 2-5, work:" in text
    assert '{rounds: 6-10, work: "sc in each st around", count: 30}' in text
    assert "- rounds: 11-13\n" in text
    assert "n: {from: 3, step: -1}\n        count: {from: 24, step: -6}" in text
    assert "{round: 14, work:" in text
    assert "around: 21.5 cm" in text
    assert holds(fitted)


def test_a_ball_becomes_smaller() -> None:
    fitted = fit_around(checked(TOY), checked(TOY), 129)
    text = text_of(fitted)
    assert "{rounds: 2-3, work:" in text
    assert "n: {from: 1, step: -1}\n        count: {from: 12, step: -6}" in text
    assert holds(fitted)


def test_a_ball_keeps_its_stripe_in_its_middle() -> None:
    text = text_of(fit_around(demo("pebble-ball"), demo("pebble-ball"), 210))
    assert 'work: "(sc in next 12 sts, inc) x 3, changing to B on last yo", count: 42' in text
    assert '- {round: 9, work: "(sc in next 11 sts, inc) x 3", count: 39}' in text
    assert 'work: "with A, (sc in next 12 sts, invisible dec) x 3", count: 39' in text
    assert text.count("changing to B") == 1
    assert text.count("with A") == 1


def test_a_ball_reaches_what_whole_rounds_do_not() -> None:
    """By hand: 19.3 cm at 14 over 10 cm are 27 stitches. Behind 24 one round adds 3, every eighth stitch, one
    takes 3 back. Of 11 × 27 ÷ 24 = 12.4 rounds, 12, three stay plain.
    """
    fitted = fit_around(checked(TOY), checked(TOY), 193)
    text = text_of(fitted)
    assert '{round: 5, work: "(sc in next 7 sts, inc) x 3", count: 27}' in text
    assert '{rounds: 6-8, work: "sc in each st around", count: 27}' in text
    assert '{round: 9, work: "(sc in next 7 sts, dec) x 3", count: 24}' in text
    assert "- rounds: 10-11\n" in text
    assert "{round: 12, work:" in text
    assert fitted.around_mm == pytest.approx(27 / 14 * 100)
    assert holds(fitted)


def test_the_round_between_stands_before_one_that_changes_the_yarn() -> None:
    fitted = fit_around(demo("pebble-ball"), demo("pebble-ball"), 200)
    text = text_of(fitted)
    assert '{round: 9, work: "sc in next 35 sts, inc", count: 37}' in text
    assert "sc in next 12 sts, inc, changing to B on last yo" in text
    assert '{round: 15, work: "sc in next 32 sts, invisible dec", count: 33}' in text
    assert "at the end of round 12" in text
    assert holds(fitted)


def test_a_ball_in_another_gauge_stays_a_ball() -> None:
    """Rows half as tall as before take twice as many rounds from pole to pole."""
    fitted = fit_gauge(checked(TOY), swatch("14 sts, 28 rows / 10 cm"))
    assert fitted.altered is None or fitted.altered.measured is not None
    wider = fit_gauge(checked(TOY), swatch("18 sts, 18 rows / 10 cm"))
    assert wider.altered is not None
    piece = wider.altered.measured.pieces[0]
    assert piece.size[0]["around"].middle == pytest.approx(24 / 14 * 100, rel=0.05)
    assert piece.known_rounds(0)[-1].height_mm == pytest.approx(11 / 14 * 100, rel=0.05)


def test_an_oval_grows_by_its_chain() -> None:
    """By hand: 42 stitches are 30 cm around; 40 cm are 56, so seven more along either side."""
    fitted = fit_around(checked(MAT), checked(MAT), 400)
    text = text_of(fitted)
    assert "start: chain 22, both sides" in text
    assert "sc in next 19 chs, 3 sc in last ch" in text
    assert "(inc x 2, sc in next 19 sts, inc) x 2" in text
    assert "sc in next st, inc, sc in next 20 sts, inc) x 2" in text
    assert "length: 18.5 cm, width: 4.5 cm" in text
    assert holds(fitted)


def test_an_oval_tray_moves_its_handles_along() -> None:
    text = text_of(fit_around(demo("reed-tray"), demo("reed-tray"), 855))
    assert "chain 14, both sides" in text  # a round of 6 more, and one stitch more along either side
    assert "count: {from: 40, step: 6}" in text
    assert "sc in next 38 sts, ch 12, sk 9 sts, sc in next 37 sts" in text


@pytest.mark.parametrize(
    ("mm", "around", "chain", "last", "along"),
    [
        (620, 68, 13, 8, (25, 24)),  # three rounds of 6 fewer, so 9 stitches fewer along either side
        (545, 60, 12, 7, (21, 20)),  # four rounds, and one chain: 26 stitches, 13 a side
        (890, 98, 13, 13, (40, 39)),  # two rounds more: 12 stitches, 6 a side
    ],
)
def test_a_tray_loses_rounds_and_its_handles_stay_opposite(
    mm: int, around: int, chain: int, last: int, along: tuple[int, int]
) -> None:
    """By hand: 86 stitches are 78 cm around, a round of the base adds 6, a chain 2."""
    fitted = fit_around(demo("reed-tray"), demo("reed-tray"), mm)
    text = text_of(fitted)
    assert f"start: chain {chain}, both sides" in text
    assert f"{{rounds: 3-{last}, work:" in text
    assert f"count: {around}," in text
    there, back = along
    assert f"ch 12, sk 9 sts, sc in next {there} sts, ch 12, sk 9 sts, sc in next {back} sts" in text
    assert 1 + 9 + there + 9 + back == around
    assert 9 + there == around // 2  # from one handle's beginning to the other's
    assert holds(fitted)


def test_another_piece_than_the_first() -> None:
    """The seal's head: 30 stitches become 36, its muzzle's 4 of round 8 lie at the same share of the way."""
    fitted = fit_around(demo("sandbank-seal"), demo("sandbank-seal"), 164, "head")
    before, after = demo("sandbank-seal"), fitted.altered
    assert after is not None
    assert way_around(after.checked, "body") == way_around(before, "body")
    assert fitted.around_mm == pytest.approx((way_around(before, "head") or 0) * 36 / 30)
    with pytest.raises(NotUnderstood, match="No piece is called “tail”"):
        fit_around(before, before, 160, "tail")


def test_a_picture_in_squares_keeps_its_squares() -> None:
    for alter in (
        lambda one: fit_around(one, one, 60.0),
        lambda one: fit_gauge(one, swatch("30 sts")),
    ):
        with pytest.raises(CannotAlter, match="worked from a picture in squares"):
            alter(demo("lighthouse-bookmark"))


def test_what_is_wrong_with_the_rounds_is_said_first() -> None:
    """Leaves have stitches of their own in every round; sizes that can't be worked out aren't spoken of."""
    with pytest.raises(CannotAlter) as no:
        fit_around(demo("purslane-garland"), demo("purslane-garland"), 100.0)
    assert all("how large" not in one for one in no.value.reasons)
    assert any("round 1" in one for one in no.value.reasons)


def test_the_last_round_is_never_left_out() -> None:
    with pytest.raises(CannotAlter):
        fit_around(demo("sandbank-seal"), demo("sandbank-seal"), 110, "head")


@pytest.mark.parametrize("name", ["curlew-cap", "gull-collar"])
def test_each_size_alone_is_a_pattern_that_checks(name: str) -> None:
    whole = demo(name)
    assert whole.source.pattern is not None
    assert whole.measured is not None
    for at, size in enumerate(whole.source.pattern.sizes):
        alone = in_size(whole, str(size))
        assert alone.findings == []
        assert alone.work is not None
        assert alone.measured is not None
        assert alone.source.pattern is not None
        assert alone.source.pattern.sizes == ()
        own = [one.sizes[at] for one in whole.work.pieces[0].rounds] if whole.work else []
        counts = [one.count for one in own if one is not None]
        assert [one.sizes[0].count for one in alone.work.pieces[0].rounds if one.sizes[0]] == counts
        numbers = [one.plan.number for one in alone.work.pieces[0].rounds]
        assert numbers == list(range(1, len(numbers) + 1))
        assert alone.measured.pieces[0].size[0] == whole.measured.pieces[0].size[at]


def test_a_size_that_skips_a_step_is_written_without_it() -> None:
    band = HEAD.replace("notions: [stuffing, needle]", "notions: [needle]").replace(
        "terms: US", "terms: US\nsizes: [S, M, L]"
    )
    band += """\
finished size: {width: "7 (10, 13) cm"}
notes: ["It takes 2 (3, 4) evenings."]
pieces:
  band:
    title: Band
    yarn: A
    worked: rows
    start: chain 11 (15, 19)
    rows:
      - {row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, turn", count: "10 (14, 18)"}
      - {row: 2, work: "ch 1, sc2tog - (1, 2) times, sc in each st across, turn", count: "10 (13, 16)"}
      - {row: 3, sizes: [M, L], work: "ch 1, sc in each st across, turn", count: "- (13, 16)"}
      - {row: 4, work: "ch 1, sc in each st across, fasten off", count: "10 (13, 16)", note: Like row 2.}
"""
    whole = checked(band, "band.yml")
    if whole.has_errors:
        band = band.replace("sc2tog - (1, 2) times", "(sc2tog) x - (1, 2)")
        whole = checked(band, "band.yml")
    assert not whole.has_errors, whole.findings
    small = in_size(whole, "s")
    assert "chain 11\n" in small.source.text
    assert '- {row: 2, work: "ch 1, sc in each st across, turn", count: "10"}' in small.source.text
    assert '{row: 3, work: "ch 1, sc in each st across, fasten off", count: "10", note: Like row 2.}' in (
        small.source.text
    )
    assert "It takes 2 evenings." in small.source.text
    assert small.source.pattern is not None
    assert small.source.pattern.title == "Sample, S"


def test_of_several_sizes_the_nearest_is_altered() -> None:
    alone, fitted = fit_sized(demo("curlew-cap"), 545.0)
    assert alone.source.pattern is not None
    assert alone.source.pattern.title == "Curlew cap, adult"
    assert fitted.around_mm == pytest.approx(545, abs=7)
    with pytest.raises(CannotAlter, match=r"Its sizes are toddler 42\.5 cm") as no:
        fit_sized(demo("curlew-cap"), 200.0)
    assert "no size near to 20 cm" in no.value.reasons[1]
    with pytest.raises(NotUnderstood, match="No size is called “giant”; the pattern has toddler, child"):
        in_size(demo("curlew-cap"), "giant")
    with pytest.raises(CannotAlter, match="written in one size"):
        in_size(demo("lantern-pouch"), "M")


# ---- caps from the brim up ----------------------------------------------------------------------

_PLAIN = """\
      - {round: 1, work: "ch 1, hdc in each ch around, join", count: 72}
      - {rounds: 2-12, work: "ch 1, hdc in each st around, join", count: 72}
      - heading: Crown
"""
_ONE_BY_ONE = "".join(
    f'      - {{round: {12 + turn}, work: "ch 1, (hdc in next {8 - turn} sts, hdc2tog) x 8, join", '
    f"count: {72 - 8 * turn}}}\n"
    for turn in range(1, 7)
)
_BY_RULE = """\
      - {rounds: 13-18, work: "ch 1, (hdc in next n sts, hdc2tog) x 8, join", n: {from: 7, step: -1}, count: {from: 64, step: -8}}
"""  # noqa: E501
_TOP = """\
      - {round: 19, work: "ch 1, (hdc in next st, hdc2tog) x 8, join", count: 16}
      - {round: 20, work: "ch 1, hdc2tog x 8, join, fasten off", count: 8}
finishing:
  - text: Close the top of round 20 with the tail, below round 13.
"""
_CAP = """\
title: Cap
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
level: basic
materials: {yarns: {A: {weight: 4}}, hook: 5 mm, notions: [tapestry needle]}
gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
finished size: {around: 51.5 cm}
turning chains: {hdc: does not count}
pieces:
  cap:
    title: Cap
    yarn: A
    worked: joined rounds
    start: chain 72, joined
    rounds:
"""
CAPS = {
    "one by one": checked(_CAP + _PLAIN + _ONE_BY_ONE + _TOP),
    "by rule": checked(_CAP + _PLAIN + _BY_RULE + _TOP),
}


@pytest.mark.parametrize("name", CAPS)
def test_a_cap_from_its_brim_draws_in_once_more(name: str) -> None:
    """57 cm at 14 over 10 cm are 80 stitches: 8 more, and one round of 8 decreases more."""
    fitted = fit_around(CAPS[name], CAPS[name], 570.0)
    assert holds(fitted)
    assert fitted.altered is not None
    text = fitted.altered.text
    assert "start: chain 80, joined" in text
    assert "{around: 57 cm}" in text
    assert "{rounds: 2-12," in text
    assert "Close the top of round 21 with the tail, below round 14." in text
    if name == "one by one":
        assert '{round: 13, work: "ch 1, (hdc in next 8 sts, hdc2tog) x 8, join", count: 72}' in text
        assert text.index("heading: Crown") < text.index("round: 13")
    else:
        assert "rounds: 13-19," in text
        assert "n: {from: 8, step: -1}, count: {from: 72, step: -8}" in text


@pytest.mark.parametrize("name", CAPS)
def test_a_cap_from_its_brim_draws_in_less_often(name: str) -> None:
    """40 cm are 56 stitches: the first two of the rounds that draw in are left out."""
    fitted = fit_around(CAPS[name], CAPS[name], 400.0)
    assert holds(fitted)
    assert fitted.altered is not None
    work = fitted.altered.checked.work
    assert work is not None
    counts = [one.sizes[0].count if one.sizes[0] else 0 for one in work.pieces[0].rounds]
    assert counts == [56] * 12 + [48, 40, 32, 24, 16, 8]
    assert "Close the top of round 18" in fitted.altered.text


def test_a_tube_that_closes_at_once_has_nothing_to_leave_out() -> None:
    """One round draws in by half, and no other round does: no other size comes of it."""
    tube = _CAP.replace("chain 72", "chain 16").replace("around: 51.5 cm", "around: 11.5 cm")
    rounds = (
        _PLAIN.replace("72", "16")
        + '      - {round: 13, work: "ch 1, hdc2tog x 8, join, fasten off", count: 8}\n'
    )
    small = checked(tube + rounds)
    with pytest.raises(CannotAlter, match="no size near to 6 cm"):
        fit_around(small, small, 60.0)


WHAT = {
    "toy": (checked(TOY), ""),
    "mat": (checked(MAT), ""),
    "pebble": (demo("pebble-ball"), ""),
    "seal": (demo("sandbank-seal"), "body"),
    "head": (demo("sandbank-seal"), "head"),
    "tray": (demo("reed-tray"), ""),
    "cap": (CAPS["one by one"], ""),
    "cap by rule": (CAPS["by rule"], ""),
}


@settings(max_examples=16, deadline=None)
@given(st.sampled_from(sorted(WHAT)), st.floats(0.6, 1.7))
def test_what_is_resized_always_checks(name: str, times: float) -> None:
    before, piece = WHAT[name]
    assert before.source.pattern is not None
    own = piece or next(iter(before.source.pattern.pieces))
    wanted = (way_around(before, own) or 0.0) * times
    try:
        fitted = fit_around(before, before, wanted, piece)
    except CannotAlter:
        return
    if fitted.altered is not None:
        assert holds(fitted)
        assert abs(fitted.around_mm - wanted) <= 0.15 * wanted + 1
        _as_long_for_its_width(before, fitted, own, name)


def _as_long_for_its_width(before: Checked, fitted: Fitted, own: str, name: str) -> None:
    """A ball's way from pole to pole stays the same share of its way around, to a round either way."""
    if name in ("mat", "tray", "cap", "cap by rule"):  # their height is the maker's own to choose
        return
    assert fitted.altered is not None
    for_each = []
    for one in (before.measured, fitted.altered.measured):
        piece = one.piece(own) if one is not None else None
        assert piece is not None
        for_each.append((piece.known_rounds(0), piece.size[0]["around"].middle))
    (was, around), (now, around_now) = for_each
    expected = len(was) * around_now / around
    assert abs(len(now) - expected) <= max(0.12 * expected, 2)


@settings(max_examples=6, deadline=None)
@given(st.sampled_from(["curlew-cap", "gull-collar"]), st.integers(380, 640))
def test_a_sized_pattern_resized_always_checks(name: str, mm: int) -> None:
    try:
        _, fitted = fit_sized(demo(name), float(mm))
    except CannotAlter:
        return
    if fitted.altered is not None:
        assert fitted.altered.checked.findings == []
        assert holds(fitted)
