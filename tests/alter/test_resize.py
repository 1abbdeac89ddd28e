"""Another size, gauge or yarn: the nearest pattern of the same design, which always checks, or a reason."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.alter import CannotAlter, Fitted, fit_around, fit_gauge, fit_sized, fit_yarn, in_size, swatch
from loopleaf.alter.around import way_around
from loopleaf.measure.other_yarn import likely_hook, likely_stitches
from tests.alter.patterns import POUCH, checked, demo


def text_of(fitted: Fitted) -> str:
    assert fitted.altered is not None
    return fitted.altered.text


def test_a_base_with_two_rounds_more_the_last_spread_evenly() -> None:
    """By hand: 60 is the multiple of 6 (edge) and of 4 (cord under one, over one of every second stitch)
    nearest to 43 cm at 14 stitches over 10 cm; 48 + 8 + 4, and the four stand 14 stitches apart.
    """
    fitted = fit_around(demo("lantern-pouch"), demo("lantern-pouch"), 430)
    text = text_of(fitted)
    assert "{rounds: 4-7, work:" in text
    assert '- {round: 8, work: "ch 1, (hdc in next 13 sts, inc) x 4, join", count: 60}' in text
    assert "{rounds: 9-18, work:" in text
    assert 'count: "30 dc, 30 ch-1 sps"' in text
    assert 'count: "10 sc, 10 sh"' in text
    assert "from: [1, 17]" in text  # opposite: half of 30 is 15, and 16 keeps in step with the first cord
    assert "round: 13, stitches: 14-17" in text  # the middle of the moon was 12.5 of 48, so 15.6 of 60
    assert "lies flat: 1-7" in text
    assert fitted.around_mm == pytest.approx(60 / 14 * 100)


def test_a_base_with_fewer_rounds() -> None:
    text = text_of(fit_around(demo("lantern-pouch"), demo("lantern-pouch"), 260))
    assert "{rounds: 4, work:" in text
    assert '- {round: 5, work: "ch 1, (hdc in next 7 sts, inc) x 4, join", count: 36}' in text
    assert "{rounds: 6-15, work:" in text


CROWN = """\
title: Crown
terms: {terms}
gauge: {{stitch: {half}, stitches: 14, rows: 10, over: 10 cm}}
pieces:
  hat:
    worked: joined rounds
    start: magic ring
    rounds:
      - {{round: 1, work: "{chain}, 9{sp}{half} in ring, {join}", count: 9}}
      - {{round: 2, work: "{chain}, 2{sp}{half} in each st to end, {join}", count: 18}}
      - {{round: 3, work: "{chain}, *{half} in next st, {two}; rep from * to end, {join}", count: 27}}
      - {{round: 4, work: "{chain}, *{half} in next 2 sts, {two}; rep from * {to}, {join}", count: 36}}
      - {{rounds: 5-8, work: "{chain}, {half} in each st to end, {join}", count: 36}}
"""


@pytest.mark.parametrize(
    "words",
    [
        {
            "terms": "UK",
            "half": "htr",
            "chain": "2ch (does not count)",
            "sp": "",
            "join": "ss in first htr",
            "to": "to end",
        },
        {
            "terms": "US",
            "half": "hdc",
            "chain": "ch 2 (does not count)",
            "sp": " ",
            "join": "join",
            "to": "around",
        },
    ],
    ids=lambda words: words["terms"],
)
def test_a_crown_of_repeats_to_the_end(words: dict[str, str]) -> None:
    """By hand: 63 stitches at 14 over 10 cm are 45 cm, and 63 = 9 x 7, three rounds of nine more than 36."""
    two = f"2{words['sp']}{words['half']} in next st"
    crown = checked(CROWN.format(two=two, **words), "crown.yml")
    fitted = fit_around(crown, crown, 450)
    assert fitted.around_mm == pytest.approx(450)
    assert "round: 7, work:" in text_of(fitted)
    assert "count: 63" in text_of(fitted)
    smaller = fit_around(crown, crown, 27 / 14 * 100)
    assert "count: 36" not in text_of(smaller)


def test_the_pattern_itself_may_be_the_nearest() -> None:
    """At 32 cm 42, 44 and 45 stitches would come nearer than 48, and each says why it can't be."""
    fitted = fit_around(demo("lantern-pouch"), demo("lantern-pouch"), 320)
    assert fitted.altered is None
    assert fitted.passed
    assert all("stitches: " in reason for reason in fitted.passed)
    assert any("opposite faces" in reason for reason in fitted.passed)


def test_rounds_written_one_by_one_are_dropped_and_added_whole() -> None:
    """The small pouch: 24 stitches, an edge of threes. Next come 27, 30, 33, 36, 39; 48 is 3 rounds on."""
    text = text_of(fit_around(checked(POUCH), checked(POUCH), 48 / 14 * 100))
    added = [line.strip() for line in text.splitlines() if "2 hdc in next st" in line]
    assert added == [
        '- {round: 3, work: "ch 1, (2 hdc in next st, hdc in next st) x 8, join", count: 24}',
        '- {round: 4, work: "ch 1, (hdc in next 2 sts, 2 hdc in next st) x 8, join", count: 32}',
        '- {round: 5, work: "ch 1, (2 hdc in next st, hdc in next 3 sts) x 8, join", count: 40}',
        '- {round: 6, work: "ch 1, (hdc in next 4 sts, 2 hdc in next st) x 8, join", count: 48}',
    ]
    assert "# eight, not six" in text


def test_a_chain_by_its_multiple() -> None:
    """Fourteen chains make one wave (7.4 cm at 19 stitches over 10 cm): 22.5 cm and one wave are 30 cm."""
    text = text_of(fit_around(demo("ebb-scarf"), demo("ebb-scarf"), 300))
    assert "chain: 60, multiple: 14, plus: 4" in text
    assert "finished size: {width: 30 cm, length: 175 cm}" in text
    assert text.count("count: 57") == 10


def test_words_of_a_count_stay_the_authors() -> None:
    assert 'count: "12 tr, 11 fans"' in text_of(fit_around(demo("tide-cloth"), demo("tide-cloth"), 400))


@pytest.mark.parametrize(
    ("name", "mm", "reason"),
    [
        ("reed-tray", 100.0, "no size near to 10 cm"),
        ("sandbank-seal", 60.0, "no size near to 6 cm"),
        ("curlew-cap", 500.0, "The nearest is child"),
        ("harbour-square", 300.0, "how far the whole"),
        ("sea-lavender-doily", 320.0, "“doily” grows from a ring in its middle"),
    ],
)
def test_a_design_that_doesnt_allow_it_says_why(name: str, mm: float, reason: str) -> None:
    with pytest.raises(CannotAlter, match=reason):
        fit_around(demo(name), demo(name), mm)


@pytest.mark.parametrize(
    ("name", "mm", "reason"),
    [
        ("reed-tray", 100.0, "The nearest that can be made is about 20 cm."),
        ("pebble-ball", 140.0, "The nearest that can be made is about 16.5 cm."),
        ("pebble-ball", 100.0, "One that can be made is about 16.5 cm."),
        ("pebble-ball", 600.0, "One that can be made is about"),
        ("ebb-scarf", 20.0, "The nearest that can be made is about 15.5 cm."),
        ("ebb-scarf", 262.0, ""),
    ],
)
def test_a_size_that_nothing_comes_near_is_refused_with_what_does(name: str, mm: float, reason: str) -> None:
    if not reason:  # the pattern as it is misses by a seventh, and is the nearest
        assert fit_around(demo(name), demo(name), mm).altered is None
        return
    with pytest.raises(CannotAlter) as no:
        fit_around(demo(name), demo(name), mm)
    assert any(one.startswith(reason) for one in no.value.reasons[1:])


def test_where_no_number_of_chains_is_nearer_that_is_said() -> None:
    """A wave of 14 stitches is 8.6 cm in thicker yarn: 26 cm, or 17 cm, for 22.5 cm."""
    with pytest.raises(CannotAlter) as no:
        fit_yarn(demo("ebb-scarf"), 4)
    assert no.value.reasons[1:] == ("No other number of stitches that can be made comes nearer.",)


def test_what_the_refusal_names_as_nearest_can_be_made() -> None:
    ball = demo("pebble-ball")
    with pytest.raises(CannotAlter) as no:
        fit_around(ball, ball, 140.0)
    assert no.value.reasons[-1].endswith("about 16.5 cm.")
    fitted = fit_around(ball, ball, 165.0)
    assert fitted.altered is not None
    assert not fitted.altered.checked.has_errors
    assert fitted.around_mm == pytest.approx(165.0, abs=0.5)


@pytest.mark.parametrize(
    ("name", "mm"), [("gull-collar", 185.0), ("curlew-cap", 213.0), ("pebble-ball", 600.0)]
)
def test_one_that_is_named_can_be_made(name: str, mm: float) -> None:
    """Where many numbers of stitches fail, not all are tried: the one that is named comes out so."""
    before = demo(name)
    assert before.source.pattern is not None
    sizes = before.source.pattern.sizes
    before = in_size(before, str(sizes[0])) if sizes else before
    with pytest.raises(CannotAlter) as no:
        fit_around(before, before, mm)
    found = re.search(r"can be made is about ([\d.]+) cm", no.value.reasons[-1])
    assert found, no.value.reasons
    fitted = fit_around(before, before, float(found[1]) * 10)
    assert fitted.altered is not None
    assert fitted.around_mm == pytest.approx(float(found[1]) * 10, abs=2.6)


def test_the_same_reason_is_said_once() -> None:
    ball = demo("pebble-ball")
    with pytest.raises(CannotAlter) as no:
        fit_around(ball, ball, 140.0)
    told = [one.split(" stitches: ", 1) for one in no.value.reasons[1:-1]]
    assert [numbers for numbers, _ in told] == ["24 to 32"]


def test_what_a_collar_is_around_is_what_its_file_says_then() -> None:
    """101 stitches at 17 over 10 cm are 59.4 cm at the neck, however wide its lower edge comes out."""
    alone, fitted = fit_sized(demo("gull-collar"), 600.0)
    assert fitted.altered is not None
    assert fitted.around_mm == pytest.approx(594, abs=2)
    assert 'around: "59.5 cm"' in fitted.altered.text
    assert alone.source.pattern is not None


def test_a_size_that_was_stated_as_worked_out_is_so_again() -> None:
    """69 stitches at 17 over 10 cm are 40.6 cm, stated as 40.5; 71 are 41.8, stated as 42 and not as 41.5."""
    _, fitted = fit_sized(demo("gull-collar"), 420.0)
    assert fitted.altered is not None
    assert fitted.around_mm == pytest.approx(417.6, abs=1)
    assert 'around: "42 cm"' in fitted.altered.text


def test_a_size_that_nothing_works_out_goes_where_a_part_of_it_changes() -> None:
    """How long the seal is with head and flippers isn't worked out; how far around its body is, is."""
    seal = fit_around(demo("sandbank-seal"), demo("sandbank-seal"), 200.0).altered
    assert seal is not None
    stated = {(one.piece, one.what): one.mm(0) for one in seal.measured.stated}
    assert stated == {("body", "around"): 200.0}


def test_another_gauge_keeps_the_size() -> None:
    """34.3 cm at 18 over 10 cm are 61.7 stitches: 60 is the nearest that comes out even.

    Height along the fabric: 6 + 10 + about 3 rounds at 13 over 10 cm need four more plain ones.
    """
    fitted = fit_gauge(demo("lantern-pouch"), swatch("18 sts, 13 rows / 10 cm"))
    text = text_of(fitted)
    assert "gauge: {stitch: hdc, stitches: 18, rows: 13, over: 10 cm, blocked: no}" in text
    assert fitted.around_mm == pytest.approx(60 / 18 * 100)
    assert "{rounds: 9-22, work:" in text
    before = demo("lantern-pouch").measured
    assert before is not None
    assert fitted.altered is not None
    heights = [one.pieces[0].known_rounds(0)[-1].height_mm for one in (before, fitted.altered.measured)]
    assert heights[1] == pytest.approx(heights[0], abs=100 / 13 / 2)


DC_CROWN = """\
title: Crown
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
materials: {yarns: {A: {weight: 4}}, hook: 5.5 mm}
gauge: {stitch: dc, stitches: 14, rows: 7, over: 10 cm}
finished size: {around: 25.5 cm}
turning chains: {dc: counts}
pieces:
  crown:
    worked: joined rounds
    start: magic ring
    rounds:
      - {round: 1, work: "CH, 11 dc in ring, join", count: 12}
      - {round: 2, work: "CH, dc in same st, 2 dc in each st around, join", count: 24}
      - {round: 3, work: "CH, dc in same st, dc in next st, (2 dc in next st, dc in next st) x 11, join"}
      - {rounds: 4-6, work: "CH, dc in each st around, join", count: 36}
      - {round: 7, work: "CH, dc in each st around, join, fasten off", count: 36}
"""


@pytest.mark.parametrize("chain", ["ch 3 (counts as dc)", "ch 3"])
def test_a_crown_whose_chain_is_its_first_stitch(chain: str) -> None:
    """By hand: 36 stitches are 25.7 cm around, 48 are 34.3 and 44 are 31.4."""
    before = checked(DC_CROWN.replace("CH", chain))
    assert (
        f'"{chain}, dc in next st, 2 dc in next st, (dc in next 2 sts, 2 dc in next st) x 11, join"'
        in text_of(fit_around(before, before, 343))
    )
    assert (
        f'"{chain}, dc in next 7 sts, 2 dc in next st, (dc in next 8 sts, 2 dc in next st) x 3, join"'
        in text_of(fit_around(before, before, 286))
    )
    for mm in range(180, 420, 17):
        fitted = fit_around(before, before, float(mm))
        assert fitted.altered is None or not fitted.altered.checked.has_errors
        assert abs(fitted.around_mm - mm) <= 100 / 14 / 2 + 0.01


def test_rounds_are_told_by_one_number_where_counts_and_heights_change() -> None:
    fitted = fit_gauge(demo("reed-tray"), swatch("12 sts, 12.5 rows / 10 cm"))
    assert fitted.altered is not None
    called: dict[int, set[str]] = {}
    for one in fitted.altered.changes:
        if "round" in one.where:
            called.setdefault(one.line, set()).add(one.where)
    assert called
    assert [names for names in called.values() if len(names) > 1] == []


def test_another_yarn_changes_band_and_hook() -> None:
    """Weights 4 and 3 have 11 to 14 and 12 to 17 stitches in 4 inches: 14 become 14 × 14.5 ÷ 12.5 = 16.2."""
    fitted = fit_yarn(demo("lantern-pouch"), 3)
    text = text_of(fitted)
    assert "A: {weight: 3, name: lichen, colour:" in text
    assert "ball:" not in text
    assert "stitches: 16, rows: 11.5" in text
    assert "hook: 4.5 mm" in text
    assert fitted.altered is not None
    need = fitted.altered.yarn[0][0]
    assert need.metres is not None
    assert need.grams is not None
    assert need.grams.high == pytest.approx(need.metres.high / 2.0)  # 200 to 260 m in 100 g


def test_the_usual_ranges() -> None:
    """Craft Yarn Council: light 12 to 17 single crochets in 4 inches and hooks of 4.5 to 5.5 mm, medium 11 to
    14 and 5.5 to 6.5 mm.
    """
    assert likely_stitches(3) == 14.5
    assert likely_stitches(4) == 12.5
    assert likely_stitches(7) == 5  # an open end: the one that is known
    assert likely_hook(5.5, 4, 3) == 4.5  # 5.5 × 5 ÷ 6 = 4.58


@pytest.mark.parametrize(
    ("text", "stitches", "rows", "mm"),
    [
        ("18 sts, 13 rows / 10 cm", 18, 13, 100),
        ("18 sts x 13 rounds over 4 in", 18, 13, 101.6),
        ("18 sts 13 rows", 18, 13, 100),
        ("18 stitches", 18, None, 100),
        ("17.5 sts / 10cm", 17.5, None, 100),
    ],
)
def test_a_gauge_as_it_is_written(text: str, stitches: float, rows: float | None, mm: float) -> None:
    read = swatch(text)
    assert (read.stitches, read.rows) == (stitches, rows)
    assert read.over_mm == pytest.approx(mm)


@pytest.mark.parametrize("text", ["", "tight", "0 sts", "18 13", "18 sts / 0 cm", "18 sts, 0 rows"])
def test_a_gauge_that_cant_be_read(text: str) -> None:
    with pytest.raises(CannotAlter, match="isn't a gauge"):
        swatch(text)


def test_sizes_side_by_side_and_other_gauges_are_refused() -> None:
    for name, reason in (("curlew-cap", "4 sizes"), ("harbour-square", "how many stitches")):
        with pytest.raises(CannotAlter, match=reason):
            fit_gauge(demo(name), swatch("18 sts, 13 rows / 10 cm"))
    with pytest.raises(CannotAlter, match="is written for yarn of weight 4"):
        fit_yarn(demo("lantern-pouch"), 4)


@settings(max_examples=4, deadline=None)
@given(st.sampled_from(["lantern-pouch", "tide-cloth", "ebb-scarf"]), st.integers(150, 700))
def test_a_resized_pattern_always_checks(name: str, mm: int) -> None:
    before = demo(name)
    try:
        fitted = fit_around(before, before, float(mm))
    except CannotAlter:
        return
    if fitted.altered is not None:
        assert fitted.altered.checked.findings == []
        assert abs(fitted.around_mm - mm) <= 0.15 * mm + 1
        again = way_around(checked(fitted.altered.text), next(iter(fitted.altered.measured.pattern.pieces)))
        assert again == pytest.approx(fitted.around_mm)


@settings(max_examples=15, deadline=None)
@given(st.floats(0.5, 2.0))
def test_scaling_the_gauge_scales_the_size(by: float) -> None:
    """Twice the stitches over a length, half the length of every round: nothing but the gauge enters."""
    text = POUCH.replace("finished size: {height: 10 cm}\n", "")
    scaled = text.replace("stitches: 14, rows: 10", f"stitches: {14 * by:.6f}, rows: {10 * by:.6f}")
    before, after = (way_around(checked(one), "pouch") for one in (text, scaled))
    assert before is not None
    assert after == pytest.approx(before / by, rel=1e-4)


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("worked", ["joined rounds", "spiral rounds"])
@pytest.mark.parametrize("until", ["to end", "around"])
def test_a_crown_written_with_a_star(terms: str, worked: str, until: str) -> None:
    """From 36 stitches, 25.7 cm at 14 over 10 cm, to the nearest of 32 cm: 45 stitches are 32.1 cm."""
    stitch = "hdc" if terms == "US" else "htr"
    plain = f"{stitch} in next 2 sts" if terms == "US" else f"1{stitch} in each of next 2 sts"
    chain, join = ("ch 1, ", ", join") if worked == "joined rounds" else ("", "")
    works = (
        (f"9 {stitch} in ring", 9),
        (f"2 {stitch} in each st around", 18),
        (f"*{stitch} in next st, 2 {stitch} in next st; rep from * {until}", 27),
        (f"*{plain}, 2 {stitch} in next st; rep from * {until}", 36),
        (f"{stitch} in each st around", 36),
    )
    before = checked(
        f"""\
title: Crown
designer: Saltmarsh Makers' Library
terms: {terms}
licence: CC-BY-4.0
finished size: {{around: 25.7 cm}}
materials: {{yarns: {{A: {{weight: 4, name: lichen}}}}, hook: 5.5 mm, notions: [needle]}}
gauge: {{stitch: {stitch}, stitches: 14, rows: 10, over: 10 cm}}
turning chains: {{{stitch}: does not count}}
pieces:
  hat:
    title: Hat
    yarn: A
    worked: {worked}
    start: magic ring
    rounds:
"""
        + "".join(
            f'      - {{round: {at}, work: "{chain}{work}{join}{", fasten off" if at == 5 else ""}", '
            f"count: {count}}}\n"
            for at, (work, count) in enumerate(works, start=1)
        )
        + "finishing:\n  - text: Weave in the ends.\n"
    )
    assert not before.findings
    found = fit_around(before, before, 320)
    assert found.altered is not None
    assert found.around_mm == pytest.approx(45 / 14 * 100, rel=0.01)
    assert not found.altered.checked.findings
    assert f"(2 {stitch} in next st, {stitch} in next 3 sts) x 9" in found.altered.text
