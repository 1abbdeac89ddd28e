"""Straps and handles sewn to a bag rise from one end to the other."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import first_picture
from loopleaf.draw.stand import ends_sewn, stand_of
from loopleaf.draw.straps import bent
from tests.measure.worked_patterns import rows, worked

from .pieces import rounds, subject, tree

PLAIN = "ch 1, sc in each st around, join"
BAG = rounds("ch 1, 24 sc in ring, join", *[PLAIN] * 9)


def strap(long: int) -> str:
    turned = ["ch 1, sc in each st across, turn"] * (long - 1)
    return rows("sc in 2nd ch from hook and in each ch across, turn", *turned, chain=4, name="strap")


def high(stitches: str, long: int = 30) -> float:
    sewn = f'finishing: [{{sew: {{piece: strap, to: piece, round: 10, stitches: "{stitches}"}}}}]\n'
    root = tree(first_picture(worked(BAG + strap(long), sewn)))
    return float(str(root.get("viewBox")).split()[3])


def test_a_handle_stands_up_over_its_bag() -> None:
    bare = high("3-5", 30)
    assert high("3-5, 15-17") > bare + 30, "across the bag"
    assert high("3-5, 9-11") > bare + 30, "at one side"


def test_one_end_alone_and_a_patch_are_no_strap() -> None:
    bare = high("3-5")
    assert high("3-5, 15-17", long=4) == pytest.approx(bare, abs=0.5)


def test_a_bag_is_turned_so_that_both_ends_of_its_strap_show_alike() -> None:
    sewn = 'finishing: [{sew: {piece: strap, to: piece, round: 10, stitches: "3-5, 15-17"}}]\n'
    bag = subject(worked(BAG + strap(30), sewn), "piece")
    stand, items = stand_of(bag)
    ends = ends_sewn(bag, items)["strap"]
    (x, y), (other, also) = (stand.point(stand.rings[at].out1, 0.0, along) for at, along in ends)
    assert x == pytest.approx(-other, abs=0.1)
    assert y == pytest.approx(also, abs=0.1)
    assert abs(x) > 10


@pytest.mark.parametrize(("long", "rises"), [(120.0, True), (50.0, False), (400.0, True)])
def test_a_band_is_as_long_as_it_is_unless_it_would_fall(long: float, rises: bool) -> None:
    """Between ends 50 mm apart; no higher than it may stand."""
    way = bent((0.0, 0.0), (50.0, 0.0), long, 100.0)
    measured = sum(dist(one, other) for one, other in pairwise(way))
    assert way[0] == (0.0, 0.0)
    assert dist(way[-1], (50.0, 0.0)) < 1e-3
    assert (max(y for _, y in way) > 5) is rises
    if long < 200:
        assert measured == pytest.approx(long, rel=0.02)
    else:
        assert max(y for _, y in way) == pytest.approx(100.0, abs=0.5)
