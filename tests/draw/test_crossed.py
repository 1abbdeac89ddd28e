"""Stitches that cross stand side by side, their legs across each other."""

from itertools import pairwise
from math import dist, hypot
from statistics import mean, pstdev

import pytest

from loopleaf.draw.chart_ground import Straight
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Top
from loopleaf.draw.crossed import uncrossed
from loopleaf.draw.signs import UNIT
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import rounds, rows, subject, subject_from

FIRST = "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"
CROSSED = "ch 3 (counts as dc), (sk next st, dc in next st, dc in skipped st) x 4, dc in last st"
ONE_OVER_ONE = (FIRST, CROSSED)
POSTS = (
    FIRST,
    "ch 3 (counts as dc), dc in next st, (sk 1 st, FPtr around next st, FPtr around skipped st, "
    "dc in next st) x 2, dc in next st, dc in last st",
)
CABLE = (
    "ch 3 (counts as dc), 19 dc in ring, join",
    "ch 3 (counts as dc), dc in next 2 sts, (sk 2 sts, FPtr around each of next 2 sts, "
    "FPtr around each of 2 skipped sts, dc in next 4 sts) x 2, dc in next st, join",
)


def _top(order: int, level: float = 20.0) -> Top:
    return Top(Straight(), order / 10, order / 10, level, level, 8.0, order)


def _orders(below: list[list[Top]]) -> list[list[int]]:
    return [[top.order for top in tops] for tops in uncrossed(below)]


@pytest.mark.parametrize(
    ("orders", "side_by_side"),
    [
        ([1, 3, 2, 4], [1, 2, 3, 4]),
        ([1, 4, 5, 2, 3, 6], [1, 2, 3, 4, 5, 6]),
        ([1, 5, 6, 4, 2, 3, 7], [1, 2, 3, 4, 5, 6, 7]),
        ([1, 2, 3], [1, 2, 3]),
        ([2, 2, 1], [2, 2, 1]),
        ([*range(5, 20), 1], [*range(5, 20), 1]),
    ],
    ids=["one over one", "two over two", "about a middle", "none", "two in one place", "a whole round"],
)
def test_heads_lie_above_places_in_order(orders: list[int], side_by_side: list[int]) -> None:
    assert _orders([[_top(order)] for order in orders]) == [[order] for order in side_by_side]


def test_chains_between_stay_where_they_are() -> None:
    assert _orders([[_top(3)], [], [_top(2)]]) == [[2], [], [3]]


def test_a_stitch_on_a_lower_round_or_over_several_places_crosses_none() -> None:
    assert _orders([[_top(3)], [_top(2, level=5.0)]]) == [[3], [2]]
    assert _orders([[_top(3), _top(4)], [_top(2)]]) == [[3, 4], [2]]


@pytest.mark.parametrize("lines", [ONE_OVER_ONE, POSTS], ids=["plain", "around posts"])
def test_a_row_of_crossed_stitches_is_as_even_and_as_wide_as_the_row_below(lines: tuple[str, ...]) -> None:
    layout = lay_out(subject(worked(rows(*lines, chain=12))))
    below, above = (
        [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)] for line in layout.lines
    )
    steps = [b[0] - a[0] for a, b in pairwise(above)]
    assert pstdev(steps) < 0.12 * mean(steps)
    assert abs((above[-1][0] - above[0][0]) - (below[-1][0] - below[0][0])) < 0.1 * mean(steps)


def test_a_cable_of_two_over_two_stays_in_its_round() -> None:
    """Its stitches stand as far apart as plain ones, and those beside it upright."""
    layout = lay_out(subject(worked(rounds(*CABLE))))
    line = layout.lines[1]
    heads = [line.heads[id(thing)] for thing in line.things]
    steps = [dist(a, b) for a, b in pairwise(heads)]
    assert len(steps) == 19
    assert pstdev(steps) < 0.12 * mean(steps)
    outs = [dist(head, (0.0, 0.0)) for head in heads]
    assert pstdev(outs) < 0.12 * mean(outs)


def test_a_cable_of_three_over_three_is_as_high_as_its_row() -> None:
    """Its legs are longer than a treble that stands upright; its heads don't sag for it."""
    cable = (
        "ch 3 (counts as dc), dc in next 3 sts, sk 3 sts, FPtr around each of next 3 sts, "
        "FPtr around each of 3 skipped sts, dc in next 4 sts"
    )
    layout = lay_out(subject(worked(rows(FIRST, cable, chain=16))))
    heights = [layout.lines[1].heads[id(thing)][1] for thing in layout.lines[1].things]
    plain = [*heights[:4], *heights[-4:]]
    assert len(heights) == 14
    assert max(heights) - min(heights) < 0.15 * (mean(plain) - layout.lines[0].outs[0])


@pytest.mark.parametrize(
    ("ring", "over"),
    [("ch 3 (counts as dc), 23 dc in ring, join", 3), ("ch 3 (counts as dc), 31 dc in ring, join", 4)],
    ids=["three cables", "four cables"],
)
def test_the_legs_of_cables_in_rounds_do_not_lie_down(ring: str, over: int) -> None:
    """Two over two: they rise further than they reach aside, and their round with them."""
    cables = "sk 2 sts, FPtr around next 2 sts, FPtr around each of 2 skipped sts, dc in next 4 sts"
    plain = "FPtr around next 4 sts, dc in next 4 sts"
    crossed, straight = (
        lay_out(subject_from(rounds(ring, f"ch 2 (does not count), ({work}) x {over}, join")))
        for work in (cables, plain)
    )
    line = crossed.lines[1]
    legs = [made for made in line.things if isinstance(made, Made) and made.post]
    assert len(legs) == 4 * over
    for made in legs:
        (x, y), (foot_x, foot_y) = line.heads[id(made)], line.feet[id(made)][0]
        out = hypot(x, y)
        rise = (x * (x - foot_x) + y * (y - foot_y)) / out
        aside = abs(x * foot_y - y * foot_x) / out
        assert aside < 0.7 * rise
    assert line.level < straight.lines[1].level + 0.7 * UNIT
    assert straight.lines[1].level < line.level
