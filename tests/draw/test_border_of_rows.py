"""Borders around a piece in rows, of its own last row or a piece of their own: picture and chart.

Stitches are 5 mm wide and high; sums by hand.
"""

from itertools import pairwise

import pytest

from loopleaf.draw import chart_of, first_picture, piece_picture
from loopleaf.draw.along_side import parted
from loopleaf.draw.border import bordered
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.corner_knots import knots_below, knots_of, moved_to
from loopleaf.draw.section import Rectangle
from loopleaf.draw.signs import UNIT
from loopleaf.draw.stand import stand_of
from loopleaf.fabric import PatternWork
from loopleaf.measure import measure
from tests.measure.worked_patterns import rounds, rows, worked

from .pieces import subject
from .test_border import box_of

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
BODY = [FIRST, *[PLAIN] * 5]
"""10 stitches wide, six rows high: 50 by 30 mm."""
OWN = (
    "ch 1, 3 sc in first st, sc in each st to last st, 3 sc in last st, sc in end of each row, working along "
    "other side of foundation ch, 3 sc in first ch, sc in each ch to last ch, 3 sc in last ch, "
    "sc in end of each row, join"
)
PLAINLY = (
    "ch 1, sc in each st across, do not turn, sc in end of each row, "
    "working along other side of foundation ch, sc in each ch across, sc in end of each row, join"
)
APART = rounds(
    "ch 1, (3 sc in corner, sc in each st to next corner) x 4, join",
    start="{edge: cloth, around: true}",
    name="border",
)
CLOTHS = {"own": rows(*BODY, OWN), "plain": rows(*BODY, PLAINLY), "apart": rows(*BODY) + APART}


def of(name: str) -> PatternWork:
    return worked(CLOTHS[name])


@pytest.mark.parametrize("name", CLOTHS)
def test_the_picture_is_wider_and_higher_by_the_border_on_either_side(name: str) -> None:
    work = of(name)
    bare = worked(rows(*BODY))
    wide, high = box_of(first_picture(work, measure(work)))
    within_wide, within_high = box_of(first_picture(bare, measure(bare)))
    assert wide - within_wide == pytest.approx(10, abs=1.0)
    assert high - within_high == pytest.approx(10, abs=1.0)


def test_a_piece_alone_has_its_own_border_and_not_another_piece() -> None:
    own, apart = of("own"), of("apart")
    with_its_own = box_of(piece_picture(own, "cloth", measure(own)))
    alone = box_of(piece_picture(apart, "cloth", measure(apart)))
    assert [one - other for one, other in zip(with_its_own, alone, strict=True)] == pytest.approx(
        [10, 10], abs=1
    )


@pytest.mark.parametrize("name", CLOTHS)
def test_every_stitch_stands_upright_on_its_side_and_corners_on_corners(name: str) -> None:
    border = subject(of(name), "border") if name == "apart" else parted(subject(of(name), "cloth"))[1]
    assert border is not None
    whole = bordered(border)
    assert whole is not None
    ends = 6 if name == "apart" else 6 + 1  # its own row's end too
    assert whole.sides == [10, ends, 10, ends]
    stand, (items,) = stand_of(border)
    assert isinstance(stand.section, Rectangle)
    middles = [item.middle for item in items]
    assert all(later > earlier for earlier, later in pairwise(middles))
    off = [abs(item.middle - sum(item.foot) / 2) for item in items]
    assert max(off) < 0.03, "by hand: a third of a stitch's way around, and what corners spread"


def test_rows_down_one_side_only_are_no_border() -> None:
    work = worked(rows(*BODY, "ch 1, sc in each row end, turn"))
    aside = parted(subject(work, "cloth"))[1]
    assert aside is not None
    assert aside.whole is None


def test_the_chart_is_a_rectangle_without_the_chains_of_the_other_piece() -> None:
    border = subject(of("apart"), "border")
    (line,) = lay_out(border).lines
    assert isinstance(line.ground, Rectangle)
    assert (line.ground.wide, line.ground.high) == (10 * UNIT, 6 * UNIT)
    work = of("apart")
    drawn = chart_of(work, "border", measure(work))
    assert drawn is not None
    assert 'data-round="1"' in drawn.svg()
    assert 'data-round="0"' not in drawn.svg()


def test_knots_lie_where_a_round_has_what_stands_on_the_corners() -> None:
    """Eight stitches on a square of four places a side, begun half a stitch before its first corner."""
    feet = [-1 / 16, 1 / 16, 3 / 16, 5 / 16, 7 / 16, 9 / 16, 11 / 16, 13 / 16]
    tops = [(at + 0.5) / 8 for at in range(8)]
    knots = knots_below([*zip(tops, feet, strict=True)], 4)
    assert knots == pytest.approx([0.125, 0.375, 0.625, 0.875])
    moved = moved_to(knots)
    assert [moved(knot) for knot in knots] == pytest.approx([0.0, 0.25, 0.5, 0.75])
    assert moved(0.25) == pytest.approx(0.125)
    assert knots_below([*zip(tops, reversed(feet), strict=True)], 4) == [], "against the way"
    assert knots_below([], 4) == []
    assert knots_of([0.1, 0.4, 0.6], 4) == []


def test_the_chart_of_a_border_apart_shows_the_edge_of_one_piece_without_seams() -> None:
    chart = chart_of(of("apart"), "border")
    assert chart is not None
    assert "The lighter lines are the edge that the border goes around." in [e.words for e in chart.key()]
