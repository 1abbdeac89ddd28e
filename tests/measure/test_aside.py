"""Rows along the sides of their own piece: how wide and how long they make it.

Stitches are 5 mm wide and high; sums by hand.
"""

import pytest

from loopleaf.draw import schematic
from loopleaf.measure.aside import Aside, asides
from loopleaf.measure.pieces import worked_in

from .worked_patterns import measured, rows, worked

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
STAYS = "ch 1, sc in each st across"
DOWN = "ch 1, sc in each row end, turn"
AROUND = (
    "ch 1, sc in each st across, do not turn, sc in end of each row, "
    "working along other side of foundation ch, sc in each ch across, sc in end of each row, join"
)
BODY = (FIRST, PLAIN, PLAIN)


@pytest.mark.parametrize(
    ("lines", "last", "width", "length"),
    [
        ((*BODY, STAYS), None, 50, 20),
        ((*BODY, STAYS, DOWN), Aside(False, False, 1), 55, 20),
        ((*BODY, STAYS, DOWN, PLAIN, PLAIN), Aside(False, False, 1), 65, 20),
        ((*BODY, f"{STAYS}, working down side, sc in each row end, turn"), Aside(True, False, 1), 55, 20),
        ((*BODY, AROUND), Aside(True, True, 2), 60, 25),
        (
            (*BODY, AROUND.replace("join", "turn"), "ch 1, sc in each st around, join"),
            Aside(True, True, 2),
            70,
            35,
        ),
    ],
)
def test_a_border_makes_a_piece_as_large_as_where_it_stands(
    lines: tuple[str, ...], last: Aside | None, width: float, length: float
) -> None:
    text = rows(*lines, chain=11)
    piece = worked(text).pieces[0]
    found = asides(piece, worked_in(piece, 0), 0)
    assert found[:3] == [None] * 3
    if last is not None:
        assert found[-1] == last
    size = measured(text).pieces[0].size[0]
    assert (size["width"].middle, size["length"].middle) == pytest.approx((width, length))
    assert size["around"].middle == pytest.approx(width)


def test_rows_at_a_side_are_as_high_as_what_they_stand_beside() -> None:
    known = measured(rows(*BODY, STAYS, DOWN, PLAIN)).pieces[0].known_rounds(0)
    assert [one.height_mm for one in known] == pytest.approx([5, 10, 15, 20, 20, 20])
    assert [one.rise_mm for one in known] == pytest.approx([5] * 6)


def test_the_drawing_of_the_measures_is_of_the_whole() -> None:
    figure = schematic(worked(rows(*BODY, AROUND, chain=11)), "cloth")
    assert figure is not None
    assert "about 6 cm (2¼ in) wide; about 2.5 cm (1 in) from first row to last" in figure.alt
