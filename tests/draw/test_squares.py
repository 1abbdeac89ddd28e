"""The picture in squares: every square where the author drew it, numbers where the rows begin."""

import re

import pytest

from loopleaf.draw import squares
from loopleaf.draw.sketch import Figure
from loopleaf.fabric import PatternWork
from loopleaf.review import check
from tests.publish.small_site import ROOT

FLAG = """\
title: Flag
terms: US
level: easy
materials:
  yarns: {{A: {{weight: 3, name: sea, colour: "#123456"}}, B: {{weight: 3, name: sand}}}}
  hook: 4 mm
gauge: {{stitch: sc, stitches: 20, rows: 20, over: 10 cm}}
pieces:
  flag:
    title: Flag
    worked: {worked}
    start: chain {chain}
    grid: {{rows: ["#..", ".#.", "..#"], key: {{"#": A, ".": B}}, from: {corner}}}
    rows: [{{rows: 1-3, from: grid}}]
"""


def _work(text: str, file: str = "flag.yml") -> PatternWork:
    checked = check(text.encode(), file)
    assert checked.work is not None, [one.message for one in checked.findings]
    return checked.work


def _flag(corner: str = "bottom right", worked: str = "rows") -> Figure:
    work = _work(FLAG.format(corner=corner, worked=worked, chain=4))
    figure = squares(work, "flag", {"#": "A (sea)", ".": "B (sand)"})
    assert figure is not None
    return figure


def _numbers(svg: str) -> dict[str, tuple[float, float]]:
    found = re.findall(r'<text[^>]* x="(\S+)" y="(\S+)"[^>]*>(\d+)</text>', svg)
    return {label: (float(x), float(y)) for x, y, label in found}


def test_runs_are_counted_in_their_last_square() -> None:
    text = FLAG.replace('["#..", ".#.", "..#"]', '["####.", "#####"]').replace("rows: 1-3", "rows: 1-2")
    text = text.replace("name: sand", 'name: sand, colour: "#eeddcc"')
    work = _work(text.format(corner="bottom right", worked="rows", chain=6))
    figure = squares(work, "flag", {"#": "A", ".": "B"})
    assert figure is not None
    counts = re.findall(r'<text fill="#ffffff" x="(\S+)" y="\S+"[^>]*>(\d)</text>', figure.svg)
    assert counts == [("2", "5"), ("14", "4")], "row 1 ends at the left, row 2 goes to the right"
    assert "so many alike" in figure.svg
    assert "so many alike" not in _flag().svg, "no run is long enough"


def test_each_square_has_its_yarn() -> None:
    svg = _flag().svg
    # Three squares of A on the diagonal and one in the key; B has no colour and is marked by its sign.
    assert svg.count('fill="#123456"') == 4
    assert svg.count(">.</text>") == 7
    assert "A (sea)" in svg
    assert "B (sand)" in svg


@pytest.mark.parametrize(
    ("corner", "worked", "first_at_right", "second_at_right", "upwards"),
    [
        ("bottom right", "rows", True, False, True),
        ("bottom left", "rows", False, True, True),
        ("top right", "rows", True, False, False),
        ("bottom right", "rows, right side only", True, True, True),
    ],
)
def test_a_row_s_number_stands_where_the_row_begins(
    corner: str, worked: str, first_at_right: bool, second_at_right: bool, upwards: bool
) -> None:
    numbers = _numbers(_flag(corner, worked).svg)
    assert (numbers["1"][0] > 6) is first_at_right
    assert (numbers["2"][0] > 6) is second_at_right
    assert (numbers["1"][1] > numbers["3"][1]) is upwards


def test_a_filet_picture_has_open_and_filled_squares() -> None:
    file = "lighthouse-bookmark.yml"
    work = _work((ROOT / "patterns" / file).read_text(encoding="utf-8"), file)
    grid = work.pattern.pieces["bookmark"].grid
    assert grid is not None
    figure = squares(work, "bookmark", {"#": "3 tr", ".": "2ch"})
    assert figure is not None
    filled = sum(row.count("#") for row in grid.rows)
    assert figure.svg.count("fill-second") - figure.svg.count(".fill-second{") == filled + 1
    assert figure.alt.startswith(
        "The picture in squares, 9 wide and 27 high; rows 2 to 28 run from the bottom"
    )
    assert set(_numbers(figure.svg)) == {str(row) for row in range(2, 29)}


def test_a_piece_without_a_grid_has_none() -> None:
    file = "tide-cloth.yml"
    work = _work((ROOT / "patterns" / file).read_text(encoding="utf-8"), file)
    assert squares(work, "cloth", {}) is None
