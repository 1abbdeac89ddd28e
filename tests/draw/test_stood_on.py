"""The chart of a piece that begins on another's edge shows that edge, lighter, and says what it is; charts
drawn together have their pieces' titles.
"""

import re

import pytest

from loopleaf.draw import chart_of, diagram
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.subject import subject_of
from loopleaf.fabric import PatternWork
from loopleaf.measure import measure
from tests.draw.test_begun_on_others import CLOTH, DISC, FAN, PLACES, PLAIN, TUBE, of, part, piece

LIGHTER = re.compile(r"<g [^>]*stroke-opacity[^>]*>(.*?)</g>")
LINE = re.compile(r'<path fill="none" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/>')
RING = re.compile(r'<circle r="([\d.]+)" fill="none"/>')

ROW_ENDS = ["ch 1, sc in end of each row, turn", PLAIN]
SAID = [
    (TUBE + part("base, round: 6, stitches: 1-16"), "round 6 of the base. Row 1", "its stitches 1 to 16."),
    (CLOTH + part("base, row: 8, stitches: [1-4, 7]"), "row 8 of the base. Row 1", "its stitches 1 to 4, 7."),
    (CLOTH + part("base, row: 8, stitches: 3", PLAIN), "row 8 of the base. Row 1", "its stitch 3."),
    (CLOTH + part("base, row ends: true", *ROW_ENDS), "the edge of the base. Row 1", "the ends of its rows."),
    (PLACES["all around a tube"], "round 6 of the base. Round 1", "it."),
    (PLACES["all around a disc"], "the edge of the base. Round 1", "it."),
]  # fmt: skip


def chart(work: PatternWork, name: str = "part", left_handed: bool = False) -> str:
    found = chart_of(work, name)
    assert found is not None
    return found.svg("US", left_handed)


def lighter(svg: str) -> str:
    return "".join(LIGHTER.findall(svg))


@pytest.mark.parametrize("left_handed", [False, True])
@pytest.mark.parametrize(("pieces", "edge", "into"), SAID)
def test_its_key_says_what_it_stands_on(pieces: str, edge: str, into: str, left_handed: bool) -> None:
    work, words = of(pieces), f"{edge} goes into {into}"
    found = chart_of(work, "part")
    assert found is not None
    lines = [line.left if left_handed else line.words for line in found.key()]
    assert f"The lighter line is {words}" in lines
    assert f"The lighter line is {words}" in chart(work, "part", left_handed)
    assert "lighter" not in chart(work, "base", left_handed)
    assert not lighter(chart(work, "base", left_handed))


def test_the_line_lies_beneath_the_first_row_from_end_to_end() -> None:
    work = of(CLOTH + part("base, row: 8, stitches: 3-12"))
    ((left, high, right, low),) = LINE.findall(lighter(chart(work)))
    assert high == low
    assert float(right) - float(left) == pytest.approx(10 * 10)
    subject = subject_of(work, work.pieces[1], measure(work))
    assert subject is not None
    (first, *_) = lay_out(subject).lines
    feet = [foot for places in first.feet.values() for foot in places]
    assert all(float(left) < x < float(right) for x, _ in feet)
    assert all(-float(high) <= y <= -float(high) + 2 for _, y in feet)


@pytest.mark.parametrize("place", ["all around a tube", "all around a disc", "in rounds on a cloth"])
def test_a_first_round_stands_on_a_circle(place: str) -> None:
    work = of(PLACES[place])
    (radius,) = RING.findall(lighter(chart(work)))
    subject = subject_of(work, work.pieces[1], measure(work))
    assert subject is not None
    (first, *_) = lay_out(subject).lines
    feet = [(x * x + y * y) ** 0.5 for places in first.feet.values() for x, y in places]
    assert all(0 <= foot - float(radius) < 6 for foot in feet)


def test_the_titles_of_several_pieces_stand_above_their_charts() -> None:
    work = of(
        TUBE
        + piece("part", "rows", "{edge: base, round: 6}", PLAIN).replace("yarn", "title: Heel & toe\n  yarn")
    )
    svg = diagram(work)
    base, heel = svg.index(">base</text>"), svg.index(">Heel &amp; toe</text>")
    begins = [found.start() for found in re.finditer("<g data-piece", svg)]
    assert begins[0] < base < begins[1] < heel
    assert ">base</text>" not in chart(work, "base")
    assert "Heel &amp; toe</text>" not in chart(work)


@pytest.mark.parametrize("alone", [DISC, FAN])
def test_one_piece_has_no_title(alone: str) -> None:
    assert ">base</text>" not in diagram(of(alone))
