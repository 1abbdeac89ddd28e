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


def test_a_long_straight_part_stays_straight() -> None:
    """A hat worked sideways: 40 stitches, short rows at eight of them alone, where both sides come in."""
    plain = "ch 1, sc in each st across, turn"
    lines = ["sc in 2nd ch from hook and in each ch across, turn"]
    for at in range(6):
        short = [f"ch 1, sc in next {many} sts, leave last 4 sts unworked, turn" for many in (36, 32)]
        over = ", ".join(f"sc in next 4 unworked sts of row {6 * at + row}" for row in (4, 2))
        lines += [plain, short[0], plain, short[1], plain, f"ch 1, sc in each st across, {over}, turn"]
    subject = subject_from(rows(*lines, chain=41))
    laid = laid_unevenly(subject)
    assert laid is not None
    found = turned(laid, subject)
    assert found is not None
    assert not found.arc
    ends = edges_of([found.row(row) for row in laid])
    high, low = sorted(ends, key=lambda edge: edge[0] - edge[1])
    assert high == pytest.approx((0.0, 37 * WIDE))
    assert low == pytest.approx((12 * WIDE, 25 * WIDE))


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
    assert [top for _, top in edges_of(laid)] == pytest.approx([17 * WIDE] * 2)
    assert turned(laid, subject) is None
