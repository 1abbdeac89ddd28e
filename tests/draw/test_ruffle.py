"""Rows far fuller than those beside them: they spread as far as they can and stand in folds."""

import pytest

from loopleaf.draw.from_middle import sheet_of
from loopleaf.draw.ruffle import Ruffle, gathered_in, ruffled
from loopleaf.draw.subject import Subject
from tests.measure.worked_patterns import rows

from .pieces import subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"


def cloth(*lines: str, chain: int = 41) -> Subject:
    return subject_from(rows(*lines, chain=chain))


def drawn_in(piece: Subject) -> tuple[Subject, Ruffle] | None:
    return gathered_in(piece, sheet_of(piece))


def test_a_cloth_drawn_together_in_one_row_narrows_towards_it() -> None:
    """Half as wide at once, it can't lie flat: it widens by a row's height at either end, row by row."""
    piece = cloth(FIRST, PLAIN, PLAIN, "ch 1, sc2tog across, turn", PLAIN)
    found = drawn_in(piece)
    assert found is not None
    eased, lay = found
    wide = [one.length_mm for one in eased.sizes]
    assert wide == pytest.approx([130.0, 120.0, 110.0, 100.0, 100.0])
    assert [one.length_mm for one in piece.sizes] == pytest.approx([200.0, 200.0, 200.0, 100.0, 100.0])
    level = {round(lay.point(100.0, along / 20, 15.0)[1], 3) for along in range(21)}
    assert level == {15.0}, "where it is drawn together no fold is left"
    below = {round(lay.point(120.0, along / 20, 8.0)[1], 3) for along in range(21)}
    assert max(below) - min(below) > 1.0


@pytest.mark.parametrize(
    "lines",
    [
        (FIRST, PLAIN, PLAIN, PLAIN),
        (FIRST, PLAIN, "ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn", PLAIN),
        (FIRST, "ch 1, (sc in next 2 sts, sc2tog) x 10, turn", PLAIN),
    ],
)
def test_a_cloth_that_narrows_as_it_can_lie_is_left_as_it_is(lines: tuple[str, ...]) -> None:
    assert drawn_in(cloth(*lines)) is None


def test_a_row_twice_as_full_as_the_one_below_is_a_ruffle_and_not_drawn_in() -> None:
    piece = cloth(FIRST, PLAIN, "ch 1, 2 sc in each st across, turn", PLAIN, chain=21)
    assert ruffled(piece, sheet_of(piece)) is not None
    assert drawn_in(piece) is None
