"""Hours from the stitches."""

import pytest

from loopleaf.fabric.worked import Made, Space, WorkedRound
from loopleaf.measure.made import contents
from loopleaf.measure.time import hours, pace_time, single_equivalents

from .by_hand import made


def test_a_thousand_single_crochet():
    """15 to 25 a minute, and 10 to 15 % more."""
    took = hours(1000, 0, 0)
    assert took.practised.low == pytest.approx(1000 / 25 * 1.1 / 60)
    assert took.practised.high == pytest.approx(1000 / 15 * 1.15 / 60)
    assert took.learning.low > took.practised.high


def test_taller_stitches_take_longer_and_chains_less():
    assert pace_time("chain", {}) < pace_time("single", {}) < pace_time("half", {}) < pace_time("double", {})
    assert single_equivalents([made(("double", 7))], {}) == pytest.approx(10)
    assert single_equivalents([made(Space(5, 0, "A"))], {}) == pytest.approx(2)


def test_clusters_take_as_long_as_their_stitches():
    bobble = contents(WorkedRound(made=[Made("double", (), 0, "A", number=1, form="bobble", legs=5)]))
    assert single_equivalents([bobble], {}) == pytest.approx(5 / 0.7)


def test_a_turning_chain_takes_as_long_as_its_chains():
    turning = contents(WorkedRound(made=[Made("double", (), 0, "A", role="turning", number=1, chains=3)]))
    assert single_equivalents([turning], {}) == pytest.approx(3 / 2.5)


def test_a_stitch_that_the_table_lacks_takes_as_its_yarn_overs_like():
    assert pace_time("spire", {"spire": 2}) == pace_time("treble", {})
    assert pace_time("wave", {}) == pytest.approx(1 / 0.85)


def test_ends_and_sewing_are_added():
    plain, more = hours(600, 0, 0), hours(600, 6, 24)
    assert more.practised.low - plain.practised.low == pytest.approx((6 * 2 + 24 / 4) / 60)
    assert more.practised.high - plain.practised.high == pytest.approx((6 * 5 + 24 / 3) / 60)
