"""The picture in squares: every square where the author drew it, numbers where the rows begin."""

import re

import pytest

from loopleaf.draw import squares
from loopleaf.draw.letters import room_for
from loopleaf.draw.sketch import Figure
from loopleaf.draw.squares import SQUARE
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
    assert set(counts) == {("2", "5"), ("14", "4")}, "row 1 ends at the left, row 2 goes to the right"
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


def _banner(*colours: str) -> Figure:
    """Three rows of six squares in yarns of these colours, two squares each."""
    text = FLAG.replace('["#..", ".#.", "..#"]', '["AABBCC", "AABBCC", "AAAAAA"]')
    text = text.replace('{{"#": A, ".": B}}', "{{A: A, B: B, C: C}}")
    text = text.replace(", B: {{weight: 3, name: sand}}", "")
    yarns = ", ".join(f'{name}: {{weight: 3, colour: "{c}"}}' for name, c in zip("ABC", colours, strict=True))
    text = text.replace(
        '{{A: {{weight: 3, name: sea, colour: "#123456"}}}}',
        f"{{{yarns}}}".replace("{", "{{").replace("}", "}}"),
    )
    figure = squares(
        _work(text.format(corner="bottom right", worked="rows", chain=7)),
        "flag",
        dict(zip("ABC", "ABC", strict=True)),
    )
    assert figure is not None
    return figure


def _barred(svg: str) -> list[int]:
    """How many squares each shape of bars crosses; a bar has one closed outline."""
    found = re.findall(r'<path fill="#(?:22282b|ffffff)" d="([^"]*)"', svg)
    return [way.count("Z") for way in found]


def test_yarns_as_light_as_each_other_are_told_apart_by_bars() -> None:
    # Fern and rust have a contrast of 1.1 and are one grey in black print; cream keeps apart by itself.
    svg = _banner("#2f6b3a", "#a0522d", "#f1e6cf").svg
    assert _barred(svg) == [4, 1], "four squares of rust, and its square in the key"


def test_yarns_that_keep_apart_have_no_bars() -> None:
    assert _barred(_banner("#22282b", "#8a8a8a", "#ffffff").svg) == []


def test_two_yarns_alike_have_bars_that_run_otherwise() -> None:
    svg = _banner("#2f6b3a", "#a0522d", "#3a5f8a").svg
    ways = re.findall(r'<path fill="#ffffff" d="(M[^"]*)"', svg)
    assert [way.count("Z") for way in ways] == [4, 4, 1, 1]
    rising, falling = (re.findall(r"[-\d.]+", way)[:4] for way in ways[:2])
    assert float(rising[1]) > float(rising[3]), "from its foot up to the right"
    assert float(falling[1]) < float(falling[3]), "from its top down to the right"


def test_a_number_takes_the_place_of_bars_and_fits_its_square() -> None:
    text = FLAG.replace('["#..", ".#.", "..#"]', '["############", "............"]')
    text = text.replace("rows: 1-3", "rows: 1-2").replace("name: sand", 'name: sand, colour: "#143352"')
    figure = squares(
        _work(text.format(corner="bottom right", worked="rows", chain=13)), "flag", {"#": "A", ".": "B"}
    )
    assert figure is not None
    assert _barred(figure.svg) == [11, 1]
    sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)">12<', figure.svg)]
    assert len(sizes) == 2
    assert all(room_for("12", size) < SQUARE for size in sizes)
