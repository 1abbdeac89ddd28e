"""Rows that don't go from edge to edge stand over the stitches that they were worked in."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw import diagram, piece_picture
from loopleaf.draw.along_side import parted
from loopleaf.draw.chart_labels import box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_words import labels
from loopleaf.draw.laid_row import LaidRow
from loopleaf.draw.subject import subject_of
from loopleaf.draw.uneven_rows import laid_unevenly
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .engraving import inked
from .pieces import DEMO, demo, rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
SHORT = "ch 1, sc in next 6 sts, leave last 4 sts unworked, turn"
WIDE = 5.0
"""A stitch of the gauge that these patterns have, in mm, is as high as it is wide."""


def over(row: int) -> str:
    """The row that closes a short one, down to an earlier row."""
    return f"ch 1, sc in next 6 sts, sc in next 4 sts of row {row}, turn"


def laid(*lines: str, chain: int = 11) -> list[LaidRow]:
    found = laid_unevenly(subject_from(rows(*lines, chain=chain)))
    assert found is not None
    return found


def ends(row: LaidRow) -> tuple[float, float]:
    return round(row.left, 1), round(row.right, 1)


@pytest.mark.parametrize(("before", "side"), [(2, "right"), (3, "left")])
def test_short_rows_lift_the_cloth_at_the_side_where_they_are(before: int, side: str) -> None:
    """Six rows there and four beside them, with a slope between; no hourglass, and nothing at the middle."""
    found = laid(FIRST, *[PLAIN] * (before - 1), SHORT, PLAIN, over(before), PLAIN)
    high, low = (WIDE * (before + more) for more in (4, 2))
    last = found[-1].corners
    tops = (last[-1].tops[1][1], last[0].tops[0][1])
    assert tops == pytest.approx((high, low) if side == "right" else (low, high))
    short, below = found[before], found[before - 1]
    assert ends(short) == (
        (below.left + 4 * WIDE, below.right) if side == "right" else (below.left, below.right - 4 * WIDE)
    )
    assert ends(found[-1]) == ends(found[0])


WEDGE = (
    FIRST,
    "ch 1, sc in next 15 sts, leave last 5 sts unworked, turn",
    PLAIN,
    "ch 1, sc in next 10 sts, leave last 5 sts unworked, turn",
    PLAIN,
    "ch 1, sc in next 10 sts, sc in next 5 unworked sts of row 3, sc in next 5 unworked sts of row 1, turn",
)


def test_the_row_over_short_ones_lies_along_one_slope() -> None:
    """Six rows at one edge, two at the other, and a straight line between them over all twenty stitches."""
    last = laid(*WEDGE, chain=21)[-1]
    assert len(last.corners) == 20
    for (_, end), (start, _) in pairwise(corner.tops for corner in last.corners):
        assert start == pytest.approx(end)
    for corner in last.corners:
        for x, y in corner.tops:
            assert y == pytest.approx(WIDE * (6 - 4 * (x - last.left) / (last.right - last.left)))


def test_it_is_cloth_down_to_what_it_was_worked_into() -> None:
    """Where it goes down beside a short row its stitches are drawn out, over cloth that leaves no hole."""
    found = laid(*WEDGE, chain=21)
    for corner in found[-1].corners[15:]:
        assert [y for _, y in corner.cloth or corner.feet] == pytest.approx([WIDE, WIDE])
    for corner in found[-1].corners[:10]:
        assert corner.cloth is None
    assert found[-1].corners[15].tops[0][1] - found[-1].corners[15].feet[0][1] < 2 * WIDE


def test_far_from_short_rows_the_cloth_is_flat() -> None:
    """Steps of three stitches at one edge of forty: the slope ends a step and a half behind the last one."""
    short = [f"ch 1, sc in next {40 - 3 * at} sts, leave last 3 sts unworked, turn" for at in (1, 2, 3)]
    over = ", ".join(f"sc in next 3 unworked sts of row {row}" for row in (6, 4, 2))
    lines = [FIRST, PLAIN, *(line for step in short for line in (step, PLAIN))]
    last = laid(*lines, f"ch 1, sc in each st across, {over}, turn", chain=41)[-1]
    highs = [y for corner in last.corners for _, y in corner.tops]
    assert len([y for y in highs if y == pytest.approx(9 * WIDE)]) > 2 * 25
    assert min(highs) == pytest.approx(3 * WIDE)


def test_short_rows_in_the_middle_make_a_roof() -> None:
    """Work turned five stitches before either edge, then over each end in turn: low at both edges."""
    last = laid(
        *(FIRST, PLAIN, WEDGE[1], "ch 1, sc in next 10 sts, leave last 5 sts unworked, turn"),
        "ch 1, sc in each st across, sc in next 5 unworked sts of row 3, turn",
        "ch 1, sc in each st across, sc in next 5 unworked sts of row 2, turn",
        PLAIN,
        chain=21,
    )[-1]
    tops = [corner.tops for corner in last.corners]
    assert (tops[0][0][1], tops[-1][1][1]) == pytest.approx((5 * WIDE, 5 * WIDE))
    assert max(y for pair in tops for _, y in pair) == pytest.approx(7 * WIDE)
    assert tops[10][0][1] == pytest.approx(7 * WIDE)


TWO = ["sc in 2nd ch from hook, sc in next ch, turn", "ch 1, 2 sc in first st, sc in next st, turn"]
ONE = ["sc in 2nd ch from hook, turn", "ch 1, 2 sc in first st, turn"]


@pytest.mark.parametrize(("first", "chain"), [(TWO, 3), (ONE, 2)])
def test_the_straight_edge_is_straight_from_the_first_row(first: list[str], chain: int) -> None:
    """Also where a row of a stitch or two can't tell which of its ends the work grows at."""
    grows = [
        "ch 1, sc in each st to last st, 2 sc in last st, turn",
        "ch 1, 2 sc in first st, sc in each st across, turn",
    ]
    found = laid(*first, *grows * 3, grows[0], chain=chain)
    assert [row.right for row in found] == pytest.approx([found[0].right] * 9)
    assert [row.corners[-1].tops[1][0] for row in found] == pytest.approx([found[0].right] * 9)


def test_a_stitch_left_at_one_end_slants_that_edge() -> None:
    """By as much as the rows get narrower; there is no step."""
    found = laid(FIRST, "ch 1, sc in next 9 sts, leave last st unworked, turn", PLAIN)
    assert found[-1].corners[0].tops[0][0] == pytest.approx(found[0].left)
    assert found[-1].corners[-1].tops[1][0] == pytest.approx(found[0].right - WIDE)
    for below, row in pairwise(found):
        ends = [row.corners[at].feet[at] for at in (0, -1)]
        assert [x for x, _ in ends] == pytest.approx([below.corners[at].tops[at][0] for at in (0, -1)])


def test_less_at_one_edge_and_more_at_the_other_leans() -> None:
    """As many stitches in every row, each row a stitch further: cloth on the bias."""
    bias = (
        "ch 1, sc2tog, sc in each st to last st, 2 sc in last st, turn",
        "ch 1, 2 sc in first st, sc in each st to last 2 sts, sc2tog, turn",
    )
    found = laid(FIRST, *bias * 3)
    steps = [b.left - a.left for a, b in pairwise(found)]
    assert [abs(step) for step in steps] == pytest.approx([WIDE] * 6)
    assert len({step > 0 for step in steps}) == 1


def test_its_end_comes_down_to_the_cloth_beside_it_only_where_a_row_goes_over_both() -> None:
    closed = laid(FIRST, PLAIN, SHORT, PLAIN, over(2), PLAIN)
    step = laid(FIRST, PLAIN, SHORT, PLAIN, PLAIN)
    assert closed[3].corners[0].tops[0][1] < 3 * WIDE
    assert step[3].corners[0].tops[0][1] == pytest.approx(4 * WIDE)


def test_no_stitch_of_the_row_over_a_short_one_lies_upon_another() -> None:
    """From left to right each stitch stands beside the one before it, and higher than its feet."""
    for row in laid(FIRST, PLAIN, SHORT, PLAIN, over(2), PLAIN):
        for corner in row.corners:
            assert corner.tops[0][0] < corner.tops[1][0]
            assert max(top[1] for top in corner.tops) > max(foot[1] for foot in corner.feet)


def test_parts_stand_side_by_side_over_their_own_stitches() -> None:
    """A neck: four stitches at either end go on by themselves."""
    found = laid(
        FIRST,
        PLAIN,
        "ch 1, sc in next 4 sts, leave last 6 sts unworked, turn",
        "ch 1, sc in each st across, fasten off",
        "sk next 2 sts on row 2, join yarn in next st, ch 1, sc in same st, sc in next 3 sts, turn",
        PLAIN,
    )
    left, right = found[0].left, found[0].right
    assert [ends(row) for row in found[2:]] == [(right - 20, right)] * 2 + [(left, left + 20)] * 2
    assert found[-1].corners[0].tops[0][1] == pytest.approx(4 * WIDE)


def test_what_is_added_at_one_edge_alone_leans_to_it() -> None:
    """The other edge stays upright: it isn't spread to both sides."""
    grows = (PLAIN, "ch 1, sc in each st to last st, 2 sc in last st, turn")
    for rows_of_it, still, by in (((PLAIN, *grows * 4), "left", 4), (grows * 4, "right", 4)):
        first, *_, last = laid(FIRST, *rows_of_it)
        assert last.right - last.left == pytest.approx((10 + by) * WIDE)
        assert getattr(last, still) == pytest.approx(getattr(first, still))


BOTH = "ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"
HOLE = "ch 1, sc in next 3 sts, ch 3, sk 3 sts, sc in next 4 sts, turn"
SPIKE = "ch 1, sc in next 4 sts, sc in st 2 rows below, sc in next 5 sts, turn"


@pytest.mark.parametrize("last", [(PLAIN,), (BOTH, BOTH, BOTH), (HOLE, PLAIN), (PLAIN, SPIKE)])
def test_rows_from_edge_to_edge_are_laid_evenly(last: tuple[str, ...]) -> None:
    assert laid_unevenly(subject_from(rows(FIRST, PLAIN, *last))) is None


@pytest.mark.parametrize("name", DEMO)
def test_the_demos_rows_are_even(name: str) -> None:
    work, measured = demo(name)
    for piece in work.pieces:
        found = subject_of(work, piece, measured)
        if found is not None and found.in_rows:
            assert laid_unevenly(parted(found)[0]) is None


def test_the_picture_is_as_wide_as_the_cloth_and_as_high_as_its_higher_side() -> None:
    work = worked(rows(FIRST, PLAIN, SHORT, PLAIN, over(2), PLAIN))
    box = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
    assert box is not None
    assert [float(part) - 4 for part in box.groups()] == pytest.approx([10 * WIDE, 6 * WIDE], abs=2)


def test_a_short_rows_number_stands_clear_of_the_lines_beside_it() -> None:
    """It lines up with the other numbers at that side."""
    found = subject_from(rows(FIRST, PLAIN, SHORT, PLAIN, over(2), PLAIN))
    layout = lay_out(found)
    shown = {label.text: placed([label], 6.0) for label in labels(found, layout)}
    closing = layout.lines[4]
    for one in shown["4"]:
        low_x, low_y, high_x, high_y = box_of(one, 6.0)
        for key in closing.deep:
            foot, head = closing.feet[key][0], closing.heads[key]
            assert not (low_x < head[0] < high_x and foot[1] < -low_y and -high_y < head[1])
    chain = next(one for one in inked(diagram(found.work), "cloth") if (one.kind, one.round) == ("ch", "4"))
    assert min(abs(chain.middle[0] - closing.heads[key][0]) for key in closing.deep) > chain.half[1] + 1
    assert shown["4"][-1].middle[0] == pytest.approx(shown["2"][-1].middle[0], abs=2)


def test_a_short_rows_arrow_stands_where_the_row_begins_between_the_lines() -> None:
    layout = lay_out(found := subject_from(rows(FIRST, PLAIN, SHORT, PLAIN, over(2), PLAIN)))
    arrows = [label for label in labels(found, layout) if label.turned is not None]
    assert len(arrows) == 6
    short, closing = layout.lines[3], layout.lines[4]
    first = short.heads[id(short.things[-1 if short.backward else 0])]
    arrow = min(arrows, key=lambda label: abs(label.at[1] + first[1] - 5) + abs(label.at[0] - first[0]))
    assert abs(arrow.at[0] - first[0]) < 18
    (one,) = placed([arrow], 6.0)
    left, _, right, _ = box_of(one, 6.0)
    lines = [closing.heads[key][0] for key in closing.deep]
    assert len(lines) > 2
    assert all(not left < x < right for x in lines)


def test_an_arrow_stays_with_its_number_where_no_lines_are_in_its_way() -> None:
    layout = lay_out(found := subject_from(rows(FIRST, PLAIN, SHORT, PLAIN)))
    assert all(label.text and label.turned is not None for label in labels(found, layout))


def test_a_short_row_is_no_wider_in_the_chart_than_what_it_stands_on() -> None:
    """However many stitches the row over it has: most of them go down beside it."""
    left = "leave remaining sts unworked, turn"
    wedge = (
        *(FIRST, PLAIN, f"ch 1, sc in next 12 sts, {left}", PLAIN, f"ch 1, sc in next 4 sts, {left}", PLAIN),
        "ch 1, sc in next 4 sts, sc in next 16 unworked sts, turn",
    )
    layout = lay_out(subject_from(rows(*wedge, chain=21)))
    wide = [line.heads[id(line.things[-1])][0] - line.heads[id(line.things[0])][0] for line in layout.lines]
    assert wide == pytest.approx([190, 190, 110, 110, 30, 30, 190], abs=8)


def in_parts(apart: int) -> str:
    """Two parts of nine stitches, so many apart, the second one as a garment's other shoulder."""
    first = "ch 1, sc in next 9 sts, turn"
    second = (
        f"skip next {apart} sts of row 2, join A in next st, ch 1, sc in same st and in each st across, turn"
    )
    lines = [FIRST, PLAIN, first, *[PLAIN] * 2, PLAIN.replace("turn", "fasten off"), second, *[PLAIN] * 3]
    return rows(*lines, chain=19 + apart)


def gap_in_the_chart(apart: int) -> float:
    """From the last cross of one part to the first one of the other."""
    layout = lay_out(subject_from(in_parts(apart)))
    right, left = (layout.lines[at] for at in (3, 7))
    assert [len(line.things) for line in (right, left)] == [9, 9]
    return min(x for x, _ in right.heads.values()) - max(x for x, _ in left.heads.values())


@pytest.mark.parametrize("apart", [1, 2])
def test_a_narrow_gap_between_parts_opens_for_its_numbers(apart: int) -> None:
    """From heads 20 or 30 units apart to what a chain, an arrow and a digit need between two crosses."""
    assert gap_in_the_chart(apart) >= 36


def test_a_wide_gap_and_whole_rows_stay_as_they_are() -> None:
    """Near misses: six stitches leave room; without parts nothing is spread."""
    assert gap_in_the_chart(6) == pytest.approx(70, abs=1.5)
    layout = lay_out(subject_from(rows(FIRST, *[PLAIN] * 4)))
    assert all(line.xs[-1] - line.xs[0] == pytest.approx(90) for line in layout.lines)
