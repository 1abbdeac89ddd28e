"""Another yarn's likely gauge and size, and what a weighed amount tells of an altered pattern."""

import pytest

from loopleaf.measure import Band, needs_followed
from loopleaf.measure.other_yarn import likely_hook, likely_stitches

from .worked_patterns import HEAD, measured, rounds

TUBE = rounds("20 sc in ring, join", *["ch 1, sc in each st around, join"] * 9, name="tube")


def test_the_usual_ranges() -> None:
    """Craft Yarn Council guidelines: single crochets in 4 inches, hooks in millimetres."""
    assert likely_stitches(3) == 14.5  # 12 to 17
    assert likely_stitches(4) == 12.5  # 11 to 14
    assert likely_stitches(7) == 5  # 5 and fewer
    assert likely_hook(5.5, 4, 3) == 4.5  # 5.5 × 5 ÷ 6 = 4.6
    assert likely_hook(5.5, 4, 5) == 7.0  # 5.5 × 7.75 ÷ 6 = 7.1


def test_the_weights_next_to_the_patterns_own() -> None:
    found = measured(TUBE).other_yarns
    assert [one.weight for one in found] == [3, 5]
    thinner, thicker = (one.size[0]["around"] for one in found)
    assert thinner.middle == pytest.approx(100 * 12.5 / 14.5)  # 20 stitches of 5 mm are 100 mm
    assert thicker.middle == pytest.approx(100 * 12.5 / 9.5)
    assert 100 not in thinner
    assert 100 not in thicker


def test_pieces_laid_out_are_told_as_a_whole() -> None:
    """Two tubes side by side by three down: what the pattern makes, not one of its pieces."""
    lay = "finishing:\n  - lay out: {piece: tube, across: 2, down: 3, join: sc through both layers}\n"
    whole = measured(TUBE, lay)
    assert whole.laid_out is not None
    for one in whole.other_yarns:
        assert {what: band.middle for what, band in one.size[0].items()} == pytest.approx(
            {what: band.middle * one.by for what, band in whole.laid_out.items()}
        )


def test_what_the_author_states_is_what_changes() -> None:
    """A tube stated as 104 mm around (worked out 100) comes out 104 × 12.5 ÷ 14.5 in the next thinner yarn,
    as the page tells it; its height isn't stated.
    """
    stated = measured(TUBE, "finished size: {around: 104 mm}\n")
    (size,) = stated.other_yarns[0].size
    assert size["around"].middle == pytest.approx(104 * 12.5 / 14.5)
    assert size["height"].middle == pytest.approx(stated.pieces[0].size[0]["height"].middle * 12.5 / 14.5)


def test_the_ends_of_the_table_have_one_neighbour() -> None:
    assert [
        one.weight for one in measured(TUBE, head=HEAD.replace("weight: 4", "weight: 0")).other_yarns
    ] == [1]
    assert [
        one.weight for one in measured(TUBE, head=HEAD.replace("weight: 4", "weight: 7")).other_yarns
    ] == [6]


def test_a_yarn_without_a_weight_has_none() -> None:
    assert measured(TUBE, head=HEAD.replace("weight: 4, ", "")).other_yarns == ()


def weighed(number: int) -> str:
    return rounds("20 sc in ring, join", *["ch 1, sc in each st around, join"] * number, name="tube")


def test_what_was_weighed_tells_what_the_altered_pattern_takes() -> None:
    """Ten rounds of twenty took 10 g; twenty rounds take twice the stitches, but the ends are the same."""
    head = HEAD.replace("A: {weight: 4,", "A: {weight: 4, weighed: 10 g,")
    before, after = measured(weighed(9), head=head), measured(weighed(19), head=head)
    need = needs_followed(before, after)[0][0]
    assert need.grams is not None
    assert 18 < need.grams.middle < 20.5
    assert need.grams.high - need.grams.low > Band.about(need.grams.middle, 0.05).high * 0.1


def test_nothing_weighed_leaves_the_estimate() -> None:
    after = measured(weighed(19))
    assert needs_followed(measured(weighed(9)), after) == after.yarn
