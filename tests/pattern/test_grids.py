from typing import Any

import pytest

from loopleaf.pattern import Grid, Pattern
from loopleaf.pattern.grids import grid_line, squares
from loopleaf.pattern.start import Start

ROWS = ["ab.", "cd."]


@pytest.mark.parametrize(
    ("corner", "turns", "rows"),
    [
        ("bottom right", True, [".dc", "ab."]),
        ("bottom right", False, [".dc", ".ba"]),
        ("bottom left", True, ["cd.", ".ba"]),
        ("top right", True, [".ba", "cd."]),
        ("top left", False, ["ab.", "cd."]),
    ],
)
def test_squares_in_the_order_in_which_they_are_worked(corner: str, turns: bool, rows: list[str]) -> None:
    key = dict.fromkeys("abcd.", "A")
    grid = Grid.model_validate({"rows": ROWS, "key": key, "from": corner})
    assert [squares(grid, turn, turns) for turn in range(2)] == rows


def pattern(worked: str, key: dict[str, str], terms: str = "US", gauge: str = "not critical") -> Pattern:
    piece = {
        "worked": worked,
        "rows": [{"rows": "1-2", "from": "grid"}],
        "grid": {"rows": ["#..", ".##"], "key": key},
    }
    yarns: dict[str, Any] = {"materials": {"yarns": {"A": {}, "B": {}}}}
    return Pattern.model_validate(
        {"title": "t", "terms": terms, "gauge": gauge, "pieces": {"p": piece}} | yarns
    )


def line(made: Pattern, turn: int, stitch: str = "") -> str:
    piece = made.pieces["p"]
    assert piece.grid is not None
    return grid_line(made, piece, piece.grid, turn, turn + 1, stitch)


def test_colours() -> None:
    made = pattern("rows", {"#": "A", ".": "B"})
    assert line(made, 0) == "with A, sc in next 2 sts, change to B, sc in next st, turn"
    assert line(made, 1) == "ch 1, with A, sc in next st, change to B, sc in next 2 sts, turn"
    assert line(pattern("rows", {"#": "A", ".": "B"}, "UK"), 0).startswith("with A, dc in")
    assert line(made, 0, "hdc").startswith("with A, hdc in next 2 sts")
    assert line(pattern("joined rounds", {"#": "A", ".": "B"}), 1).endswith(
        "change to A, sc in next st, join"
    )


def test_squares_of_several_stitches() -> None:
    made = pattern("rows, right side only", {"#": "dc in next 3 sts", ".": "dc in next st, ch 2, sk 2 sts"})
    assert line(made, 1) == "(dc in next st, ch 2, sk 2 sts) x 2, dc in next 3 sts"
    made = pattern("rows, right side only", {"#": "dc in next 3 sts", ".": "ch 2, sk 2 sts, dc in next st"})
    assert line(made, 0) == "dc in next 6 sts, ch 2, sk 2 sts, dc in next st"


def test_rows_of_squares_begin_as_the_entry_says() -> None:
    made = pattern("rows", {"#": "dc in next 3 sts", ".": "ch 2, sk 2 sts, dc in next st"})
    assert line(made, 1).startswith("ch 1, ")
    assert line(made, 1, "ch 3 (counts as dc)").startswith("ch 3 (counts as dc), dc in next 3 sts, (ch 2")


@pytest.mark.parametrize(
    ("chain", "first"),
    [
        ("chain 3", "with A, sc in next 2 sts, change to B, sc in next st, turn"),
        ("chain 4", "with A, sc in 2nd ch from hook, sc in next st, change to B, sc in next st, turn"),
        ("chain 9", "with A, sc in 2nd ch from hook, sc in next st, change to B, sc in next st, turn"),
    ],
)
def test_the_first_row_on_a_chain_begins_behind_the_turning_chain(chain: str, first: str) -> None:
    made = pattern("rows", {"#": "A", ".": "B"})
    piece = made.pieces["p"].model_copy(update={"start": Start.model_validate(chain)})
    assert piece.grid is not None
    assert grid_line(made, piece, piece.grid, 0, 1, "") == first


def test_a_picture_pasted_as_a_block_of_lines() -> None:
    grid = Grid.model_validate({"rows": "#..\n.##\n", "key": {"#": "A", ".": "B"}})
    assert grid.rows == ("#..", ".##")


def test_a_letter_that_no_yarn_has_is_a_yarn_all_the_same() -> None:
    assert line(pattern("rows", {"#": "C", ".": "B"}), 0).startswith("with C, sc in next 2 sts")
