"""A yoke worked in rows with four corners lies flat around its neck, open in front."""

import re

import pytest

from loopleaf.draw import piece_picture
from loopleaf.draw.foundation_edge import foot_mm
from loopleaf.draw.schematic import schematic
from loopleaf.draw.yoke import Yoke, yoke_of
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import rows, subject_from

WIDE = 5.0
"""A stitch of the gauge that these patterns have, in mm, is as high as it is wide."""

FRONT, SLEEVE, BACK = 7, 5, 16


def neck(corner: str = "3 sc in next ch") -> str:
    """A first row on 44 chains: two fronts, two sleeves, a back, and a chain for each corner."""
    parts = (FRONT, SLEEVE, BACK, SLEEVE, FRONT)
    first = f"sc in 2nd ch from hook and in next {FRONT - 1} chs"
    return ", ".join([first, *(f"{corner}, sc in next {many} chs" for many in parts[1:])]) + ", turn"


MORE = (
    "ch 1, *sc in each st to centre st of next group, 3 sc in next st; rep from * 3 more times, "
    "sc in each st across, turn"
)
AT_ENDS = MORE.replace("ch 1, *", "ch 1, 2 sc in first st, *").replace(
    "sc in each st across", "sc in each st to last st, 2 sc in last st"
)
PLAIN = "ch 1, sc in each st across, turn"


def yoke(*lines: str, chain: int = 45) -> Yoke | None:
    return yoke_of(subject_from(rows(*lines, chain=chain)))


def test_its_neck_is_a_rectangle_with_the_fronts_below_the_back() -> None:
    """Counted on the chain: half a corner's chain belongs to either side of it."""
    found = yoke(neck(), *[MORE] * 7)
    assert found is not None
    start, *corners, end = found.corners
    wide, deep = (BACK + 1) * WIDE / 2, (SLEEVE + 1) * WIDE / 2
    assert corners == [
        pytest.approx(at) for at in ((-wide, -deep), (-wide, deep), (wide, deep), (wide, -deep))
    ]
    assert start == pytest.approx(((FRONT + 0.5) * WIDE - wide, -deep))
    assert end == pytest.approx((-start[0], -deep))
    assert found.leans == (0.0, 0.0)


def test_its_corners_run_outwards_from_row_to_row() -> None:
    """The middle of each group of three lies on the line from corner to corner."""
    found = yoke(neck(), *[MORE] * 7)
    assert found is not None
    assert len(found.levels) == len(found.knots) == 9
    for high, knots in zip(found.levels, found.knots, strict=True):
        for number, along in enumerate(knots, start=1):
            assert found.point(0.0, along, high) == pytest.approx(found.corner(number, high))


def test_fronts_that_grow_at_their_edges_come_in() -> None:
    """A V-neck; near miss: fronts as above, whose edges are upright."""
    found = yoke(neck(), *[AT_ENDS] * 6)
    assert found is not None
    assert found.leans[0] == pytest.approx(found.leans[1])
    assert found.leans[0] > 0
    high = found.levels[-1]
    assert found.corner(0, high)[0] < found.corner(5, high)[0]


@pytest.mark.parametrize(
    "lines", [[neck(), *[PLAIN] * 7], [neck(), MORE], [neck("sc in next ch"), *[PLAIN] * 7]],
    ids=["grows once", "a band", "plain"],
)  # fmt: skip
def test_other_rows_are_none(lines: list[str]) -> None:
    assert yoke(*lines) is None


def test_the_picture_is_as_wide_as_the_back_and_what_lies_at_both_sides() -> None:
    work = worked(rows(neck(), *[MORE] * 7, chain=45))
    box = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
    assert box is not None
    sides = [(BACK + 1) * WIDE + 2 * 8 * WIDE, (SLEEVE + 1) * WIDE + 2 * 8 * WIDE]
    assert [float(part) - 4 for part in box.groups()] == pytest.approx(sides, abs=2)


def test_the_neck_is_as_long_as_its_chain() -> None:
    """44 chains of half a centimetre, not the 52 stitches that the first row makes in them."""
    figure = schematic(worked(rows(neck(), *[MORE] * 7, chain=45)), "cloth")
    assert figure is not None
    assert "about 22 cm (8¾ in) along the neck" in figure.alt
    assert "about 54 cm (21¼ in) along the outer edge" in figure.alt


ROUND = "ch 1, (sc in next 3 sts, 2 sc in next st) x 7, sc in each st across, turn"


@pytest.mark.parametrize(
    ("first", "mm"),
    [
        ("sc in 2nd ch from hook, (2 sc in next ch, sc in next ch) x 10, turn", 21 * WIDE),
        ("sc in 2nd ch from hook and in each ch across, turn", 21 * WIDE),
        ("dc in 4th ch from hook and in each ch across, turn", 20 * WIDE),
    ],
)
def test_rows_begin_at_an_edge_of_the_chains_worked_into(first: str, mm: float) -> None:
    assert foot_mm(subject_from(rows(first, chain=22))) == pytest.approx(mm)


def test_an_arcs_inner_edge_too() -> None:
    """Near miss: a first row without increases is as long as its chain."""
    grown = "sc in 2nd ch from hook, (2 sc in next ch, sc in next ch) x 10, turn"
    even = "sc in 2nd ch from hook and in each ch across, turn"
    for first, chain, words in ((grown, 22, "about 10.5 cm"), (even, 32, "about 15.5 cm")):
        figure = schematic(
            worked(rows(first, PLAIN, ROUND, PLAIN, ROUND, PLAIN, ROUND, chain=chain)), "cloth"
        )
        assert figure is not None
        assert f"{words} " in figure.alt.partition("along the inner edge")[0]
