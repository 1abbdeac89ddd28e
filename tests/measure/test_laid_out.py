"""Pieces laid out and joined, and the border around them: the whole's size and the border's yarn."""

import pytest

from loopleaf.measure import Measured
from loopleaf.measure.finished import What

from .worked_patterns import measured

SQUARE = (
    "  square: {make: 6, yarn: A, worked: joined rounds, start: magic ring, rounds: ["
    '{round: 1, work: "ch 1, 16 sc in ring, join", count: 16}, '
    '{round: 2, work: "ch 1, (sc in next 3 sts, 3 sc in next st) x 4, join, fasten off", count: 24}]}\n'
)
BORDER = (
    "  border: {yarn: B, worked: joined rounds, start: {edge: square, laid out: true}, rounds: ["
    '{round: 1, work: "join B with sl st in any corner, ch 1, *3 sc in corner, sc in each st to next corner; '
    'rep from * around, join, fasten off", count: 74}]}\n'
)
LAY = "finishing:\n  - lay out: {piece: square, across: 3, down: 2}\n"
HIGH = 5.0
"""A single of the head's gauge, 20 rows over 10 cm, in mm."""


def whole(border: str = BORDER) -> Measured:
    return measured(SQUARE + border, LAY)


def test_a_border_makes_the_whole_wider_and_longer_by_its_height_on_both_sides():
    found = whole()
    across = found.pieces[0].size[0]["across"].middle
    assert found.laid_out is not None
    wanted: tuple[tuple[What, int], ...] = (("width", 3), ("length", 2))
    for what, pieces in wanted:
        low, high = pieces * across + 2 * HIGH, pieces * across + (pieces + 1) * HIGH
        assert found.laid_out[what].middle == pytest.approx((low + high) / 2)
        assert found.laid_out[what] == found.pieces[1].size[0][what]


def test_an_edge_that_no_piece_tells_of_is_left_open():
    told, untold = whole().laid_out, whole("").laid_out
    assert told is not None
    assert untold is not None
    assert told["width"].low > untold["width"].low
    assert told["width"].low - untold["width"].low == pytest.approx(2 * HIGH, rel=0.05)


def test_a_border_lies_as_the_whole_does_and_has_no_shape_of_its_own():
    border = whole().pieces[1]
    assert border.shape == ((),)
    assert set(border.size[0]) == {"around", "width", "length"}
    assert border.size[0]["around"].middle == pytest.approx(74 * 5.0)


def test_the_yarn_of_a_border_is_that_of_its_stitches():
    found = whole()
    squares, border = (found.yarn[0][at].metres for at in (0, 1))
    assert border is not None
    assert squares is not None
    ends = 2 * 0.15
    by_stitch = (border.middle - ends) / 74
    assert by_stitch == pytest.approx((squares.middle / 6 - ends) / 40, rel=0.25)
