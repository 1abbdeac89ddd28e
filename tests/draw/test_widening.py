"""Rows that gain stitches at their ends stay straight; those that gain along them bend into an arc."""

import re

import pytest

from loopleaf.draw import piece_picture
from loopleaf.draw.from_middle import sheet_of
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import demo, rows, subject, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
BOTH = "ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"
ONE = "ch 1, 2 sc in first st, sc in each st across, turn"
OTHER = "ch 1, sc in each st to last st, 2 sc in last st, turn"


@pytest.mark.parametrize("rows_of_it", [[BOTH] * 12, [ONE, OTHER] * 6, [ONE] * 8])
def test_increases_at_the_ends_alone(rows_of_it: list[str]) -> None:
    assert not sheet_of(subject_from(rows(FIRST, *rows_of_it, chain=4))).arc


OPEN_EDGE = "ch 1, sc in first st, *ch 3, sk next 2 sts, sc in next st; rep from * across, turn"


def test_an_open_edge_leaves_a_triangle_straight() -> None:
    assert not sheet_of(subject_from(rows(FIRST, *[BOTH] * 3, OPEN_EDGE, chain=14))).arc


def test_an_open_edge_leaves_an_arc_bent() -> None:
    """Near miss: the rows below it grow along their way."""
    fan = [f"ch 1, (sc in next {by} sts, inc) x 3, turn" for by in range(2, 12)]
    edge = "ch 1, *sc in next 2 sts, ch 2, sk next st; rep from * across, turn"
    assert sheet_of(subject_from(rows(FIRST, *fan, edge, chain=10))).arc


def test_increases_along_the_rows() -> None:
    fan = [f"ch 1, (sc in next {by} sts, inc) x 3, turn" for by in range(2, 12)]
    assert sheet_of(subject_from(rows(FIRST, *fan, chain=10))).arc
    assert sheet_of(subject(demo("gull-collar")[0])).arc


@pytest.mark.parametrize(("rows_of_it", "wide"), [([BOTH] * 12, 27 * 5), ([ONE, OTHER] * 6, 15 * 5)])
def test_the_picture_is_a_triangle_with_straight_rows(rows_of_it: list[str], wide: float) -> None:
    """As wide as its last row and as high as its rows: no fan, which would be lower and wider."""
    work = worked(rows(FIRST, *rows_of_it, chain=4))
    box = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
    assert box is not None
    assert [float(part) - 4 for part in box.groups()] == pytest.approx([wide, 13 * 5], abs=6)
