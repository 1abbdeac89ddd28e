"""Rows shaped at their ends: stitches evenly apart, edges straight, rows level.

That a chart's shaped edge slants evenly and its other edge is upright: common practice, no source.
"""

from itertools import pairwise

import pytest

from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout

from .pieces import rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
FIRST_DC = "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"
ACROSS = "ch 1, sc in each st across, turn"
MORE_FIRST = "ch 1, 2 sc in first st, sc in each st across, turn"
MORE_LAST = "ch 1, sc in each st to last st, 2 sc in last st, turn"
MORE_BOTH = "ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"
MORE_INSIDE = (
    "ch 1, sc in first st, 2 sc in next st, sc in each st to last 2 sts, 2 sc in next st, sc in last st, turn"
)
TWO_FIRST = "ch 1, 3 sc in first st, sc in each st across, turn"
TWO_LAST = "ch 1, sc in each st to last st, 3 sc in last st, turn"
LESS_FIRST = "ch 1, sc2tog, sc in each st across, turn"
LESS_LAST = "ch 1, sc in each st to last 2 sts, sc2tog, turn"
LESS_BOTH = "ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn"
DC_FIRST = "ch 3 (counts as dc), dc in first st, dc in each st across, turn"
DC_LAST = "ch 3 (counts as dc), dc in each st to last st, 2 dc in last st, turn"
DC_BOTH = "ch 3 (counts as dc), dc in first st, dc in each st to last st, 2 dc in last st, turn"
BOBBLES = "ch 1, 2 sc in first st, sc in next 3 sts, 5-dc bobble in next st, sc in each st to last st, 2 sc in last st, turn"  # noqa: E501
SHELL = "ch 1, 5 dc in first st, sc in each st across, turn"
INCREASE_WITHIN = "ch 1, sc in next 6 sts, 3 sc in next st, sc in next 6 sts, turn"

HAIR = 0.02
"""In units: nothing that the eye sees."""


def laid(*lines: str, chain: int) -> Layout:
    return lay_out(subject_from(rows(*lines, chain=chain)))


def ends_of(layout: Layout) -> list[tuple[float, float]]:
    """Where the first and the last head of each row lie, from left to right."""
    return [(line.xs[0], line.xs[-1]) for line in layout.lines]


ONE_EDGE = {
    "from one": (2, ["2 sc in 2nd ch from hook, turn", *[MORE_FIRST, MORE_LAST] * 5]),
    "from two": (3, [FIRST, *[MORE_FIRST, MORE_LAST] * 10]),
    "from three": (4, [FIRST, *[MORE_FIRST, MORE_LAST] * 3]),
    "at the other edge": (4, [FIRST, *[MORE_LAST, MORE_FIRST] * 4]),
    "every other row": (3, [FIRST, *[MORE_FIRST, ACROSS] * 5]),
    "two at once": (3, [FIRST, *[TWO_FIRST, TWO_LAST] * 4]),
    "decreased": (15, [FIRST, *[LESS_FIRST, LESS_LAST] * 5]),
    "to its tip": (8, [FIRST, *[LESS_FIRST, LESS_LAST] * 3]),
    "double": (5, [FIRST_DC, *[DC_FIRST, DC_LAST] * 4]),
}
BOTH_EDGES = {
    "triangle": (4, [FIRST, *[MORE_BOTH] * 8]),
    "from one": (2, ["sc in 2nd ch from hook, turn", "ch 1, 3 sc in next st, turn", *[MORE_BOTH] * 4]),
    "sleeve": (13, [FIRST, *[ACROSS, ACROSS, MORE_BOTH, ACROSS] * 4]),
    "one stitch in": (9, [FIRST, *[MORE_INSIDE] * 4]),
    "bobbles": (12, [FIRST, MORE_BOTH, BOBBLES, ACROSS, BOBBLES]),
    "decreased": (24, [FIRST, *[LESS_BOTH] * 8]),
    "diamond": (4, [FIRST, *[MORE_BOTH] * 5, *[LESS_BOTH] * 4]),
    "double": (6, [FIRST_DC, *[DC_BOTH] * 5]),
}


@pytest.mark.parametrize(("chain", "lines"), [*ONE_EDGE.values(), *BOTH_EDGES.values()])
def test_rows_are_level_and_even(chain: int, lines: list[str]) -> None:
    for line in laid(*lines, chain=chain).lines[1:]:
        assert max(line.outs) - min(line.outs) < HAIR
        assert all(abs(b - a - 10) < 1 for a, b in pairwise(line.xs))


@pytest.mark.parametrize("name", ONE_EDGE)
def test_an_edge_without_shaping_is_upright(name: str) -> None:
    chain, lines = ONE_EDGE[name]
    ends = ends_of(laid(*lines, chain=chain))
    straight, shaped = (1, 0) if name != "at the other edge" else (0, 1)
    assert max(one[straight] for one in ends) - min(one[straight] for one in ends) < HAIR
    whole = [after[shaped] - one[shaped] for one, after in pairwise(ends[::2])]
    assert max(whole) - min(whole) < HAIR < abs(whole[0]), "it slants evenly"


@pytest.mark.parametrize("name", BOTH_EDGES)
def test_both_edges_slant_alike(name: str) -> None:
    chain, lines = BOTH_EDGES[name]
    middles = [(left + right) / 2 for left, right in ends_of(laid(*lines, chain=chain))]
    assert max(middles) - min(middles) < HAIR


def test_a_shell_at_an_end_is_no_shaping() -> None:
    """Near miss: it rounds its row, and stands above its one place."""
    line = laid(FIRST, ACROSS, SHELL, chain=12).lines[-1]
    assert max(line.outs) - min(line.outs) > 2


def test_increases_within_rows_are_no_shaping_of_their_ends() -> None:
    """Near miss: the same number of stitches more, in the middle."""
    assert all(line.left is None for line in laid(FIRST, INCREASE_WITHIN, ACROSS, chain=14).lines)


def test_a_cloth_as_wide_throughout_settles_by_itself() -> None:
    assert all(line.left is None for line in laid(FIRST, *[ACROSS] * 4, chain=14).lines)


def test_taller_stitches_still_slope_a_shaped_row() -> None:
    """Near miss: shaped at both ends, and higher at one of them."""
    slope = "ch 1, 2 sc in first st, sc in next 2 sts, hdc in next 2 sts, dc in next 2 sts, tr in next st, 2 tr in last st, turn"  # noqa: E501
    line = laid(FIRST, slope, chain=10).lines[-1]
    assert max(line.outs) - min(line.outs) > 10
