"""Yarn from the stitches, from a weighed amount, and in balls."""

from typing import Any

import pytest

from loopleaf.fabric.worked import Made, Space, WorkedRound
from loopleaf.measure.made import contents
from loopleaf.measure.units import Band
from loopleaf.measure.yarn import (
    balls_for,
    chain_metres,
    kind_factor,
    metres_a_gram,
    metres_by_yarn,
    need_of,
    stitch_factor,
    weighed_amount,
)
from loopleaf.pattern.materials import Ball, Yarn
from loopleaf.pattern.values import Length, Weight

from .by_hand import made, scale
from .worked_patterns import measured, rounds


def yarn(**fields: Any) -> Yarn:
    return Yarn.model_construct(**fields)


BALL = Ball.model_construct(grams=50, metres=85)


def only(one: Made) -> float:
    (sort,) = contents(WorkedRound(made=[one])).stitches
    return stitch_factor(sort, {})


def test_metres_are_stitches_times_factor_times_width():
    assert metres_by_yarn([made(("single", 100))], scale("single", 10, 10)) == {"A": pytest.approx(10.5)}


def test_each_yarn_is_counted_on_its_own():
    used = metres_by_yarn([made(("single", 10)), made(("single", 30), yarn="B")], scale("single", 10, 10))
    assert used["B"] == pytest.approx(3 * used["A"])


def test_a_turning_chain_is_paid_for_as_chains():
    assert only(Made("double", (), 0, "A", role="turning", number=1, chains=3)) == pytest.approx(3 * 5.1)


def test_a_loop_stitch_takes_its_loop_besides():
    """Two strands of a loop 3 to 4 stitches wide: our own assumption, no source."""
    loop = only(Made("loop-single", (), 0, "A", number=1)) - only(Made("single", (), 0, "A", number=1))
    assert 2 * 3 <= loop <= 2 * 4


def test_a_gathered_stitch_takes_all_its_legs():
    assert only(Made("double", (), 0, "A", number=1, form="bobble", legs=5)) == pytest.approx(5 * 20.5)


def test_a_picot_is_chains_and_a_slip_stitch():
    assert only(Made("chain", (), 0, "A", role="picot", form="picot", chains=3)) == pytest.approx(
        3 * 5.1 + 4.5
    )


def test_spaces_are_chains():
    assert metres_by_yarn([made(Space(4, 0, "B"))], scale("single", 10, 10)) == {
        "B": pytest.approx(4 * 0.051)
    }
    assert chain_metres(1000) == pytest.approx(5.1)


def test_an_authors_tall_stitch_takes_five_more_a_yarn_over():
    assert kind_factor("spire", {"spire": 6}) == pytest.approx(kind_factor("double", {}) + 25)


def test_weighed_beats_the_model():
    weighed = yarn(weight=4, ball=BALL, weighed=(Weight(52, "g"),))
    need = need_of("A", weighed, Band(40, 60), weighed_amount(weighed, 0))
    assert need.weighed
    assert need.grams == Band.about(52, 0.05)
    assert need.metres is not None
    assert need.metres.middle == pytest.approx(52 * 85 / 50)
    assert need.model_metres == Band(40, 60)
    assert need.balls == (1, 2)


def test_weighed_one_a_size_and_as_a_length():
    sizes = yarn(ball=BALL, weighed=(Weight(64, "g"), Weight(70, "g")))
    assert weighed_amount(sizes, 1) == Band.about(70, 0.05)
    length = yarn(ball=BALL, weighed=(Length(85, "m"),))
    amount = weighed_amount(length, 0)
    assert amount is not None
    assert amount.middle == pytest.approx(50)


def test_the_model_gives_grams_by_the_ball():
    need = need_of("A", yarn(ball=BALL), Band(75, 125), None)
    assert not need.weighed
    assert need.grams is not None
    assert (need.grams.low, need.grams.high) == pytest.approx((75 * 50 / 85, 125 * 50 / 85))
    assert need.balls == (1, 2)


def test_without_a_ball_the_weights_usual_range_widens_the_band():
    assert metres_a_gram(yarn(weight=4, ball=None)) == Band(1.5, 2.0)
    need = need_of("A", yarn(weight=4, ball=None, weighed=()), Band(75, 125), None)
    assert need.grams == Band(75 / 2, 125 / 1.5)
    assert need.balls is None


def test_nothing_is_known_of_a_yarn_that_says_nothing():
    assert metres_a_gram(yarn(weight=None, ball=None)) is None
    assert metres_a_gram(yarn(weight=7, ball=None)) is None
    need = need_of("A", yarn(weight=None, ball=None, weighed=()), None, None)
    assert (need.metres, need.grams, need.balls) == (None, None, None)


def test_balls_go_up_and_are_at_least_one():
    assert balls_for(100, 50, 0.0) == 2
    assert balls_for(100, 50, 0.1) == 3
    assert balls_for(1, 50, 0.1) == 1


def test_what_each_piece_takes() -> None:
    """Two like pieces, one of them made three times: a quarter and three quarters."""
    lines = ["ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join"]
    (need, *_) = measured(rounds(*lines, name="one") + rounds(*lines, name="three", fields="make: 3")).yarn[0]
    assert dict(need.shares) == pytest.approx({"one": 0.25, "three": 0.75})
    assert need.metres is not None
    assert need.metres_by_piece()["one"].middle == pytest.approx(need.metres.middle / 4)
