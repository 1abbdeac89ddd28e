"""Round by round: how long, how high."""

import pytest

from loopleaf.fabric.worked import Made, Space
from loopleaf.measure.made import contents
from loopleaf.measure.size import length_band, rise_band, round_sizes

from .by_hand import made, scale, worked


def test_the_way_around_is_stitches_times_width():
    assert length_band(made(("half", 48)), scale()).middle == pytest.approx(48 * 100 / 14)


def test_the_band_is_the_gauges_half_stitch():
    band = length_band(made(("half", 28)), scale())
    assert band.low == pytest.approx(200 * (1 - 0.5 / 14))
    assert band.high == pytest.approx(200 * (1 + 0.5 / 14))


def test_a_space_is_between_its_chains_and_the_places_it_bridges():
    arch = Space(5, 0, "A")
    below = worked(("half", 5))
    lace = worked(("half", 1), arch, ("half", 1), round=1)
    lace.made[0].into, lace.made[2].into = (below.edge[0],), (below.edge[4],)
    band = length_band(contents(lace, below.edge), scale(width_mm=10))
    assert band.middle == pytest.approx(60, abs=2)
    assert band.low < 50 < 70 < band.high


def test_a_space_that_bridges_nothing_is_as_wide_as_its_chains():
    corner = length_band(made(("half", 2), Space(2, 0, "A")), scale(width_mm=10))
    assert corner.middle == pytest.approx(40)


def test_what_isnt_counted_has_no_width():
    made_round = worked(("half", 4))
    made_round.made.append(Made("slip", (), 0, "A", role="join"))
    made_round.made.insert(0, Made("chain", (), 0, "A", role="chain", chains=1))
    sizes = round_sizes(["1"], [made(("half", 4))], scale())
    assert round_sizes(["1"], [contents(made_round)], scale()) == sizes


def test_a_mixed_round_rises_by_the_mean_of_its_stitches():
    one = scale("single", 5, 5)
    sc, dc = one.height_of("single"), one.height_of("double")
    assert rise_band(made(("single", 8), ("double", 40)), one).middle == pytest.approx(
        (8 * sc + 40 * dc) / 48
    )


def test_a_round_of_chains_alone_rises_by_one_chain():
    assert rise_band(made(Space(5, 0, "A")), scale(width_mm=6)).middle == pytest.approx(6)


def test_heights_add_up_along_the_fabric():
    sizes = round_sizes(["1", "2", "3"], [made(("half", 8)), None, made(("half", 16))], scale())
    assert sizes[1] is None
    assert [one.height_mm for one in sizes if one] == pytest.approx([10, 20])
    assert [one.stitches for one in sizes if one] == [8, 16]
