"""The picture in squares: every square where the author drew it, numbers where the rows begin."""

import re

import pytest

from loopleaf.draw import Squares, squares
from loopleaf.draw.chart_print import TALLEST_MM, WIDEST_MM
from loopleaf.draw.letters import room_for
from loopleaf.draw.sketch import Figure
from loopleaf.draw.squares import MARGIN_MM, SQUARE
from loopleaf.fabric import PatternWork
from loopleaf.publish.drawing import drawn_size
from loopleaf.review import check
from tests.publish.small_site import ROOT

POINTS_PER_MM = 72 / 25.4

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


def _drawn(work: PatternWork, name: str, said: dict[str, str]) -> Squares:
    found = squares(work, name, said)
    assert found is not None
    return found


def _flag(corner: str = "bottom right", worked: str = "rows") -> Figure:
    work = _work(FLAG.format(corner=corner, worked=worked, chain=4))
    return _drawn(work, "flag", {"#": "A (sea)", ".": "B (sand)"}).right


def _numbers(svg: str) -> dict[str, tuple[float, float]]:
    found = re.findall(r'<text[^>]* x="(\S+)" y="(\S+)"[^>]*>(\d+)</text>', svg)
    return {label: (float(x), float(y)) for x, y, label in found}


def test_runs_are_counted_in_their_last_square() -> None:
    text = FLAG.replace('["#..", ".#.", "..#"]', '["####.", "#####"]').replace("rows: 1-3", "rows: 1-2")
    text = text.replace("name: sand", 'name: sand, colour: "#eeddcc"')
    work = _work(text.format(corner="bottom right", worked="rows", chain=6))
    figure = _drawn(work, "flag", {"#": "A", ".": "B"}).right
    counts = re.findall(r'<text fill="#ffffff" x="(\S+)" y="\S+"[^>]*>(\d)</text>', figure.svg)
    assert set(counts) == {("2", "5"), ("14", "4")}, "row 1 ends at the left, row 2 goes to the right"
    assert "so many alike" in figure.svg
    assert "so many alike" not in _flag().svg, "no run is long enough"


def test_each_square_has_its_yarn() -> None:
    svg = _flag().svg
    # Three squares of A on the diagonal and one in the key; B has no colour and is marked by its sign.
    assert svg.count('fill="#123456"') == 4
    assert _areas(svg, "#123456") == [[1.0]] * 3
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
    figure = _drawn(work, "bookmark", {"#": "3 tr", ".": "2ch"}).right
    filled = sum(row.count("#") for row in grid.rows)
    assert sum(sum(areas) for areas in _areas(figure.svg, "#3d5c74")) == pytest.approx(filled)
    assert figure.alt.startswith(
        "The picture in squares, 9 wide and 27 high; rows 2 to 28 run from the bottom"
    )
    assert set(_numbers(figure.svg)) == {str(row) for row in range(2, 29)}


def _wide(wide: int, high: int, colour: str = ', colour: "#eeddcc"') -> Squares:
    """A picture of blocks of ten squares."""
    rows = ", ".join(
        '"' + "".join("#."[(x // 10 + y // 10) % 2] for x in range(wide)) + '"' for y in range(high)
    )
    text = FLAG.replace('"#..", ".#.", "..#"', rows).replace("rows: 1-3", f"rows: 1-{high}")
    text = text.replace("name: sand", f"name: sand{colour}")
    return _drawn(_work(text.format(corner="bottom right", worked="rows", chain=wide + 1)), "flag", AB)


AB = {"#": "A", ".": "B"}


def _texts(svg: str) -> list[tuple[str, float]]:
    """Each text of a drawing, and its size."""
    return [(text, float(size)) for size, text in re.findall(r'font-size="([\d.]+)">([^<]+)<', svg)]


@pytest.mark.parametrize(
    ("wide", "high", "parts"), [(30, 20, 1), (60, 40, 1), (45, 60, 1), (90, 40, 2), (100, 120, 4)]
)
def test_in_print_every_row_has_its_number_and_every_word_is_legible(
    wide: int, high: int, parts: int
) -> None:
    found = _wide(wide, high).printed
    assert len(found) == parts
    for figure in found:
        across, down = drawn_size(figure.svg)
        assert across <= WIDEST_MM
        assert down <= TALLEST_MM
        assert min(size for _, size in _texts(figure.svg)) >= 6.5 / POINTS_PER_MM
    numbers = {text for figure in found for text, _ in _texts(figure.svg)}
    assert numbers >= {str(row) for row in range(1, high + 1)}


def test_a_narrow_picture_has_room_in_the_margin_beside_its_rows() -> None:
    file = "lighthouse-bookmark.yml"
    work = _work((ROOT / "patterns" / file).read_text(encoding="utf-8"), file)
    (figure,) = _drawn(
        work, "bookmark", {"#": "1 tr in next 3 sts", ".": "2ch, miss 2 sts, 1 tr in next st"}
    ).printed
    assert drawn_size(figure.svg)[0] <= MARGIN_MM + 0.1
    (wider,) = _wide(20, 20).printed
    assert drawn_size(wider.svg)[0] > 80


def test_parts_show_some_squares_of_each_other_and_where_the_next_begins() -> None:
    first, second = _wide(90, 40).printed

    def tens(figure: Figure) -> set[str]:
        """The numbers across, which stand lowest of all."""
        found = re.findall(r'y="([\d.]+)" text-anchor="middle" font-size="[\d.]+">(\d+)<', figure.svg)
        low = max(float(y) for y, _ in found)
        return {text for y, text in found if float(y) == low}

    assert all(figure.svg.count("stroke-dasharray") == 1 for figure in (first, second))
    # Row 1 begins at the right, so the first part is the right one.
    assert [("10" in tens(figure), "90" in tens(figure)) for figure in (first, second)] == [
        (True, False),
        (False, True),
    ]
    assert "stroke-dasharray" not in _wide(60, 40).printed[0].svg


def test_runs_are_counted_however_wide_the_picture_is() -> None:
    found = _wide(60, 40)
    for svg in (found.right.svg, *(figure.svg for figure in found.printed)):
        runs = [text for text, _ in re.findall(r">(10)<()", svg)]
        assert len(runs) == 60 // 10 * 40 + 2, "six a row; the number of row 10, and of the tenth square"


def test_lines_between_yarns_show_on_light_paper_and_on_dark() -> None:
    """A page's ink is light on dark paper, where a light yarn stays as light as it is."""
    svg = _wide(30, 20).right.svg
    for ink in ("#22282b", "#ffffff"):
        assert re.search(rf'<path stroke="{ink}" stroke-width=".15" d="M', svg)
    assert "#ffffff" not in _flag().svg, "no dark squares side by side"


def test_a_row_of_the_picture_can_be_pointed_at() -> None:
    svg = _flag().svg
    assert [svg.count(f'data-round="{row}"') for row in (1, 2, 3, 4)] == [2, 2, 2, 0]


def test_a_picture_of_a_thousand_squares_is_small() -> None:
    """150 kB for 1,000 stitches, before compression, is what charts are held to."""
    for colour in (', colour: "#eeddcc"', ""):
        assert len(_wide(40, 25, colour).right.svg) < 150_000


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
    work = _work(text.format(corner="bottom right", worked="rows", chain=7))
    return _drawn(work, "flag", dict(zip("ABC", "ABC", strict=True))).right


def _areas(svg: str, fill: str) -> list[list[float]]:
    """Of each path filled so, the areas of its shapes, in squares."""
    found = []
    for way in re.findall(rf'<path (?:class="[^"]*" )?fill="{fill}" d="([^"]*)"', svg):
        shapes = [[float(n) for n in re.findall(r"-?[\d.]+", part)] for part in way.split("Z") if part]
        found.append(
            [
                abs(sum(s[i] * s[(i + 3) % 8] - s[(i + 2) % 8] * s[i + 1] for i in range(0, 8, 2)))
                / 2
                / SQUARE**2
                for s in shapes
            ]
        )
    return found


def _barred(svg: str) -> list[int]:
    """How many squares each shape of bars crosses; a bar is a small part of its square."""
    found = [areas for ink in ("#22282b", "#ffffff") for areas in _areas(svg, ink)]
    return [len(areas) for areas in found if max(areas) < 0.2]


def test_yarns_as_light_as_each_other_are_told_apart_by_bars() -> None:
    # Fern and rust have a contrast of 1.1 and are one grey in black print; cream keeps apart by itself.
    svg = _banner("#2f6b3a", "#a0522d", "#f1e6cf").svg
    assert _barred(svg) == [2, 2, 1], "two squares of rust a row, and its square in the key"


def test_yarns_that_keep_apart_have_no_bars() -> None:
    assert _barred(_banner("#22282b", "#8a8a8a", "#ffffff").svg) == []


def test_two_yarns_alike_have_bars_that_run_otherwise() -> None:
    svg = _banner("#2f6b3a", "#a0522d", "#3a5f8a").svg
    ways = re.findall(r'<path fill="#ffffff" d="(M[^"]*)"', svg)
    assert [way.count("Z") for way in ways] == [2, 2, 2, 2, 1, 1]
    rising, falling = (re.findall(r"[-\d.]+", way)[:4] for way in ways[:2])
    ways = sorted({tuple(float(a) < float(b) for a, b in ((way[1], way[3]),)) for way in (rising, falling)})
    assert ways == [(False,), (True,)], "one from its foot up to the right, the other down"


def test_a_number_takes_the_place_of_bars_and_fits_its_squares() -> None:
    text = FLAG.replace('["#..", ".#.", "..#"]', '["############", "............"]')
    text = text.replace("rows: 1-3", "rows: 1-2").replace("name: sand", 'name: sand, colour: "#143352"')
    work = _work(text.format(corner="bottom right", worked="rows", chain=13))
    figure = _drawn(work, "flag", {"#": "A", ".": "B"}).right
    assert _barred(figure.svg) == [10, 1]
    sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)">12<', figure.svg)]
    assert len(sizes) == 2
    assert all(room_for("12", size) < 2 * SQUARE for size in sizes)
