"""Layers: rounds worked into an earlier one are measured from there, and petals bend nothing."""

from dataclasses import replace

import pytest

from loopleaf.fabric.layers import root_of
from loopleaf.measure import way_out
from loopleaf.measure.pieces import worked_in
from loopleaf.review import check
from tests.review.frame import framed

from .worked_patterns import FLOWER, measured, rounds, rows, worked

SC, HDC, DC = 5.0, 5 * 1.4 / 0.925, 5 * 1.9 / 0.925
"""Heights in mm at 20 stitches and 20 rows of sc over 10 cm: the table's middles are 0.925, 1.4 and 1.9."""


def tops(*lines: str, start: str = "magic ring") -> list[float]:
    return [one.height_mm for one in measured(rounds(*lines, start=start)).pieces[0].known_rounds(0)]


def test_a_layer_goes_on_from_the_round_that_it_is_worked_into() -> None:
    """Worked by hand: an arch of a layer stands out by up to a quarter of its 4 or 6 chains of 5 mm, so half
    of that in the middle; petals end between the mean of their stitches and their tips.
    """
    first = SC + (2 * SC + 2 * HDC + DC) / 5 / 2 + DC / 2
    arches = SC + SC + 4 * 5 / 8
    second = arches + (2 * SC + 2 * HDC + 3 * DC) / 7 / 2 + DC / 2
    further = arches + SC + 6 * 5 / 8
    third = further + (2 * SC + 2 * HDC + 5 * DC) / 9 / 2 + DC / 2
    assert tops(*FLOWER) == pytest.approx([SC, first, arches, second, further, third], rel=0.02)


def test_a_flower_lies_flat_and_is_across_twice_its_longest_way_out() -> None:
    piece = measured(rounds(*FLOWER)).pieces[0]
    assert [(one.form, one.first, one.last) for one in piece.shape[0]] == [("flat", "1", "6")]
    assert "height" not in piece.size[0]
    assert piece.size[0]["across"].middle == pytest.approx(2 * piece.known_rounds(0)[-1].height_mm)


def test_the_way_out_leaves_petals_behind() -> None:
    known = measured(rounds(*FLOWER)).pieces[0].known_rounds(0)
    assert [one.label for one in way_out(known)] == ["1", "3", "5"]
    assert [one.label for one in known if one.petals] == ["2", "4", "6"]


def test_a_number_that_comes_twice_is_the_earlier_round() -> None:
    """A file with a mistake in its numbers is measured all the same."""
    known = measured(rounds(*FLOWER)).pieces[0].known_rounds(0)
    twice = [*known[:4], replace(known[4], on="1"), replace(known[5], label="1")]
    assert [one.label for one in way_out(twice)] == ["1", "5"]


def test_arches_behind_petals_stand_between_them() -> None:
    """They go into the single crochet between the petals, which stand on round 1 like the petals."""
    behind = "ch 1, *sl st in next st, ch 4, sk 4 sts; rep from * around, join"
    piece = measured(rounds(*FLOWER[:2], behind, FLOWER[3])).pieces[0]
    arches = piece.known_rounds(0)[2]
    assert arches.on == "1"
    assert arches.height_mm - arches.rise_mm == pytest.approx(SC + SC)
    assert {one.form for one in piece.shape[0]} == {"flat"}


@pytest.mark.parametrize("flat", ["1-2", "1-6"])
def test_a_flower_meant_to_lie_flat_is_let_lie(flat: str) -> None:
    lines = "".join(f'  - {{round: {at}, work: "{line}"}}\n' for at, line in enumerate(FLOWER, 1))
    gauge = "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n"
    text = framed(
        f'{gauge}lies flat: {flat}\nrounds:\n{lines.rstrip()[:-2]}, fasten off"}}\n'.replace(
            ', fasten off"}\n', '"}\n'
        )
    )
    rules = {one.rule for one in check(text.encode(), "flower.yml").findings}
    assert not rules & {"will-cup", "will-ruffle", "size-differs"}


def test_a_ruffle_of_solid_stitches_ruffles() -> None:
    plain = "ch 1, sc in each st around, join"
    grown = ("ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join", plain, plain)
    frill = "ch 1, *BPsc around next sc of round 2; rep from * around, join"
    piece = measured(rounds(*grown, frill, "ch 1, 3 sc in each st around, join")).pieces[0]
    assert piece.shape[0][-1].form == "ruffles"
    frilled = piece.known_rounds(0)[4]
    assert frilled.on == "2"
    assert frilled.height_mm == pytest.approx(15)


def test_the_other_side_of_the_foundation_lengthens_the_piece() -> None:
    along = "ch 1, working along other side of foundation ch, sc in each of next 10 chs"
    first = "sc in 2nd ch from hook and in each ch across, turn"
    cloth = rows(first, "ch 1, sc in each st across, turn", along)
    assert root_of(2, worked_in(worked(cloth).pieces[0], 0)) is None


STAR = (
    "ch 1, 10 sc in ring, join",
    "ch 1, (sc in next st, ch 5, sc in 2nd ch from hook, sc in next 3 chs, sk next st) x 5, join",
)


def test_a_star_lies_flat_and_is_measured_to_its_points() -> None:
    """Two rounds of 5 mm, and points of four stitches on five chains, 20 mm or somewhat less: from 48 to 60
    mm across.
    """
    piece = measured(rounds(*STAR)).pieces[0]
    assert [one.form for one in piece.shape[0]] == ["flat"]
    across = piece.size[0]["across"]
    assert (across.low, across.high) == pytest.approx((48, 60), rel=0.02)


TUBE = (
    "ch 1, 8 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, 2 sc in next st) x 8, join",
    *("ch 1, sc in each st around, join",) * 4,
)


def pointed(chains: int) -> str:
    back = f"ch {chains}, sc in 2nd ch from hook, sc in next {chains - 2} chs"
    return f"ch 1, (sc in next 3 sts, {back}, sc in next st) x 6, join"


def test_points_on_a_tube_stand_as_a_crowns_do() -> None:
    """Four rounds of 5 mm of a tube, and one with points of 5 chains, 15 to 20 mm: a tube of 24 stitches
    around, no star.
    """
    size = measured(rounds(*TUBE, pointed(5))).pieces[0].size[0]
    assert size["around"].middle == pytest.approx(24 * SC)
    assert size["height"].low <= 43 <= size["height"].high
    assert "length" not in size


def test_points_longer_than_a_tube_is_wide_lie_around_it() -> None:
    """Near miss: from the middle of 24 stitches around it is 19 mm to them, and the points have 45."""
    size = measured(rounds(*TUBE, pointed(10))).pieces[0].size[0]
    assert "height" not in size
    assert size["length"].low > 100


def test_a_single_tab_is_no_point() -> None:
    """Near miss: one strip worked back on a chain makes the edge no larger."""
    tab = "ch 1, ch 5, sc in 2nd ch from hook, sc in next 3 chs, sc in each st around, join"
    disc = ("ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join", tab)
    assert tops(*disc) == pytest.approx([SC, 2 * SC, 3 * SC])
