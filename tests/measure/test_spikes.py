"""Spikes: however long one is, its head lies beside those of its neighbours (common practice, no source)."""

import pytest

from loopleaf.fabric.spikes import depths

from .worked_patterns import measured, rounds, rows, worked

DISC = (
    "ch 1, 6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, 2 sc in next st) x 6, join",
    "ch 1, (sc in next 2 sts, 2 sc in next st) x 6, join",
)
SPIKED = (
    "ch 1, (sc in next st, tr in st 3 rounds below, sc in next st, 2 sc in next st) x 6, join",
    "ch 1, (sc in next st, tr in st 3 rounds below, sc in next st, tr in st 3 rounds below, "
    "2 sc in next st) x 6, join",
)
FLAT_ON_TOP = tuple(line.replace("tr in st 3 rounds below", "tr in next st") for line in SPIKED)


def shape(*lines: str) -> list[str]:
    """The forms of the piece's stretches."""
    return [one.form for one in measured(rounds(*lines)).piece("disc").shape[0]]  # type: ignore[union-attr]


def rises(*lines: str) -> list[float]:
    """How high each round is, in mm."""
    disc = measured(rounds(*lines)).piece("disc")
    assert disc is not None
    return [one.rise_mm for one in disc.known_rounds(0)]


def test_a_coaster_with_long_spikes_lies_flat() -> None:
    assert shape(*DISC, *SPIKED) == ["flat"]
    assert rises(*DISC, *SPIKED) == pytest.approx([5.0] * 6)


def test_tall_stitches_on_the_round_below_make_it_higher() -> None:
    plain, tall = rises(*DISC, *SPIKED), rises(*DISC, *FLAT_ON_TOP)
    assert tall[:4] == plain[:4]
    assert all(one > 1.2 * other for one, other in zip(tall[4:], plain[4:], strict=True))
    assert shape(*DISC, *FLAT_ON_TOP) != ["flat"]


def test_a_round_that_goes_on_further_down_has_its_own_height() -> None:
    """Where no stitch stands on the round below, none is a spike among others."""
    layer = "ch 1, *dc in next st of round 3, sc in next st of round 3; rep from * around, join"
    behind = worked(rounds(*DISC, layer)).pieces[0].rounds[-1].sizes[0]
    assert behind is not None
    assert depths(behind) == {}


def test_a_long_post_stitch_over_a_row_of_single_crochet_is_as_high_as_its_row() -> None:
    plain = "ch 1, sc in each st across, turn"
    first = "sc in 2nd ch from hook and in each ch across, turn"
    cable = "ch 1, (sc in next 4 sts, FPtr around st 2 rows below) x 2, turn"
    ribbed = cable.replace(" st 2 rows below", " next st")
    heights = [
        measured(rows(first, plain, one)).piece("cloth").known_rounds(0)[-1].rise_mm  # type: ignore[union-attr]
        for one in (cable, ribbed)
    ]
    assert heights[0] == pytest.approx(5.0)
    assert heights[1] > 1.2 * heights[0]
