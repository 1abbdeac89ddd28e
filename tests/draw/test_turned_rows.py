"""Wedges of short rows one after the other turn the rows: they lie as the spokes of a ring."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw.turned_rows import Turned, edges_of, turned
from loopleaf.draw.uneven_rows import laid_unevenly

from .pieces import rows, subject_from
from .test_uneven_outline import wedge

WIDE = 5.0


def turn(many: int) -> Turned | None:
    subject = subject_from(rows(*wedge(many), chain=21))
    laid = laid_unevenly(subject)
    assert laid is not None
    return turned(laid, subject)


def test_either_edge_is_as_long_as_its_rows_are_high() -> None:
    """Eight rows a wedge at the higher edge and two at the lower one, with one row before them."""
    found = turn(4)
    assert found is not None
    low, high = (found.left, found.right) if found.rising else (found.right, found.left)
    for x, many in ((low, 9), (high, 33)):
        way = [found.point((x, many * WIDE * at / 200)) for at in range(201)]
        assert sum(dist(a, b) for a, b in pairwise(way)) == pytest.approx(many * WIDE, rel=0.001)


def test_its_last_row_is_a_straight_line_of_its_length() -> None:
    found = turn(4)
    assert found is not None
    ends = [found.point((x, found.tops.at(x, True))) for x in (found.left, found.right)]
    assert dist(*ends) == pytest.approx(20 * WIDE)
    x = (found.left + found.right) / 2
    middle = found.point((x, found.tops.at(x, True)))
    assert middle == pytest.approx([sum(pair) / 2 for pair in zip(*ends, strict=True)], abs=0.05)


def test_one_wedge_is_a_slope() -> None:
    assert turn(1) is None


def test_wedges_at_both_edges_in_turn_go_straight_on() -> None:
    """Near miss: as many rows at one edge as at the other."""
    short = "ch 1, sc in next 10 sts, leave last 10 sts unworked, turn"
    plain = "ch 1, sc in each st across, turn"
    lines = ["sc in 2nd ch from hook and in each ch across, turn"]
    for at in range(4):
        over = f"ch 1, sc in next 10 sts, sc in next 10 unworked sts of row {5 * at + 1}, turn"
        lines += [short, plain, over, plain, plain]
    subject = subject_from(rows(*lines, chain=21))
    laid = laid_unevenly(subject)
    assert laid is not None
    assert edges_of(laid) == pytest.approx((17 * WIDE, 17 * WIDE))
    assert turned(laid, subject) is None
