"""The numbers and arrows beside a chart's rounds: clear of each other, all of them where there is room."""

from itertools import combinations

import pytest

from loopleaf.draw.chart_labels import Label, box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_words import labels

from .pieces import DEMO, MAT, demo, rounds, rows, subject, subject_from

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


def test_few_without_room_leave_the_others_their_numbers() -> None:
    ups = [0.0, 3.0, *(3.0 + 8.0 * at for at in range(1, 11))]
    column = [Label((0.0, -up), (0.0, 0.0), str(at + 1)) for at, up in enumerate(ups)]
    assert [one.text for one in placed(column, 8.0)] == [str(at + 1) for at in range(12) if at != 1]


def test_each_part_of_a_chart_has_as_many_as_it_has_room_for() -> None:
    near = [Label((0.0, -9.0 * at), (0.0, 0.0), str(at + 1)) for at in range(6)]
    far = [Label((90.0, -5.0 * at), (0.0, 0.0), str(at + 7), part=1) for at in range(6)]
    assert {one.text for one in placed([*near, *far], 8.0)} == {*"123456", "8", "10", "12"}


SPIRAL = rounds(
    "6 sc in ring (6)",
    "2 sc in each st around (12)",
    *[f"*{more} sc, inc; rep from * around ({(more + 2) * 6})" for more in range(1, 12)],
    start="magic ring",
)


def test_rounds_numbered_with_two_digits_begin_at_the_bottom() -> None:
    """Side by side, numbers of two digits need more than a single crochet's height."""
    found = subject_from(SPIRAL)
    own = list(labels(found, lay_out(found)))
    assert [one.text for one in placed(own, 11.0) if one.text] == [str(at + 1) for at in range(13)]
    tall = subject_from(SPIRAL.replace("sc", "dc").replace("inc", "2 dc in next st"))
    short = subject_from(rounds("6 sc in ring (6)", "2 sc in each st around (12)", start="magic ring"))
    for other in (tall, short):
        assert lay_out(other).lines[0].ground.at(10.0, 0.0) == pytest.approx((10.0, 0.0))
    assert lay_out(found).lines[0].ground.at(10.0, 0.0) == pytest.approx((0.0, -10.0))


def test_an_arrow_keeps_clear_of_row_and_number_at_any_size() -> None:
    for size in (5.0, 12.0, 20.0):
        arrow, number = placed([Label((10.0, 0.0), (1.0, 0.0), "12", 0)], size)
        assert box_of(arrow, size)[0] >= 10.0
        assert box_of(number, size)[0] > box_of(arrow, size)[2]
        arrow, number = placed([Label((0.0, 10.0), UP, "12", 0)], size)
        assert box_of(number, size)[3] < box_of(arrow, size)[1] < 10.0
