"""How many rows make a length: rows = length ÷ (over ÷ rows), worked by hand beside each case."""

from typing import Any

import pytest

from loopleaf.pattern import Entry, Pattern, Piece
from loopleaf.pattern.lengthwise import first_row_side, last_row, other_side, row_height_mm


def pattern(gauge: Any) -> Pattern:
    return Pattern.model_validate(
        {"title": "t", "terms": "US", "gauge": gauge, "pieces": {"p": {"worked": "chain", "length": "1 m"}}}
    )


@pytest.mark.parametrize(
    ("gauge", "height"),
    [
        ({"stitches": "14", "rows": "8", "over": "10 cm"}, 12.5),
        ({"stitches": "14", "rows": "8", "over": "4 in"}, 12.7),
        ([{"stitches": "14", "over": "10 cm"}, {"rows": "10", "over": "10 cm"}], 10),
        ([{"rows": "10", "over": "10 cm"}, {"rows": "20", "over": "10 cm", "piece": "p"}], 5),
        ([{"rows": "20", "over": "10 cm", "piece": "q"}], None),
        ({"rounds": "1-4", "across": "8 cm"}, None),
        ("not critical", None),
    ],
)
def test_height_of_a_row(gauge: Any, height: float | None) -> None:
    assert row_height_mm(pattern(gauge), "p") == (None if height is None else pytest.approx(height))


def entry(**fields: str) -> Entry:
    return Entry.model_validate({"rows": "4 on", "until": "1 m", "as": "2"} | fields)


def repeated(**fields: str) -> Entry:
    return Entry.model_validate({"rows": "4 on", "until": "1 m", "repeat": "2-3"} | fields)


@pytest.mark.parametrize(
    ("one", "length_mm", "last"),
    [
        (entry(), 120, 12),  # 12 rows of 10 mm
        (entry(), 124, 12),
        (entry(), 125, 13),  # as near to 12 as to 13
        (entry(), 10, 4),  # one row at least
        (entry(end="WS"), 120, 12),  # row 1 is RS, so even rows are WS
        (entry(end="RS"), 120, 13),  # 11 and 13 are as near
        (entry(end="RS"), 118, 11),
        (entry(end="RS"), 10, 5),
        (entry(end="WS"), 10, 4),
        (repeated(), 130, 13),  # rows 4-13 are five repeats
        (repeated(), 119, 11),  # 8.9 rows after row 3: nearer to four repeats than to five
        (repeated(), 120, 13),
        (repeated(), 10, 5),
        (repeated(end="WS"), 120, 12),
    ],
)
def test_last_row(one: Entry, length_mm: float, last: int) -> None:
    assert last_row(one, 4, length_mm, 10, "RS", turns=True) == last


def test_where_nothing_turns_every_row_has_the_same_side() -> None:
    assert last_row(entry(end="RS"), 4, 120, 10, "RS", turns=False) == 12


@pytest.mark.parametrize(
    ("rows", "side"),
    [
        ([{"row": "1", "work": "x"}], "RS"),
        ([{"row": "1", "work": "x", "side": "WS"}], "WS"),
        ([{"row": "1", "work": "x"}, {"row": "2", "work": "x", "side": "RS"}], "WS"),
        ([{"row": "1", "work": "x"}, {"row": "3", "work": "x", "side": "RS"}], "RS"),
    ],
)
def test_side_of_row_one(rows: list[dict[str, str]], side: str) -> None:
    assert first_row_side(Piece.model_validate({"worked": "rows", "rows": rows})) == side
    assert first_row_side(Piece.model_validate({"worked": "rows, right side only", "rows": rows})) == "RS"


def test_the_other_side() -> None:
    assert (other_side("RS"), other_side("WS")) == ("WS", "RS")
