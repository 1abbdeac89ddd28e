"""Rows that follow a rule, in print's own words: the same fields as ours, and the same rows."""

import pytest
from pydantic_core import PydanticCustomError

from loopleaf.pattern import load, set_out
from loopleaf.pattern.print_words import said_in_print

SAID = [
    ({"rows": "5-20", "work": "rep rows 3 and 4"}, {"rows": "5-20", "repeat": "3-4"}),
    ({"rows": "5-8", "work": "Repeat row 4."}, {"rows": "5-8", "repeat": "4"}),
    ({"rounds": "9-14", "work": "work as for rounds 3-5"}, {"rounds": "9-14", "repeat": "3-5"}),
    (
        {"rounds": "4 on", "work": "work as for round 3 until piece measures 12 cm from beginning"},
        {"rounds": "4 on", "repeat": "3", "until": "12 cm"},
    ),
    ({"row": "2 and every other row", "work": "x"}, {"rows": "2 on", "every": 2, "work": "x"}),
    ({"row": 3, "work": "rep rows 3 and 7"}, {"row": 3, "work": "rep rows 3 and 7"}),
    ({"row": 3, "work": "Rep Row 2. Fasten off."}, {"row": 3, "repeat": "2", "work": "Fasten off"}),
    ({"row": 3, "work": "As row 2."}, {"row": 3, "repeat": "2"}),
    ({"row": 3, "work": "same as row 2"}, {"row": 3, "repeat": "2"}),
    ({"row": 3, "work": "Work as 2nd row, fasten off"}, {"row": 3, "repeat": "2", "work": "fasten off"}),
    ({"round": 4, "work": "Rep Rnd 3, join"}, {"round": 4, "repeat": "3", "work": "join"}),
    ({"row": 3, "work": "rep last row"}, {"row": 3, "repeat": "2"}),
    ({"rows": "4-9", "work": "rep rows 2 and 3 three more times"}, {"rows": "4-9", "repeat": "2-3"}),
    ({"rows": "10-13", "work": "rep rows 2 and 3 twice more"}, {"rows": "10-13", "repeat": "2-3"}),
    ({"rows": "6-9", "work": "rep last 2 rows 2 times"}, {"rows": "6-9", "repeat": "4-5"}),
    ({"row": 1, "work": "rep last row"}, {"row": 1, "work": "rep last row"}),
    ({"row": 3, "work": "Row 3 (RS): as row 2"}, {"row": 3, "repeat": "2"}),
    ({"row": 3, "work": "as row 2, sc in next st"}, {"row": 3, "work": "as row 2, sc in next st"}),
    (
        {"row": 3, "work": "sc in next st, rep from * around"},
        {"row": 3, "work": "sc in next st, rep from * around"},
    ),
]


@pytest.mark.parametrize(("entry", "fields"), SAID)
def test_the_fields_that_say_the_same(entry: dict[str, object], fields: dict[str, object]) -> None:
    assert said_in_print(entry) == fields


@pytest.mark.parametrize(
    ("row", "more", "again"),
    [
        ("ch 1, sc in each st across, turn", "turn", "ch 1, sc in each st across, turn"),
        ("ch 1, sc in each st across", "turn", "ch 1, sc in each st across, turn"),
        ("ch 1, sc in each st across, turn", "fasten off", "ch 1, sc in each st across, turn, fasten off"),
        ("ch 1, turn, sc in each st across", "turn", "ch 1, turn, sc in each st across, turn"),
    ],
)
def test_a_row_told_again_with_its_own_turn_turns_once(row: str, more: str, again: str) -> None:
    text = f"""
title: Again
terms: US
pieces:
  strip:
    worked: rows
    start: chain 11
    rows:
      - {{row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}}
      - {{row: 2, work: "{row}"}}
      - {{row: 3, work: "Rep Row 2, {more}"}}
"""
    source = load(text.encode(), "strip.yml")
    assert source.pattern is not None, source.findings
    assert set_out(source.pattern, "strip")[0][2].work == again


def test_such_rows_are_set_out_one_by_one() -> None:
    text = """
title: Rows in words
terms: US
pieces:
  strip:
    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}
      - {row: 2 and every other row, work: "ch 1, sc in each st across, turn"}
      - {row: 3, work: "ch 2 (does not count), hdc in each st across, turn"}
      - {rows: 5, work: "ch 3 (counts as dc), dc in each st to end, turn"}
      - {rows: 7, work: rep row 3}
"""
    source = load(text.encode(), "strip.yml")
    assert source.pattern is not None, source.findings
    plans, problems = set_out(source.pattern, "strip")
    assert problems == []
    assert [(plan.label, plan.work.split(",")[0]) for plan in plans] == [
        ("1", "sc in 2nd ch from hook and in each ch across"),
        ("2", "ch 1"), ("3", "ch 2 (does not count)"), ("4", "ch 1"), ("5", "ch 3 (counts as dc)"),
        ("6", "ch 1"), ("7", "ch 2 (does not count)"),
    ]  # fmt: skip


def test_a_number_of_times_that_is_other_rows_than_the_entry_has() -> None:
    with pytest.raises(PydanticCustomError) as told:
        said_in_print({"rows": "3-9", "work": "rep row 2 eight more times"})
    assert told.value.message() == "“rep row 2 eight more times” is 8 × 1 = 8 rows, and 3-9 is 7."
    assert told.value.context == {"message": told.value.message(), "example": "rows: 3-10"}
