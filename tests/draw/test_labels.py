"""The numbers and arrows beside a chart's rounds: clear of each other, all of them where there is room."""

from itertools import combinations

import pytest

from loopleaf.draw.chart_labels import Label, box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_words import labels

from .pieces import DEMO, MAT, demo, rows, subject, subject_from

UP = (0.0, -1.0)


@pytest.mark.parametrize("name", DEMO)
def test_numbers_stand_clear_of_each_other(name: str) -> None:
    work, _ = demo(name)
    for piece in work.pieces:
        if piece.rounds:
            found = subject(work, piece.name)
            own = list(labels(found, lay_out(found)))
            for size in (5.0, 11.0):
                boxes = [box_of(one, size) for one in placed(own, size) if one.text]
                assert boxes
                for a, b in combinations(boxes, 2):
                    assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_all_are_numbered_where_there_is_room() -> None:
    for text in (
        MAT,
        rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across"),
    ):
        found = subject_from(text)
        own = list(labels(found, lay_out(found)))
        assert [one.text for one in placed(own, 7.0) if one.text] == [
            round.plan.label for round in found.piece.rounds
        ]


def test_where_there_is_none_the_first_is_and_every_second_or_fifth() -> None:
    column = [Label((0.0, -5.0 * at), (0.0, 0.0), str(at + 1)) for at in range(12)]
    assert [one.text for one in placed(column, 5.0)] == [str(at + 1) for at in range(12)]
    assert [one.text for one in placed(column, 8.0)] == ["2", "4", "6", "8", "10", "12"]
    assert [one.text for one in placed(column, 14.0)] == ["1", "5", "10"]
    wide = [Label((0.0, -5.0 * at), (0.0, 0.0), str(at + 1)) for at in range(0, 12, 2)]
    assert [one.text for one in placed(wide, 10.0)] == ["1", "3", "5", "7", "9", "11"]


def test_an_arrow_keeps_clear_of_row_and_number_at_any_size() -> None:
    for size in (5.0, 12.0, 20.0):
        arrow, number = placed([Label((10.0, 0.0), (1.0, 0.0), "12", 0)], size)
        assert box_of(arrow, size)[0] >= 10.0
        assert box_of(number, size)[0] > box_of(arrow, size)[2]
        arrow, number = placed([Label((0.0, 10.0), UP, "12", 0)], size)
        assert box_of(number, size)[3] < box_of(arrow, size)[1] < 10.0
