"""Chains hang in an arch of a circle that is as long as they are."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw.arch import arch

CHAIN = 7.6


@pytest.mark.parametrize(("wide", "chains"), [(20.0, 5), (10.0, 5), (30.0, 5), (25.0, 12)])
def test_it_is_as_long_as_its_chains(wide: float, chains: int) -> None:
    """Each chain is a chord of the circle: a little shorter than its part of the arch."""
    found = arch((0.0, 0.0), (wide, 0.0), (0.0, 1.0), chains, CHAIN)
    steps = [dist(a.middle, b.middle) for a, b in pairwise(found.beads)]
    assert max(steps) - min(steps) < 1e-6
    assert 0.9 * CHAIN < steps[0] <= CHAIN + 1e-6
    assert found.rise > wide / 8
    assert dist(found.at(0.0), (wide / 2, found.rise)) < 1e-6


def test_its_ends_and_all_chains_lie_on_one_circle() -> None:
    found = arch((3.0, 1.0), (23.0, 11.0), (-1.0, 2.0), 6, CHAIN)
    middle = found.at(0.0, -found.radius)
    for point in ((3.0, 1.0), (23.0, 11.0), *(bead.middle for bead in found.beads)):
        assert abs(dist(middle, point) - found.radius) < 1e-6


def test_a_stretched_chain_is_hardly_bent_and_a_short_way_makes_nearly_a_circle() -> None:
    stretched = arch((0.0, 0.0), (100.0, 0.0), (0.0, 1.0), 3, CHAIN)
    assert 5.0 < stretched.rise < 15.0
    drop = arch((0.0, 0.0), (2.0, 0.0), (0.0, 1.0), 8, CHAIN)
    assert drop.rise > 15.0


def test_it_bends_away_from_what_it_hangs_on() -> None:
    assert arch((0.0, 0.0), (20.0, 0.0), (0.0, -1.0), 5, CHAIN).at(0.0)[1] < -3
    assert arch((20.0, 0.0), (0.0, 0.0), (0.0, 1.0), 5, CHAIN).at(0.0)[1] > 3
