"""The schematic of rows that lean to one side, or stand in parts, has their outline."""

import re

import pytest

from loopleaf.draw.schematic import schematic
from loopleaf.draw.uneven_outline import uneven_outline
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


@pytest.mark.parametrize(("lines", "narrower"), [(LESS * 4, 8), (MORE * 4, -8)], ids=["less", "more"])
def test_one_slanting_side(lines: tuple[str, ...], narrower: int) -> None:
    """A stitch a row at the left end alone: the right side is upright."""
    found = uneven_outline(subject_from(rows(FIRST, *lines, chain=13)))
    assert found is not None
    assert found.last[0] - found.first[0] == pytest.approx(narrower * WIDE, abs=WIDE)
    assert found.last[1] - found.first[1] == pytest.approx(0.0, abs=WIDE)


def test_two_parts_with_a_gap_between_them() -> None:
    """Six stitches, eight free, six: the tops step down to the second row and up again."""
    found = uneven_outline(subject_from(rows(FIRST, *PARTS, chain=21)))
    assert found is not None
    across = [x for x, _ in found.points]
    assert max(across) - min(across) == pytest.approx(20 * WIDE)
    assert found.last[1] - found.last[0] == pytest.approx(6 * WIDE)
    low = [x for x, y in found.points if 0 < y < found.top - WIDE]
    assert (min(low), max(low)) == pytest.approx((-4 * WIDE, 4 * WIDE), abs=0.1)


@pytest.mark.parametrize("lines", [[PLAIN] * 4, [BOTH] * 4], ids=["straight", "at both ends"])
def test_even_rows_have_none(lines: list[str]) -> None:
    assert uneven_outline(subject_from(rows(FIRST, *lines, chain=21))) is None


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
