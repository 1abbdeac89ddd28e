"""Rows worked down the side of their own piece stand along that side, in the chart and in the picture."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw import chart_of
from loopleaf.draw.chart_ground import Sided
from loopleaf.draw.chart_labels import box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout
from loopleaf.draw.chart_words import labels
from loopleaf.draw.picture import piece_picture
from loopleaf.draw.signs import UNIT
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Made
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
DOWN = "ch 1, sc in each row end, turn"
ENDS_RIGHT = rows(FIRST, PLAIN, PLAIN, "ch 1, sc in each st across", DOWN, PLAIN)
ENDS_LEFT = rows(FIRST, PLAIN, PLAIN, PLAIN, "ch 1, sc in each st across", DOWN, PLAIN)
TALL = rows(
    "dc in 4th ch from hook and in each ch across, turn",
    "ch 3 (counts as dc), dc in each st across, turn",
    "ch 3 (counts as dc), dc in each st across",
    "ch 1, 2 sc in each row end, turn",
    PLAIN,
    chain=13,
)
WIDENED = rows(FIRST, *["ch 1, 2 sc in first st, sc in each st across, turn"] * 9, PLAIN[:-6], DOWN, chain=6)
ASIDE = rows(
    FIRST, PLAIN, PLAIN, "ch 1, sc in each st across, working down side, sc in each row end, turn", PLAIN
)

ALL = [
    pytest.param(ENDS_RIGHT, 4, False, id="right"),
    pytest.param(ENDS_LEFT, 5, True, id="left"),
    pytest.param(TALL, 3, True, id="tall"),
    pytest.param(WIDENED, 11, True, id="widened"),
    pytest.param(ASIDE, 3, False, id="aside"),
]


def _laid(text: str) -> tuple[Subject, Layout]:
    found = subject_from(text)
    return found, lay_out(found)


def _into_ends(found: Subject, at: int) -> list[Made]:
    return [
        made
        for made in found.worked[at].made
        if isinstance(made, Made) and made.number and getattr(made.into[0], "role", "") == "row-end"
    ]


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_each_stitch_stands_beside_its_row(text: str, first: int, left: bool) -> None:
    found, layout = _laid(text)
    line = layout.lines[first]
    assert isinstance(line.ground, Sided)
    assert line.ground.left == left
    stitches = _into_ends(found, first)
    assert len(stitches) >= 3
    for made in stitches:
        (end,) = made.into
        assert isinstance(end, Made)
        row = next(one for one in layout.lines if id(end.into[0]) in one.heads)
        foot, head = row.feet[id(end.into[0])][0], row.heads[id(end.into[0])]
        (x, y), own = line.feet[id(made)][0], line.heads[id(made)]
        assert (x < head[0]) == left
        assert (own[0] < x) == left  # they grow away from the piece
        if text is not WIDENED:
            assert foot[1] - 0.4 * UNIT < y < head[1] + 0.4 * UNIT
            assert abs(own[1] - y) < 0.5 * UNIT


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_they_go_from_the_top_down(text: str, first: int, left: bool) -> None:
    found, layout = _laid(text)
    heads = [layout.lines[first].heads[id(made)][1] for made in _into_ends(found, first)]
    assert all(above > below for above, below in pairwise(heads))


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_what_stands_there_lies_on_nothing_else(text: str, first: int, left: bool) -> None:
    work = worked(text)
    chart = chart_of(work, "", measure(work))
    assert chart is not None
    name = work.pieces[0].name
    share, one, other = max(overlaps(inked(chart.svg(), name)), default=(0.0, None, None), key=lambda o: o[0])
    assert share < 0.2, (one, other)
    assert "spike" not in chart.svg()


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_numbers_of_the_rows_stand_outside_of_them(text: str, first: int, left: bool) -> None:
    found, layout = _laid(text)
    stitches = [head for line in layout.lines[first:] for head in line.heads.values()]
    shown = placed(list(labels(found, layout)), 6.0)
    assert {one.text for one in shown} > {round.plan.label for round in found.piece.rounds[:2]}
    for one in shown:
        low_x, low_y, high_x, high_y = box_of(one, 6.0)
        assert not any(low_x < x < high_x and low_y < -y < high_y for x, y in stitches), one


def test_the_picture_has_them_at_the_side() -> None:
    def size(text: str) -> tuple[float, float]:
        work = worked(text)
        box = re.search(r'viewBox="(\S+) (\S+) (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
        assert box is not None
        return float(box[3]), float(box[4])

    plain, edged = size(rows(FIRST, PLAIN, PLAIN, PLAIN)), size(ENDS_RIGHT)
    assert edged[0] > plain[0] + 5
    assert edged[1] == pytest.approx(plain[1], abs=1.0)


LOOPED = "ch 1, *sc in next st, ch 3; rep from * to last st, sc in last st, turn"
OVER = "ch 1, sc in each st across, do not turn, sc in end of each row, turn"
FOOT = "ch 1, sc in each row end down side, sc in each ch along foundation, turn"


def _box(text: str) -> tuple[float, float, float, float]:
    work = worked(text)
    box = re.search(r'viewBox="(\S+) (\S+) (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
    assert box is not None
    left, top, wide, high = (float(part) for part in box.groups())
    return left, -top - high, left + wide, -top


@pytest.mark.parametrize(
    ("rows_of_cloth", "last", "left", "right", "below", "above"),
    [
        pytest.param(4, (OVER, LOOPED), 10.0, 0.0, 0.0, 10.0, id="over the top, down the left"),
        pytest.param(5, (OVER, LOOPED), 0.0, 10.0, 0.0, 10.0, id="over the top, down the right"),
        pytest.param(5, (FOOT, PLAIN), 10.0, 0.0, 10.0, 0.0, id="down the left, along the foot"),
        pytest.param(5, (DOWN, PLAIN), 10.0, 0.0, 0.0, 0.0, id="down the left alone"),
    ],
)
def test_the_picture_has_rows_over_a_corner_along_both_edges(
    rows_of_cloth: int, last: tuple[str, str], left: float, right: float, below: float, above: float
) -> None:
    """They stand so many mm out from the cloth by itself, and from no other edge of it."""
    cloth = [FIRST, *[PLAIN] * (rows_of_cloth - 1)]
    bare, edged = _box(rows(*cloth)), _box(rows(*cloth, *last))
    reached = (bare[0] - edged[0], edged[2] - bare[2], bare[1] - edged[1], edged[3] - bare[3])
    assert reached == pytest.approx((left, right, below, above), abs=1.5)
