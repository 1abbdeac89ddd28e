"""Fans that begin in one place and keep to few stitches: a narrow sector, its row ends beside the rest.

That a fan worked in rows is charted as a triangle that opens upwards: common practice, no source.
"""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw.chart_ground import Fan, Sector
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout
from loopleaf.fabric import Made

from .pieces import rows, subject_from

PINEAPPLE = [
    "ch 3 (counts as dc), sk first 2 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in last st, turn",
    "ch 3 (counts as dc), (2 dc, ch 2, 2 dc, ch 2, 2 dc) in next ch-2 sp, dc in last st, turn",
    "ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, 8 dc in sp between next 2 sts, "
    "(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in last st, turn",
]
FROM_A_RING = "ch 3 (counts as dc), dc in ring, ch 2, 2 dc in ring, turn"
FROM_A_CHAIN = "(dc, ch 2, 2 dc) in 4th ch from hook, turn"
HALF_DISC = [
    "6 dc in 4th ch from hook, turn",
    "ch 3 (counts as dc), dc in same st, 2 dc in each st across, turn",
    "ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * across, turn",
]
HALF_MESH = [
    "6 dc in 4th ch from hook, turn",
    "ch 4 (counts as dc, ch 1), *dc in next st, ch 1; rep from * to last st, dc in last st, turn",
    "ch 5 (counts as dc, ch 2), *dc in next dc, ch 2; rep from * to last st, dc in last st, turn",
]


def pineapple(start: str) -> Layout:
    if start == "chain":
        return lay_out(subject_from(rows(FROM_A_CHAIN, *PINEAPPLE, chain=4)))
    text = rows(FROM_A_RING, *PINEAPPLE).replace("start: chain 11", "start: chain 5, joined")
    return lay_out(subject_from(text))


@pytest.mark.parametrize("start", ["ring", "chain"])
def test_row_ends_stand_beside_the_fans(start: str) -> None:
    """No further from the next stitch than stitches with chains between them are from each other."""
    layout = pineapple(start)
    for line in layout.lines:
        heads = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
        assert max(dist(a, b) for a, b in pairwise(heads)) < 30


@pytest.mark.parametrize("start", ["ring", "chain"])
def test_each_row_stands_above_the_one_below(start: str) -> None:
    """Also at its ends, which would else lie along the base line."""
    lines = pineapple(start).lines
    for below, line in pairwise(lines):
        for end in (0, -1):
            (x, y), (low_x, low_y) = line.heads[id(line.things[end])], below.heads[id(below.things[end])]
            assert y - low_y > 0.8 * abs(x - low_x)


def test_no_stitch_of_a_fan_lies_down() -> None:
    """Each rises, and the heads of a row lie on one arc."""
    for line in pineapple("ring").lines:
        assert max(line.outs) - min(line.outs) < 6
        for thing in line.things:
            if isinstance(thing, Made) and thing.into:
                (_, low), (_, high) = line.feet[id(thing)][0], line.heads[id(thing)]
                assert high - low > 3


@pytest.mark.parametrize("lines", [HALF_DISC, HALF_MESH], ids=["full", "mesh"])
def test_half_a_disc_stays_that(lines: list[str]) -> None:
    """Near miss: its rows fill the way around, chains between its stitches or not."""
    ground = lay_out(subject_from(rows(*lines, chain=4))).ground
    assert isinstance(ground, Fan)
    assert not isinstance(ground, Sector)
