"""Rows of flat work are level; what slopes, waves or bows by its stitches goes on doing so.

That rows of one kind of stitch are charted level, lone bobbles or not: common practice, no source.
"""

import pytest

from loopleaf.draw.chart_layout import lay_out

from .pieces import rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
ACROSS = "ch 1, sc in each st across, turn"
BOBBLES = "ch 1, sc in first 2 sts, 5-dc bobble in next st, sc in next 4 sts, 5-dc bobble in next st, sc in next 6 sts, turn"  # noqa: E501
POSTS = "ch 2 (counts as hdc), FPdc around next 6 sts, BPdc around next 6 sts, hdc in last st, turn"
SPIKE = "ch 1, sc in next 5 sts, dc in next st 2 rows below, sc in next 8 sts, turn"
SLOPE = "ch 1, sc in next 8 sts, hdc in next 2 sts, dc in next 2 sts, tr in next 2 sts, turn"
HILL = "ch 1, sc in next 2 sts, hdc in next 2 sts, dc in next 2 sts, tr in next 2 sts, dc in next 2 sts, hdc in next 2 sts, sc in next 2 sts, turn"  # noqa: E501
SHELLS = "ch 1, sc in first st, (skip next 2 sts, 7 dc in next st, skip next 2 sts, sc in next st) x 2, sc in last st, turn"  # noqa: E501

LEVEL = 0.02
"""Heads of a level row lie within this share of a stitch's width."""


def rise_of(*lines: str, chain: int = 15) -> list[float]:
    """How much of a stitch's width lies between the highest and the lowest head of each row."""
    laid = lay_out(subject_from(rows(*lines, chain=chain))).lines
    return [(max(line.outs) - min(line.outs)) / 10 for line in laid]


@pytest.mark.parametrize(
    "lines",
    [
        [FIRST, BOBBLES, ACROSS, BOBBLES, ACROSS, BOBBLES, ACROSS],
        ["dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn", *[POSTS] * 8],
        [FIRST, ACROSS, SPIKE, ACROSS, ACROSS],
    ],
)  # fmt: skip
def test_lone_stitches_of_another_height_leave_rows_level(lines: list[str]) -> None:
    chain = 16 if "dc in 4th" in lines[0] else 15
    assert max(rise_of(*lines, chain=chain)) < LEVEL


@pytest.mark.parametrize("row", [SLOPE, HILL])
def test_stitches_of_growing_height_slope_their_row(row: str) -> None:
    """Near misses: most are single crochets, or none is most, and the row rises from one to the other."""
    assert rise_of(FIRST, row)[-1] > 1


def test_shells_still_bow() -> None:
    assert rise_of(FIRST, SHELLS)[-1] > 0.4


def test_a_row_on_a_slope_keeps_it() -> None:
    assert rise_of(FIRST, SLOPE, ACROSS)[-1] > 1
