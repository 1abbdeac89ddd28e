"""Sizes of stitches from the gauge."""

import pytest

from loopleaf.measure.gauge import Sample, Scale, height_ratio, ring_radius

from .by_hand import piece, scale, worked


def test_the_gauge_stitch_is_as_measured():
    one = scale("half", 7.0, 10.0)
    assert one.width_of("half") == 7.0
    assert one.height_of("half") == pytest.approx(10.0)


def test_another_stitch_is_as_tall_as_the_table_says():
    one = scale("half", 7.0, 14.0)
    assert one.height_of("double") == pytest.approx(14.0 * 1.9 / 1.4)
    band = one.height_band("double")
    assert band.low < 14.0 * 1.8 / 1.4
    assert band.high > 14.0 * 2.0 / 1.4


def test_the_authors_second_gauge_wins():
    both = Scale({("single", ""): Sample(6, 6, 0.03, 0.03), ("double", ""): Sample(5, 11, 0.03, 0.03)})
    assert both.height_of("double") == pytest.approx(11)
    assert both.width_of("double") == 5
    assert both.width_of("half") == 6


def test_a_post_stitch_takes_its_own_gauge_or_its_plain_kinds():
    own = Scale({("double", "front"): Sample(6, 9, 0.03, 0.03), ("double", ""): Sample(6, 11, 0.03, 0.03)})
    assert own.height_of("double", "back") == pytest.approx(9)
    assert own.height_of("double") == pytest.approx(11)
    plain = scale("double", 6, 11)
    assert plain.height_of("double", "front") == pytest.approx(11)


def test_scaling_the_gauge_scales_every_height():
    small, large = scale("single", 5, 5), scale("single", 10, 10)
    for kind in ("slip", "single", "half", "double", "treble", "extended-single", "knot"):
        assert large.height_of(kind) == pytest.approx(2 * small.height_of(kind))


def test_an_authors_tall_stitch_is_as_tall_as_its_yarn_overs():
    assert height_ratio("spire", {"spire": 2}) == height_ratio("treble", {})
    assert height_ratio("spire", {"spire": 7}).middle > height_ratio("quadruple-treble", {}).middle


def test_a_stitch_of_which_nothing_is_known_counts_as_single():
    assert height_ratio("whatever", {}) == height_ratio("single", {})


def test_a_chain_ring_leaves_a_hole_and_a_drawn_ring_none():
    disc = worked(("double", 12))
    assert ring_radius(piece(disc, ring_chains=6), 0, 6.2831853) == pytest.approx(6, abs=1e-6)
    assert ring_radius(piece(disc), 0, 7.0) == 0
