"""Work in the round is no wider than its cloth is long from its middle."""

import math

import pytest

from loopleaf.measure.reach import reaches, spreads_flat

from .test_shape import rounds as sizes
from .worked_patterns import measured, rounds

DOILY = (
    "ch 3 (counts as dc), 15 dc in ring, join",
    "ch 4 (counts as dc, ch 1), (dc in next st, ch 1) x 15, join to 3rd ch of ch-4",
    "ch 1, sc in same st, ch 3, (sc in next dc, ch 3) x 15, join",
    "sl st in next ch-3 sp, ch 1, (sc in next ch-3 sp, ch 4) x 16, join",
)


def test_a_waving_edge_lies_as_far_out_as_its_cloth_is_long() -> None:
    """A circle of radius r is 2πr around, and no point of it farther off (textbook geometry)."""
    ruffled = sizes(6, 12, 24, 48, 96)
    assert reaches(ruffled, 0.0)[:2] == pytest.approx([6 / math.tau, 12 / math.tau])
    assert reaches(ruffled, 0.0)[2:] == pytest.approx([12 / math.tau + n for n in (1, 2, 3)])


def test_a_cone_reaches_its_slant_times_the_sine_of_its_angle() -> None:
    """Of half-angle 30° each round lies half of the slant from the axis (textbook geometry)."""
    cone = sizes(3, 6, 9, 12, width=math.tau / 6)
    assert reaches(cone, 0.0) == pytest.approx([0.5, 1.0, 1.5, 2.0])


def test_from_a_ring_or_an_edge() -> None:
    """A ring of 12 is 12 ÷ 2π out already; on a chain nothing says how far out the first round lies."""
    assert reaches(sizes(40), 12.0) == pytest.approx([12 / math.tau + 1])
    assert reaches(sizes(40, 40), None) == pytest.approx([40 / math.tau] * 2)


def test_what_draws_in_at_first_spreads_out_with_its_edge() -> None:
    assert spreads_flat(sizes(6, 12, 16, 30), 0.0)
    assert not spreads_flat(sizes(6, 12, 16, 24), 0.0)  # its edge is short for its cloth: a lid
    assert not spreads_flat(sizes(6, 12, 12, 12, 40), 0.0)  # a vessel with a waving rim
    assert not spreads_flat(sizes(6, 12, 30), None)


@pytest.mark.parametrize("meant", ["", "lies flat: 1", "lies flat: 1-2", "lies flat: 1-4"])
def test_a_doily_of_arches_is_as_wide_as_its_cloth_whatever_is_said_of_it(meant: str) -> None:
    """Its cloth from the ring to the edge twice, and the ring of 6 chains of 5 mm."""
    piece = measured(rounds(*DOILY, start="chain 6, joined", fields=meant)).pieces[0]
    across_mm = 2 * (piece.known_rounds(0)[-1].height_mm + 6 * 5 / math.tau)
    assert piece.size[0]["across"].middle == pytest.approx(across_mm)
    assert piece.across_mm[0][-1] == pytest.approx(across_mm)
    assert "height" not in piece.size[0]


def test_a_vessel_with_a_waving_rim_stands_and_is_as_wide_as_its_rim_can_lie() -> None:
    """12 stitches of 5 mm around, four rounds high; the rim of 48 lies one round farther out at most."""
    even = "ch 1, sc in each st around, join"
    lines = ["ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join", *[even] * 4]
    rim = ["ch 1, 2 sc in each st around, join", "ch 1, 2 sc in each st around, join"]
    piece = measured(rounds(*lines, *rim)).pieces[0]
    assert piece.across_mm[0][5] == pytest.approx(12 * 5 / math.pi)
    assert piece.across_mm[0][-1] == pytest.approx(12 * 5 / math.pi + 2 * 10)
    assert "height" in piece.size[0]
