"""Rows that change alike at both ends have straight sides, in the picture as in the schematic."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw.schematic import schematic
from loopleaf.draw.slanting_sides import eased, is_steady
from tests.measure.worked_patterns import worked

from .pieces import rows

WIDE = 5.0
FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
BOTH = "ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"


def slopes(lengths: list[float]) -> list[float]:
    """By how much each row widens from its foot to its top."""
    widths = eased([WIDE * one for one in lengths], [WIDE] * len(lengths), WIDE)
    assert all(above[0] == pytest.approx(below[1]) for below, above in pairwise(widths))
    assert (widths[0][0], widths[-1][1]) == pytest.approx((WIDE * lengths[0], WIDE * lengths[-1]))
    return [top - foot for foot, top in widths]


@pytest.mark.parametrize(
    "lengths",
    [[2, 4, 6, 8, 10], [20, 18, 16, 14], [30, 30, 30, 32, 32, 32, 34, 34, 34, 36, 36], [20, 21, 20, 21, 20]],
)  # fmt: skip
def test_sides_are_straight_where_rows_change_steadily(lengths: list[float]) -> None:
    """In every row, or in every third; or by a stitch to and fro, as arches do."""
    found = slopes(lengths)
    assert found == pytest.approx([found[0]] * len(found))


def test_they_bend_where_rows_begin_to_change() -> None:
    """Near miss: ten even rows, then two stitches more in each."""
    found = slopes([20.0] * 10 + [22.0 + 2 * at for at in range(8)])
    assert found[0] == pytest.approx(0.0)
    assert found[-1] > WIDE


def test_one_step_stays_one() -> None:
    """Near miss: an armhole's one decrease, then even rows."""
    found = slopes([24.0] + [22.0] * 9)
    assert found[2:] == pytest.approx([0.0] * 8)


def test_a_gathered_row_is_no_slope() -> None:
    assert is_steady([50, 60, 50], WIDE)
    assert not is_steady([50, 60, 120], WIDE)


@pytest.mark.parametrize("lines", [[BOTH] * 6, [PLAIN, PLAIN, BOTH] * 5, [PLAIN] * 4])
def test_the_schematic_has_no_stairs(lines: list[str]) -> None:
    """Its outline bends at its four corners alone."""
    figure = schematic(worked(rows(FIRST, *lines, chain=13)), "cloth")
    assert figure is not None
    way = re.search(r' d="([^"]+)"', figure.svg)
    assert way is not None
    points = [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", way[1])]
    assert len(points) >= 4
    right = [(x, y) for x, y in points if x > 0]
    (x0, y0), (x1, y1) = min(right, key=lambda at: at[1]), max(right, key=lambda at: at[1])
    for x, y in right:
        assert x == pytest.approx(x0 + (x1 - x0) * (y - y0) / (y1 - y0), abs=0.05)
