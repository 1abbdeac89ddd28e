"""Squares and hexagons: from side to side, from corner to corner, and flat by their own rule."""

import math

import pytest

from loopleaf.measure.polygon import across_a_height, across_a_side, corners_of, diagonal_across
from loopleaf.review import check
from tests.review.frame import framed

from .worked_patterns import HEAD, measured, rounds

SQUARE = (
    "ch 1, 8 sc in ring, join",
    "ch 1, *sc in next st, 3 sc in next st; rep from * around, join",
    "ch 1, *sc in next 2 sts, 3 sc in next st, sc in next st; rep from * around, join",
    "ch 1, *sc in next 3 sts, 3 sc in next st, sc in next 2 sts; rep from * around, join",
)
TREBLES = (
    "ch 3 (counts as dc), 11 dc in ring, join",
    "ch 3 (counts as dc), dc in next st, 5 dc in next st, (dc in next 2 sts, 5 dc in next st) x 3, join",
    "ch 3 (counts as dc), dc in next 3 sts, 5 dc in next st, (dc in next 6 sts, 5 dc in next st) x 3, "
    "dc in next 2 sts, join",
)
EVEN = "ch 1, sc in each st around, join"


def test_a_square_of_single_crochet() -> None:
    """32 stitches of 5 mm around four sides: 4 cm a side, 5.7 cm from corner to corner, and flat."""
    piece = measured(rounds(*SQUARE)).pieces[0]
    assert [(one.form, one.first, one.last) for one in piece.shape[0]] == [("flat", "1", "4")]
    assert [one.corners for one in piece.known_rounds(0)] == [4, 4, 4, 4]
    size = piece.size[0]
    assert [size[what].middle for what in ("across", "width", "length")] == pytest.approx([40, 40, 40])
    assert size["diagonal"].middle == pytest.approx(40 * math.sqrt(2))


def test_a_square_of_double_crochet_grows_by_sixteen() -> None:
    """13 stitches and 7 rows over 10 cm: 44 stitches of 7.69 mm make sides of 8.46 cm; three rounds of
    14.3 mm reach 4.29 cm out, so 8.57 cm across.
    """
    head = HEAD.replace("stitch: sc, stitches: 20, rows: 20", "stitch: dc, stitches: 13, rows: 7")
    piece = measured(rounds(*TREBLES), head=head).pieces[0]
    assert {one.form for one in piece.shape[0]} == {"flat"}
    assert piece.size[0]["across"].middle == pytest.approx(84.6, abs=0.1)
    assert 85.7 in piece.size[0]["across"]


def test_sides_of_a_box_stand_on_its_square() -> None:
    piece = measured(rounds(*SQUARE, EVEN, EVEN)).pieces[0]
    size = piece.size[0]
    assert size["across"].middle == pytest.approx(40)
    assert size["height"].middle == pytest.approx(10)


def test_groups_that_stand_apart_are_no_corners() -> None:
    shells = ("ch 1, 8 sc in ring, join", "ch 1, 2 sc in each st around, join")
    edge = "ch 1, *sc in next st, 3 sc in next st, sc in next 2 sts; rep from * around, join"
    piece = measured(rounds(*shells, edge)).pieces[0]
    assert [one.corners for one in piece.known_rounds(0)] == [0, 0, 0]
    assert "diagonal" not in piece.size[0]


def test_a_circle_worked_around_corners_is_a_circle() -> None:
    grown = "ch 1, 2 sc in each st around, join"
    assert corners_of(measured(rounds(*SQUARE)).pieces[0].known_rounds(0)) == 4
    assert corners_of(measured(rounds(*SQUARE, grown)).pieces[0].known_rounds(0)) == 0


@pytest.mark.parametrize(
    ("corners", "across", "diagonal"),
    [
        (3, math.sqrt(3) / 2, 1.0),
        (4, 1.0, math.sqrt(2)),
        (5, math.sqrt(5 + 2 * math.sqrt(5)) / 2, (1 + math.sqrt(5)) / 2),
        (6, math.sqrt(3), 2.0),
        (8, 1 + math.sqrt(2), math.sqrt(4 + 2 * math.sqrt(2))),
    ],
)
def test_polygons_of_side_one(corners: int, across: float, diagonal: float) -> None:
    """Height of a triangle and a pentagon, width of a square, a hexagon and an octagon, and their longest
    diagonals: the golden ratio in a pentagon (Euclid XIII.8), twice the side in a hexagon (IV.15).
    """
    assert across_a_side(corners) == pytest.approx(across)
    assert diagonal_across(corners) * across == pytest.approx(diagonal)


def test_the_inscribed_circle() -> None:
    """The circle in a triangle has a third of its height as radius, in a square half (Euclid IV)."""
    assert across_a_height(3) == pytest.approx(3)
    assert across_a_height(4) == across_a_height(6) == pytest.approx(2)


@pytest.mark.parametrize(
    ("repeat", "corners", "counts"), [("x 6", 6, [12, 24, 36, 48]), ("x 4", 4, [8, 16, 24, 32])]
)
def test_hexagon_and_bag_of_old_books(repeat: str, corners: int, counts: list[int]) -> None:
    """Dillmont, fig. 442: twelve, then three in every second stitch six times, 12 more a round. Lambert, My
    Crochet Sampler, 1847, bag with five points: a chain of eight, four lines, 8 more a round.
    """
    sides = [line.removeprefix("ch 1, *").removesuffix("; rep from * around, join") for line in SQUARE[1:]]
    lines = [f"ch 1, {counts[0]} sc in ring, join", *(f"ch 1, ({side}) {repeat}, join" for side in sides)]
    known = measured(rounds(*lines)).pieces[0].known_rounds(0)
    assert [one.stitches for one in known] == counts
    assert [one.corners for one in known] == [corners] * 4


@pytest.mark.parametrize(("stated", "right"), [("11.5 cm", True), ("13.5 cm", True), ("18 cm", False)])
def test_a_hexagon_is_stated_from_side_to_side_or_from_corner_to_corner(stated: str, right: bool) -> None:
    lines = ["ch 1, 6 sc in ring, join", "ch 1, 3 sc in each st around, join"]
    lines += [
        f"ch 1, (sc in next {n} sts, 3 sc in next st, sc in next {n} sts) x 6, join" for n in range(1, 11)
    ]
    text = "".join(f'  - {{round: {at}, work: "{line}"}}\n' for at, line in enumerate(lines, 1))
    gauge = "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n"
    found = check(
        framed(f"{gauge}finished size: {{across: {stated}}}\nrounds:\n{text}").encode(), "hexagon.yml"
    )
    assert ("size-differs" not in {one.rule for one in found.findings}) == right
