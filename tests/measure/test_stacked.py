"""Increases stacked above one another make corners: a hexagon of six, an octagon of eight."""

import math

import pytest

from loopleaf.review import check
from tests.review.frame import framed

from .worked_patterns import HEAD, measured, rounds

RING = ["ch 1, {n} sc in ring, join", "ch 1, 2 sc in each st around, join"]
STACKED = [f"ch 1, (sc in next {at} sts, inc) x {{n}}, join" for at in range(1, 7)]
SPREAD = [
    "ch 1, (sc in next st, inc) x 6, join",
    "ch 1, (sc in next st, inc, sc in next st) x 6, join",
    "ch 1, (sc in next 3 sts, inc) x 6, join",
    "ch 1, (sc in next 2 sts, inc, sc in next 2 sts) x 6, join",
    "ch 1, (sc in next 5 sts, inc) x 6, join",
    "ch 1, (sc in next 3 sts, inc, sc in next 3 sts) x 6, join",
]
EVEN = "ch 1, sc in each st around, join"


def stacked(lines: list[str], n: int = 6) -> list[int]:
    """Of each round, in how many corners its increases stand above one another."""
    found = measured(rounds(*(line.format(n=n) for line in lines))).pieces[0]
    return [one.stacked for one in found.known_rounds(0)]


@pytest.mark.parametrize("n", [4, 5, 6, 8])
def test_increases_at_the_same_places_make_corners(n: int) -> None:
    assert stacked([*RING, *STACKED[:3]], n) == [0, 0, 0, n, n]


def test_increases_that_are_moved_along_make_a_circle() -> None:
    assert stacked([*RING, *SPREAD])[-1] == 0


def test_plain_rounds_between_and_behind_keep_the_corners() -> None:
    """A plain round carries each stitch straight up."""
    assert stacked([*RING, STACKED[0], EVEN, STACKED[1], EVEN, STACKED[2], EVEN])[-4:] == [6, 6, 6, 6]


def test_more_increases_than_eight_make_a_circle() -> None:
    assert stacked([*RING, *STACKED], 12)[-1] == 0


def test_a_shift_early_on_is_outgrown() -> None:
    """The pouch of the format: its increases move once, in round 4, which keeps its six rounds round. Worked
    on in that way, corners show.
    """
    lines = [*RING, STACKED[0], *(f"ch 1, (inc, sc in next {at} sts) x {{n}}, join" for at in range(2, 8))]
    assert stacked(lines, 8) == [0, 0, 0, 0, 0, 0, 0, 8, 8]


def test_a_turning_chain_that_counts_is_one_of_a_pair() -> None:
    lines = [
        "ch 3 (counts as dc), 11 dc in ring, join",
        "ch 3 (counts as dc), dc in same st, dc in next st, ",
    ]
    lines[1] += "(2 dc in next st, dc in next st) x 5, join"
    lines += [
        f"ch 3 (counts as dc), dc in same st, dc in next {at} sts, (2 dc in next st, dc in next {at} sts) "
        "x 5, join"
        for at in (2, 3, 4)
    ]
    assert stacked(lines)[-1] == 6


def test_a_hexagon_has_a_diagonal() -> None:
    """48 stitches of 5 mm are six sides of 40 mm, so 80 mm from corner to corner (Euclid IV.15); eight rounds
    of 5 mm reach 40 mm out on either side, which makes 80 · 2 ÷ √3 = 92.4 mm. Hand fabric lies between.
    """
    size = measured(rounds(*(line.format(n=6) for line in [*RING, *STACKED]))).pieces[0].size[0]
    assert size["across"].middle == pytest.approx(80)
    assert 80 in size["diagonal"]
    assert 80 * 2 / math.sqrt(3) in size["diagonal"]
    assert (
        "diagonal" not in measured(rounds(*(one.format(n=6) for one in [*RING, *SPREAD]))).pieces[0].size[0]
    )


def test_six_a_round_still_lies_flat_by_the_circles_rule() -> None:
    """The rule of thumb (6 in single crochet, common practice) is stacked in most patterns that print it."""
    found = measured(rounds(*(line.format(n=6) for line in [*RING, *STACKED]))).pieces[0]
    assert [one.form for one in found.shape[0]] == ["flat"]


@pytest.mark.parametrize(("stated", "right"), [("8 cm", True), ("8.6 cm", True), ("11 cm", False)])
def test_a_hexagon_may_be_stated_from_corner_to_corner(stated: str, right: bool) -> None:
    lines = [line.format(n=6) for line in [*RING, *STACKED]]
    text = "".join(f'  - {{round: {at}, work: "{line}"}}\n' for at, line in enumerate(lines, 1))
    gauge = "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n"
    found = check(
        framed(f"{gauge}finished size: {{across: {stated}}}\nrounds:\n{text}").encode(), "hexagon.yml"
    )
    assert ("size-differs" not in {one.rule for one in found.findings}) == right


def test_a_hexagonal_base_is_told_from_side_to_side_and_from_corner_to_corner() -> None:
    """24 stitches of 5 mm: four a side are 20 mm, so √3 · 20 = 34.6 and 2 · 20 = 40 mm."""
    head = HEAD.replace("stitches: 20, rows: 20", "stitches: 20, rows: 22")
    lines = [line.format(n=6) for line in [*RING, *STACKED[:2], EVEN, EVEN, EVEN]]
    (one,) = measured(rounds(*lines), head=head).checkpoints
    assert (one.label, one.what) == ("4", "polygon")
    assert one.length_mm[0] == pytest.approx(20 * math.sqrt(3))
    assert one.wide_mm[0] == pytest.approx(40)
