"""How far across the work is, round by round: circles, squares and hexagons of the textbooks."""

import math

import pytest

from tests.alter.patterns import demo

from .worked_patterns import HEAD, measured, rounds, rows

EVEN = "ch 1, sc in each st around, join"
DISC = (
    "ch 1, 6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, 2 sc in next st) x 6, join",
)
SQUARE = (
    "ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) x 3, ch 2, join to top of ch-3",
    "sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, "
    "*ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1, join to top of ch-3",
)
HEXAGON = (
    "ch 3 (counts as dc), dc in ring, (ch 1, 2 dc in ring) x 5, ch 1, join to top of ch-3",
    "sl st in next dc, sl st in next ch-1 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp, "
    "*(2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * around, join to top of ch-3",
)


def across(*lines: str, start: str = "magic ring") -> list[float | None]:
    (piece,) = measured(rounds(*lines, start=start)).pieces
    return list(piece.across_mm[0])


def test_a_disc_is_twice_its_radius() -> None:
    """A diameter is twice the radius (textbook geometry): 1, 2, 3 rounds of 5 mm."""
    assert across(*DISC) == pytest.approx([10, 20, 30])


def test_around_divided_by_pi() -> None:
    """A circle's circumference is π times its diameter (textbook geometry): a tube of 18 × 5 mm."""
    assert across(*DISC, EVEN, EVEN, EVEN)[-1] == pytest.approx(18 * 5 / math.pi)


def test_a_squares_side_is_a_quarter_of_its_way_around() -> None:
    """A square has four sides alike (textbook geometry): 12 stitches and 4 spaces of two chains, of 5 mm."""
    first, second = across(*SQUARE)
    assert first == pytest.approx((12 + 4 * 2) * 5 / 4)
    assert second == pytest.approx((24 + 4 + 4 * 2) * 5 / 4)


def test_a_hexagon_from_side_to_side() -> None:
    """Twice the way from its middle to a side (textbook geometry): a double crochet's height each round."""
    (piece,) = measured(rounds(*HEXAGON)).pieces
    heights = [one.height_mm for one in piece.known_rounds(0)]
    assert list(piece.across_mm[0]) == pytest.approx([2 * mm for mm in heights])


def test_what_is_no_circle_has_none() -> None:
    """An oval is longer than it is wide, rows are wide."""
    both = (
        "sc in 2nd ch from hook and in next 3 chs, 3 sc in last ch, "
        "along other side of foundation ch: sc in next 3 chs, 2 sc in last ch"
    )
    oval = measured(rounds(both, EVEN, start="chain 6, both sides"))
    assert set(oval.pieces[0].across_mm[0]) == {None}
    assert measured(rows("sc in 2nd ch from hook and in each ch across, turn")).pieces[0].across_mm == ()


@pytest.mark.parametrize(
    ("lines", "stated", "at"),
    [
        (SQUARE, "{piece: disc, across: 9 cm}", -1),
        (DISC, "{piece: disc, across: 9 cm}", -1),
        ((*DISC, EVEN, EVEN, EVEN), "{rounds: 1-3, across: 9 cm}", 2),
        (SQUARE, "{rounds: 1, across: 3 cm}", 0),
    ],
)
def test_the_table_ends_at_the_gauge_by_how_far_it_is_across(
    lines: tuple[str, ...], stated: str, at: int
) -> None:
    """What was measured is what the round says that it was measured at."""
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", stated)
    piece = measured(rounds(*lines), head=head).pieces[0]
    assert piece.across_mm[0][at] == pytest.approx(30 if "3 cm" in stated else 90)


def test_the_harbour_square_ends_at_17_cm() -> None:
    measured_square = demo("harbour-square").measured
    assert measured_square is not None
    assert measured_square.pieces[0].across_mm[0][-1] == pytest.approx(170)


@pytest.mark.parametrize("stated", ["{piece: disc, across: 9 cm}", "{rounds: 1-4, across: 9 cm}"])
def test_a_gauge_of_all_the_rounds_says_how_far_across_the_piece_is(stated: str) -> None:
    """Good to 2 %; of a square its way around as well, four times its side (textbook geometry)."""
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", stated)
    disc = measured(rounds(*DISC, EVEN), head=head).pieces[0]
    assert (disc.size[0]["across"].low, disc.size[0]["across"].high) == pytest.approx((88.2, 91.8))
    square = measured(rounds(*SQUARE, EVEN, EVEN), head=head).pieces[0]
    assert (square.size[0]["around"].low, square.size[0]["around"].high) == pytest.approx((352.8, 367.2))


def test_a_gauge_of_some_rounds_leaves_the_piece_to_the_stitches() -> None:
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "{rounds: 1-2, across: 6 cm}")
    across = measured(rounds(*DISC), head=head).pieces[0].size[0]["across"]
    assert across.middle == pytest.approx(90)
    assert across.off > 0.05


def test_a_gauge_by_rounds_is_the_first_pieces_that_has_them() -> None:
    """Two rounds of another piece are not as far across as four of the first."""
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "{rounds: 1-3, across: 9 cm}")
    moon = rounds(*DISC[:2], name="moon")
    disc, small = measured(rounds(*DISC) + moon, head=head).pieces
    assert small.across_mm[0][-1] == pytest.approx(disc.across_mm[0][1])
    small, disc = measured(moon + rounds(*DISC), head=head).pieces
    assert disc.across_mm[0][-1] == pytest.approx(90)
    assert small.across_mm[0][-1] == pytest.approx(60)


def test_a_gauge_of_a_whole_bag_says_nothing_of_how_high_it_stands() -> None:
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "{rounds: 1-9, across: 9 cm}")
    bag = measured(rounds(*DISC, *[EVEN] * 6), head=head).pieces[0].size[0]
    assert bag["across"].middle == pytest.approx(90)
    assert "length" not in bag
    assert "height" in bag


def test_a_gauge_by_a_piece_in_rows_is_its_width() -> None:
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "{piece: cloth, across: 30 cm}")
    cloth = measured(rows("sc in 2nd ch from hook and in each ch across, turn"), head=head).pieces[0]
    assert (cloth.size[0]["width"].low, cloth.size[0]["width"].high) == pytest.approx((294, 306))


def test_a_gauge_by_how_far_it_is_across_is_the_first_sizes() -> None:
    head = HEAD.replace("{stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "{piece: cloth, across: 30 cm}")
    two = rows("sc in 2nd ch from hook and in each ch across, turn").replace("chain 11", "chain 11 (21)")
    cloth = measured(two, "sizes: [S, M]\n", head=head).pieces[0]
    assert [size["width"].middle for size in cloth.size] == pytest.approx([300, 600])
