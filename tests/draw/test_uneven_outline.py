"""The schematic of rows that lean to one side, or stand in parts, has their outline."""

import re
from collections.abc import Sequence

import pytest

from loopleaf.draw.laid_row import LaidRow
from loopleaf.draw.schematic import schematic
from loopleaf.draw.uneven_figure import evenly_not
from loopleaf.draw.uneven_outline import Outline, uneven_outline
from tests.measure.worked_patterns import worked

from .pieces import rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
LESS = ("ch 1, sc2tog, sc in each st across, turn", "ch 1, sc in each st to last 2 sts, sc2tog, turn")
MORE = (
    "ch 1, 2 sc in first st, sc in each st across, turn",
    "ch 1, sc in each st to last st, 2 sc in last st, turn",
)
BOTH = "ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn"
PARTS = (
    PLAIN,
    "ch 1, sc in next 6 sts, turn",
    "ch 1, sc in each st across, fasten off",
    "skip next 8 sts of row 2, join A in next st, ch 1, sc in same st and in next 5 sts, turn",
    PLAIN,
)
WIDE = 5.0


def outline(*lines: str, chain: int = 13) -> Outline:
    """Of a piece whose rows don't all go from edge to edge."""
    found = evenly_not(subject_from(rows(FIRST, *lines, chain=chain)))
    assert found is not None
    return uneven_outline(found)


@pytest.mark.parametrize(("lines", "narrower"), [(LESS * 4, 8), (MORE * 4, -8)], ids=["less", "more"])
def test_one_slanting_side(lines: tuple[str, ...], narrower: int) -> None:
    """A stitch a row at the left end alone: the right side is upright."""
    found = outline(*lines)
    (left, _), (right, _) = found.top
    assert left - found.first[0] == pytest.approx(narrower * WIDE, abs=0.01)
    assert right == pytest.approx(found.first[1], abs=0.01)


def turns(points: list[tuple[float, float]]) -> int:
    """How many corners a line has, where it bends by more than a twentieth."""
    bent = 0
    for (x0, y0), (x1, y1), (x2, y2) in zip(points, points[1:], points[2:], strict=False):
        long = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 * ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
        bent += long > 0 and abs((x1 - x0) * (y2 - y1) - (x2 - x1) * (y1 - y0)) > 0.05 * long
    return bent


SECOND = (PLAIN, MORE[1])
"""A stitch more in every other row, at one edge."""


@pytest.mark.parametrize(
    "lines", [LESS * 4, MORE * 4, SECOND * 5], ids=["less", "more", "in every other row"]
)
def test_both_sides_are_straight_from_corner_to_corner(lines: tuple[str, ...]) -> None:
    """No stub at the first row, no kink, no stairs: four corners."""
    points = [*outline(*lines).points]
    assert turns([*points, *points[:2]]) == 4


def test_a_side_that_begins_to_slant_halfway_bends_there() -> None:
    """Upright as far as the plain rows go, then a slope; between them a corner, cut within a row."""
    points = [*outline(*[PLAIN] * 6, *MORE * 4).points]
    assert turns([*points, *points[:2]]) in (5, 6)
    left = [x for x, y in points if y <= 6 * WIDE and x < 0]
    assert max(left) - min(left) < 0.6 * WIDE


def test_two_parts_with_a_gap_between_them() -> None:
    """Six stitches, eight free, six: the tops step down to the second row and up again."""
    found = outline(*PARTS, chain=21)
    across = [x for x, _ in found.points]
    assert max(across) - min(across) == pytest.approx(20 * WIDE)
    (left, top), (right, _) = found.top
    assert right - left == pytest.approx(6 * WIDE)
    low = [x for x, y in found.points if 0 < y < top - WIDE]
    assert (min(low), max(low)) == pytest.approx((-4 * WIDE, 4 * WIDE), abs=0.1)


def test_what_stands_out_over_nothing_has_an_edge_below() -> None:
    """Five stitches on a chain beyond the edge from row 4 on."""
    more = "ch 6, sc in 2nd ch from hook and in next 4 chs, sc in each st across, turn"
    found = outline(PLAIN, PLAIN, more, PLAIN, PLAIN, chain=11)
    under = {x: y for x, y in found.points if y == pytest.approx(3 * WIDE)}
    assert max(under) - min(under) == pytest.approx(5 * WIDE)


NET = (
    "sc in 2nd ch from hook, *ch 5, sk 3 chs, sc in next ch; rep from * across, turn",
    "ch 5 (counts as dc, ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, "
    "dc in last sc, turn",
)


def test_a_net_is_even() -> None:
    """Its arches stand beside each other; whatever lies at its ends is no stitch that a row leaves."""
    assert evenly_not(subject_from(rows(*NET, chain=30))) is None


@pytest.mark.parametrize("lines", [[PLAIN] * 4, [BOTH] * 4], ids=["straight", "at both ends"])
def test_even_rows_have_none(lines: list[str]) -> None:
    found: Sequence[LaidRow] | None = evenly_not(subject_from(rows(FIRST, *lines, chain=21)))
    assert found is None


def drawn(*lines: str) -> list[float]:
    """Across, the corners of what a schematic draws first, which is the outline."""
    figure = schematic(worked(rows(FIRST, *lines, chain=13)), "cloth")
    assert figure is not None
    way = re.search(r' d="([^"]+)"', figure.svg)
    assert way is not None
    return [float(x) for x in re.findall(r"[ML](-?[\d.]+)", way[1])]


def test_the_schematic_leans_as_the_cloth_does() -> None:
    """Its right side is one upright line; that of a piece narrowed at both ends isn't."""
    for lines, upright in ((LESS * 4, True), ([BOTH] * 4, False)):
        xs = drawn(*lines)
        assert (sum(x > max(xs) - 0.1 for x in xs) > 4) == upright


STEPS = [f"ch 1, sc in next {more} sts, leave last 5 sts unworked, turn" for more in (15, 10, 5)]


def wedge(many: int) -> list[str]:
    """Wedges of three short rows each, one after the other, on 20 stitches."""
    lines = [FIRST]
    for at in range(many):
        over = ", ".join(f"sc in next 5 unworked sts of row {8 * at + row}" for row in (6, 4, 2))
        lines += [PLAIN, *(line for step in STEPS for line in (step, PLAIN))]
        lines.append(f"ch 1, sc in each st across, {over}, turn")
    return lines


def test_a_wedge_has_the_height_of_both_its_edges_and_the_length_of_its_slope() -> None:
    """Nine rows and three of half a centimetre; its last row is as long as the first, though it slopes."""
    figure = schematic(worked(rows(*wedge(1), chain=21)), "cloth")
    assert figure is not None
    assert "about 10 cm (4 in) wide at the first row; about 10 cm (4 in) along the last" in figure.alt
    assert "about 4.5 cm (1¾ in) from first row to last; about 15 mm (⅝ in) at the lower edge" in figure.alt


def test_rows_that_reach_both_edges_have_no_lower_one() -> None:
    for lines in (LESS * 4, MORE * 4, [PLAIN] * 4):
        figure = schematic(worked(rows(FIRST, *lines, chain=13)), "cloth")
        assert figure is not None
        assert "lower" not in figure.alt


def test_wedges_one_after_the_other_are_a_ring() -> None:
    """33 rows along the outer edge, 9 along the inner one, 20 stitches between them."""
    figure = schematic(worked(rows(*wedge(4), chain=21)), "cloth")
    assert figure is not None
    assert "about 4.5 cm (1¾ in) along the inner edge; about 16.5 cm (6½ in) along the outer" in figure.alt
    assert "about 10 cm (4 in) from the one to the other" in figure.alt
