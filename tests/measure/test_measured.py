"""A whole pattern measured: sizes, shape, yarn, hours together."""

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.fabric import work_pattern
from loopleaf.measure import Band, Measured, measure
from loopleaf.measure.shape import stretches
from loopleaf.pattern import load

from .worked_patterns import HEAD, measured, rounds, rows

DEMO = Path(__file__).parents[2] / "patterns"
SC_ROW = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
FLAT = (
    "6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, 2 sc in next st) x 6, join",
    "ch 1, (sc in next 2 sts, 2 sc in next st) x 6, join",
)
EVEN = "ch 1, sc in each st around, join"
NO_GAUGE = HEAD.replace("gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n", "gauge: not critical\n")


def demo(name: str) -> Measured:
    source = load((DEMO / f"{name}.yml").read_bytes(), name)
    assert source.pattern is not None
    return measure(work_pattern(source))


def forms(found: Measured, name: str) -> list[tuple[str, str, str]]:
    piece = found.piece(name)
    assert piece is not None
    return [(one.form, one.first, one.last) for one in piece.shape[0]]


def test_rows_have_width_and_length():
    piece = measured(rows(SC_ROW, PLAIN, PLAIN)).pieces[0]
    assert not piece.in_rounds
    known = piece.known_rounds(0)
    assert [one.label for one in known] == ["1", "2", "3"]
    assert [one.length_mm for one in known] == pytest.approx([50, 50, 50])
    assert [one.height_mm for one in known] == pytest.approx([5, 10, 15])
    assert 50 in piece.size[0]["width"]
    assert 15 in piece.size[0]["length"]
    assert piece.shape == ((),)


def test_what_is_called_long_along_its_rows():
    """Eleven stitches of 5 mm, and rows of 5 mm: a length stated without a width is the longer side."""
    string = "finished size: {length: 5.5 cm}"
    band = "finished size: {width: 5.5 cm}"
    for stated, lines, length, width in ((string, 1, 55, 5), (string, 20, 100, 55), (band, 1, 5, 55)):
        worked_rows = rows(*["ch 1, sc in each st across, turn"] * lines, fields=stated)
        size = measured(worked_rows).pieces[0].size[0]
        assert size["length"].middle == pytest.approx(length)
        assert size["width"].middle == pytest.approx(width)
        assert size["around"].middle == pytest.approx(55)
        assert size["height"].middle == pytest.approx(lines * 5)


def test_a_flat_disc_is_across_twice_its_height():
    piece = measured(rounds(*FLAT)).pieces[0]
    assert piece.size[0]["across"].middle == pytest.approx(40)
    assert "height" not in piece.size[0]


def test_a_bag_stands_as_high_as_its_sides():
    found = measured(rounds(*FLAT, EVEN, EVEN))
    assert forms(found, "disc") == [("flat", "1", "4"), ("tube", "5", "6")]
    assert found.pieces[0].size[0]["height"].middle == pytest.approx(10)
    assert found.pieces[0].size[0]["across"].middle == pytest.approx(24 * 5 / 3.14159, rel=1e-4)


def test_lace_that_is_meant_to_lie_flat_is_measured_flat():
    """Round by round the doily would cup and ruffle; its rounds of sc, dc, tr and dtr are 12 cm across in
    all, and 168 stitches of 10 cm ÷ 42 around.
    """
    found = demo("sea-lavender-doily")
    assert forms(found, "doily") == [("flat", "1", "13")]
    size = found.pieces[0].size[0]
    assert 120 in size["across"]
    assert size["around"].middle == pytest.approx(found.pieces[0].known_rounds(0)[-1].length_mm)
    assert "height" not in size


def test_lace_that_nobody_means_to_lie_flat_is_told_as_it_grows():
    found = demo("sea-lavender-doily").pieces[0]
    assert found.scale is not None
    loose = stretches(found.known_rounds(0), 0.0, found.scale.width_mm)
    assert {one.form for one in loose} > {"cups", "ruffles"}


def test_a_flat_piece_is_as_far_around_as_its_edge():
    """6, 12, 12, 18 stitches of 5 mm: most rounds are 6 cm long, the edge is 9 cm."""
    disc = measured(rounds(*FLAT[:2], EVEN, FLAT[2], fields="lies flat: 1-4")).pieces[0]
    assert [one.stitches for one in disc.known_rounds(0)] == [6, 12, 12, 18]
    assert disc.size[0]["around"].middle == pytest.approx(90)


def test_an_oval_is_longer_by_its_chain():
    oval = (
        "2 sc in 2nd ch from hook, sc in next 3 chs, 3 sc in last ch, "
        "working along other side of foundation ch, sc in next 3 chs, sc in last ch, join"
    )
    size = measured(rounds(oval, start="chain 6, both sides")).pieces[0].size[0]
    assert size["width"].middle == pytest.approx(10)
    assert size["length"].middle == pytest.approx(10 + 4 * 5)


def test_a_tube_begun_on_a_joined_chain_is_no_oval():
    """20 rounds of 40 stitches of 5 mm: 20 cm around, so 10 cm wide lying folded, and all 20 rounds high."""
    first = "ch 1, sc in each ch around, join"
    size = measured(rounds(first, *[EVEN] * 19, start="chain 40, joined")).pieces[0].size[0]
    assert size["around"].middle == pytest.approx(200)
    assert [size[what].middle for what in ("width", "length", "height")] == pytest.approx([100, 100, 100])


def test_a_pouch_along_both_sides_of_a_chain_is_a_tube():
    both = (
        "sc in 2nd ch from hook, sc in next 3 chs, 2 sc in last ch, "
        "working along other side of foundation ch, sc in next 4 chs, join"
    )
    size = measured(rounds(both, EVEN, EVEN, EVEN, start="chain 6, both sides")).pieces[0].size[0]
    assert size["width"].middle == pytest.approx(25)
    assert size["height"].middle == pytest.approx(20)


def test_a_hat_is_measured_lying_from_crown_to_edge():
    for fits, height in (("to fit: {head: 12 cm}\n", 30), ("to fit: {hand: 12 cm}\n", 30), ("", 10)):
        size = measured(rounds(*FLAT, EVEN, EVEN), fits).pieces[0].size[0]
        assert size["height"].middle == pytest.approx(height)
    worn = measured(rounds(*FLAT, EVEN, fields="to fit: {head: 12 cm}")).pieces[0].size[0]
    assert worn["width"].middle == pytest.approx(60)


def test_a_stuffed_piece_stands_on_no_base():
    ball = (*FLAT, EVEN, EVEN, "ch 1, (sc in next 2 sts, sc2tog) x 6, join")
    fill = "finishing:\n  - stuff: {piece: disc, text: Fill it.}\n"
    empty, filled = (measured(rounds(*ball), more).pieces[0].size[0]["height"] for more in ("", fill))
    assert empty.middle < 12
    straight = 2 * 5 + 5 * math.sqrt(25 - (30 / math.tau) ** 2)  # at the least, each round a band of a cone
    assert straight < filled.middle < 7 * 5
    flat_foot = measured(rounds(*ball, fields="lies flat: 1-4"), fill).pieces[0].size[0]["height"]
    assert flat_foot.middle < filled.middle


def test_a_gauge_by_how_far_the_piece_is_across():
    across = NO_GAUGE.replace("gauge: not critical", "gauge: {piece: disc, across: 8 cm}")
    piece = measured(rounds(*FLAT), head=across).pieces[0]
    assert piece.scale is not None
    assert piece.known_rounds(0)[-1].height_mm == pytest.approx(40)
    assert piece.size[0]["across"] == Band.about(80, 0.02)


def test_a_gauge_by_how_far_some_rounds_are_across():
    across = NO_GAUGE.replace("gauge: not critical", "gauge: {rounds: 1-2, across: 4 cm}")
    piece = measured(rounds(*FLAT), head=across).pieces[0]
    assert piece.known_rounds(0)[1].height_mm == pytest.approx(20)
    assert piece.known_rounds(0)[3].height_mm == pytest.approx(40)


def test_a_gauge_by_how_wide_a_piece_in_rows_is():
    across = NO_GAUGE.replace("gauge: not critical", "gauge: {piece: cloth, across: 6 cm}")
    piece = measured(rows(SC_ROW, PLAIN), head=across).pieces[0]
    assert piece.known_rounds(0)[0].length_mm == pytest.approx(60)


def test_a_gauge_of_stitches_alone_or_rows_alone():
    stitches = measured(rows(SC_ROW), head=HEAD.replace("stitches: 20, rows: 20", "stitches: 20")).pieces[0]
    assert stitches.known_rounds(0)[0].height_mm == pytest.approx(5 * 0.925)
    only_rows = measured(rows(SC_ROW), head=HEAD.replace("stitches: 20, rows: 20", "rows: 20")).pieces[0]
    assert only_rows.known_rounds(0)[0].length_mm == pytest.approx(50 / 0.925)


def test_a_gauge_for_one_piece_comes_first():
    both = HEAD.replace(
        "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}",
        "gauge:\n  - {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n"
        "  - {piece: disc, stitch: sc, stitches: 10, rows: 10, over: 10 cm}",
    )
    found = measured(rows(SC_ROW) + rounds(*FLAT), head=both)
    assert [piece.scale and piece.scale.width_mm for piece in found.pieces] == [5, 10]


def test_without_a_gauge_nothing_is_guessed():
    found = measured(rows(SC_ROW), head=NO_GAUGE)
    assert found.pieces[0].rounds == ((),)
    assert found.pieces[0].size == ({},)
    assert found.yarn[0][0].metres is None
    assert found.hours[0].practised.high > 0


def test_each_size_is_measured_on_its_own():
    two = rows(SC_ROW, PLAIN).replace("chain 11", "chain 11 (21)")
    found = measured(two, "sizes: [S, L]\nfinished size: {width: 5 (10) cm}\n")
    assert [found.pieces[0].known_rounds(size)[0].length_mm for size in (0, 1)] == pytest.approx([50, 100])
    assert [found.stated[0].mm(size) for size in (0, 1)] == [50, 100]
    assert found.hours[1].practised.low > found.hours[0].practised.low


def test_copies_take_as_many_times_the_yarn():
    once = measured(rows(SC_ROW, PLAIN)).yarn[0][0].metres
    thrice = (
        measured(rows(SC_ROW, PLAIN).replace("worked: rows", "make: 3\n  worked: rows")).yarn[0][0].metres
    )
    assert once is not None
    assert thrice is not None
    assert thrice.middle == pytest.approx(3 * once.middle)


def test_laid_out_pieces_have_a_size_and_seams():
    lay = "finishing:\n  - lay out: {piece: disc, across: 3, down: 2, join: sc through both layers}\n"
    alone, laid = measured(rounds(*FLAT)), measured(rounds(*FLAT), lay)
    assert laid.laid_out is not None
    assert 3 * 40 in laid.laid_out["width"]
    assert 2 * 40 in laid.laid_out["length"]
    more, less = laid.yarn[0][0].metres, alone.yarn[0][0].metres
    assert more is not None
    assert less is not None
    assert more.middle - less.middle == pytest.approx(7 * 40 * 10.5 / 1000)
    assert alone.laid_out is None


def test_a_size_without_a_round_has_none():
    two = rows(SC_ROW, PLAIN).replace("row: 2,", "row: 2, sizes: [L],")
    piece = measured(two, "sizes: [S, L]\n").pieces[0]
    assert [len(piece.known_rounds(size)) for size in (0, 1)] == [1, 2]


def test_sewing_takes_time():
    moon = rounds(*FLAT, name="moon")
    alone = measured(rows(SC_ROW) + moon)
    sewn = measured(rows(SC_ROW) + moon, "finishing:\n  - sew: {piece: moon, to: cloth}\n")
    more = sewn.hours[0].practised.high - alone.hours[0].practised.high
    assert more == pytest.approx(24 / 3 / 60)


def test_a_new_yarn_brings_two_ends():
    one = measured(rows(SC_ROW, PLAIN, PLAIN))
    two = measured(rows(SC_ROW, "with B, " + PLAIN, PLAIN))
    more = two.hours[0].practised.low - one.hours[0].practised.low
    assert more == pytest.approx(2 * 2 / 60)


def test_a_piece_that_isnt_there():
    assert measured(rows(SC_ROW)).piece("sleeve") is None


def test_the_lantern_pouch():
    """Its author's own figures: 34.5 cm around, 13.5 cm high, a base that lies flat, level easy."""
    found = demo("lantern-pouch")
    pouch, moon = found.piece("pouch"), found.piece("moon")
    assert pouch is not None
    assert moon is not None
    assert 345 in pouch.size[0]["around"]
    assert 135 in pouch.size[0]["height"]
    assert forms(found, "pouch") == [("flat", "1", "6"), ("tube", "7", "19")]
    assert pouch.known_rounds(0)[16].length_mm == pytest.approx(48 * 100 / 14)
    assert found.cords[0][0].chains == 96
    assert found.cords[0][0].length_mm > (found.cords[0][0].least_mm or 0)
    assert found.level.level == "easy"
    assert {one.caution.key for one in found.cautions} >= {"cords", "small-parts"}


def test_the_pebble_ball_is_a_ball():
    found = demo("pebble-ball")
    ball = found.piece("ball")
    assert ball is not None
    assert 180 in ball.size[0]["around"]
    assert ball.size[0]["height"].middle == pytest.approx(ball.size[0]["across"].middle, rel=0.1)


@pytest.mark.parametrize("name", ["lantern-pouch", "tide-cloth", "pebble-ball", "reed-tray", "gull-collar"])
def test_what_the_authors_weighed_lies_in_the_models_band(name: str):
    """The model by the stitches alone, against the weighed amount; each demo's main yarn."""
    need = demo(name).yarn[0][0]
    assert need.weighed
    assert need.metres is not None
    assert need.model_metres is not None
    assert need.metres.middle in need.model_metres


@settings(max_examples=25, deadline=None)
@given(st.integers(8, 30), st.integers(8, 30), st.sampled_from([2, 3]))
def test_scaling_the_gauge_scales_the_size(stitches: int, rows_: int, times: int):
    def sizes(factor: int) -> list[float]:
        gauge = f"stitches: {stitches * factor}, rows: {rows_ * factor}"
        found = measured(rounds(*FLAT, EVEN), head=HEAD.replace("stitches: 20, rows: 20", gauge))
        return [value for one in found.pieces[0].known_rounds(0) for value in (one.length_mm, one.height_mm)]

    assert sizes(1) == pytest.approx([times * value for value in sizes(times)])


def test_a_crown_on_the_brim_of_what_is_worn_lies_folded_too():
    """12 rows of brim make an edge of 12 stitches; ten rounds of 5 mm are 5 cm along the cloth, though its
    last rounds draw in. A pouch worked on so stands.
    """
    rim = rows(SC_ROW, *[PLAIN] * 11, chain=5, name="brim")
    tube = rounds(
        *["ch 1, sc in each st around, join"] * 7, start="{edge: brim, row ends: true}", name="crown"
    )
    tube = tube.replace("ch 1, sc in each st around, join", "ch 1, sc in end of each row, join", 1)
    drawn = f'{tube}    - {{round: 8, work: "ch 1, (dec, sc in next st) x 4, join"}}\n'
    drawn += '    - {round: 9, work: "ch 1, dec x 4, join"}\n'
    hat = measured(rim + "\n" + drawn, more="to fit: {head: 6 cm}\n").pieces[1]
    bag = measured(rim + "\n" + drawn).pieces[1]
    assert hat.along_cloth
    assert not bag.along_cloth
    assert hat.size[0]["height"].middle == pytest.approx(45)
    assert bag.size[0]["height"].middle < 44
