"""How rounds stand: against the circle, the cylinder and the sphere.

A ball of radius R worked along its meridian has 2πR·sin(s/R) around at the distance s from its pole
(geometry of the sphere).
"""

import itertools
from math import hypot, pi, sin, tau

import pytest

from loopleaf.draw.profile import Ring, filled, is_flat, lying, standing
from loopleaf.draw.section import Oval
from loopleaf.measure.filled import GIVES
from loopleaf.measure.shape import ball_stitches
from loopleaf.measure.size import RoundSize
from loopleaf.measure.units import NOTHING

HIGH = 5.0


def sizes(*around: float) -> list[RoundSize]:
    return [
        RoundSize(str(at), length, NOTHING, HIGH, HIGH * at, NOTHING, 1, 0)
        for at, length in enumerate(around, 1)
    ]


def test_rounds_that_grow_by_the_circle_lie_flat() -> None:
    disc = sizes(*(tau * HIGH * at for at in range(1, 8)))
    rings = standing(disc, Oval(), 0.0, ())
    assert rings[-1].out1 == pytest.approx(35.0)
    assert rings[-1].high1 == pytest.approx(0.0, abs=1e-3)
    assert is_flat(rings)
    assert lying(disc, 0.0)[-1] == Ring(30.0, 0.0, 35.0, 0.0)


def test_rounds_that_stay_stand_as_a_tube() -> None:
    tube = sizes(*[tau * 20.0] * 10)
    rings = standing(tube, Oval(), 20.0, ())
    assert all(ring.out1 == pytest.approx(20.0) for ring in rings)
    assert rings[-1].high1 == pytest.approx(50.0)
    assert not is_flat(rings)


def test_a_base_is_pressed_flat_where_it_nearly_is() -> None:
    short = sizes(*(tau * HIGH * at * 0.9 for at in range(1, 6)))
    assert standing(short, Oval(), 0.0, ())[-1].high1 > 5.0
    assert standing(short, Oval(), 0.0, range(5))[-1].high1 == pytest.approx(0.0, abs=1e-6)


def test_every_round_keeps_its_height_and_a_sudden_change_is_shared() -> None:
    jump = sizes(*[tau * 20.0] * 4, *[tau * 24.0] * 4)
    rings = standing(jump, Oval(), 20.0, ())
    assert all(ring.rise == pytest.approx(HIGH) for ring in rings)
    steps = [ring.out1 - ring.out0 for ring in rings]
    assert max(steps) < 2.0
    assert sum(steps) == pytest.approx(4.0, abs=0.1)


def test_a_filled_ball_is_a_sphere() -> None:
    radius, rounds = 28.65, 18
    around = [ball_stitches(at, radius, HIGH, HIGH) * HIGH for at in range(1, rounds + 1)]
    rings = filled(sizes(*around), Oval(), 0.0)
    tall = rings[-1].high1
    assert tall == pytest.approx(2 * radius, rel=0.03)
    for ring in rings:
        assert hypot(ring.out1, ring.high1 - tall / 2) == pytest.approx(radius, rel=0.04)
    half = rings[rounds // 2 - 1]
    assert half.out1 == pytest.approx(radius * sin(half.high1 / tall * pi), rel=0.04)


def test_counts_in_straight_steps_come_out_rounder_when_filled() -> None:
    """Six a round up and down makes two cones; filling bows them, as far as the cloth gives."""
    counts = [6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6]
    cones = sizes(*(count * HIGH for count in counts))
    rings = filled(cones, Oval(), 0.0)
    bends = [_bend(a, b) for a, b in itertools.pairwise(rings)]
    stiff = standing(cones, Oval(), 0.0, ())
    assert max(bends) < 0.7 * max(_bend(a, b) for a, b in itertools.pairwise(stiff))
    for count, ring in zip(counts, rings, strict=True):
        counted = count * HIGH / tau
        middle = (ring.out0 + ring.out1) / 2
        assert abs(middle - counted) <= GIVES * counted + 6 * HIGH / tau
    assert rings[0].out0 == 0.0
    assert rings[-1].out1 == 0.0


def _bend(one: Ring, other: Ring) -> float:
    """Angle between two rounds, as 1 − cos."""
    across = (one.out1 - one.out0) * (other.out1 - other.out0)
    up = (one.high1 - one.high0) * (other.high1 - other.high0)
    return 1 - (across + up) / ((one.rise * other.rise) or 1.0)


def test_a_filled_tube_that_closes_is_as_narrow_at_its_opening_as_its_count_says() -> None:
    """Filling presses out what it lies in, not the edge that the last round draws together."""
    tube = sizes(*(tau * out for out in (5.0, 10.0, 15.0, 20.0, *[20.0] * 8, 15.0)))
    rings = filled(tube, Oval(), 0.0)
    assert rings[-1].out1 == pytest.approx(15.0)
    assert max(ring.out1 for ring in rings) > 19.0


def test_a_filled_tube_that_begins_at_an_opening_is_as_narrow_there() -> None:
    tube = sizes(*(tau * out for out in (10.0, 15.0, 20.0, *[20.0] * 8, 15.0, 10.0, 5.0)))
    rings = filled(tube, Oval(), 10.0)
    assert rings[0].out0 == pytest.approx(10.0)
    assert rings[-1].out1 == 0.0
    assert max(ring.out1 for ring in rings) > 19.0


@pytest.mark.parametrize("last", [(18, 12), (12,), (24, 18, 12)])
def test_a_tube_of_24_stitches_closed_to_12_is_open_by_12(last: tuple[int, ...]) -> None:
    counts = (6, 12, 18, *[24] * 8, *last)
    rings = filled(sizes(*(count * HIGH for count in counts)), Oval(), 0.0)
    assert rings[-1].out1 == pytest.approx(12 * HIGH / tau)
    assert rings[-1].out1 < rings[-2].out1 < rings[-3].out1
    before, last_step = (a.out1 - b.out1 for a, b in itertools.pairwise(rings[-3:]))
    assert last_step > 0.7 * before, "no lip stands upright around it"


def test_a_filled_tube_that_stays_open_is_a_tube() -> None:
    rings = filled(sizes(*[tau * 20.0] * 6), Oval(), 20.0)
    assert all(ring.out1 == pytest.approx(20.0) for ring in rings)
    assert rings[-1].high1 == pytest.approx(30.0)


def test_one_round_and_none() -> None:
    assert is_flat([])
    assert len(filled(sizes(30.0), Oval(), 0.0)) == 1
