"""Shapes against published figures and textbook formulas."""

import math

import pytest

from loopleaf import trade
from loopleaf.measure import flat_growth
from loopleaf.measure.shape import ball_stitches, flatness, polygon_growth
from loopleaf.measure.size import RoundSize
from loopleaf.measure.units import Band
from tests.measure.worked_patterns import HEAD, measured
from tests.measure.worked_patterns import rounds as rounds_of
from tests.measure.worked_patterns import rows as rows_of


def worked_rounds(*lines: str, start: str) -> list[RoundSize]:
    return measured(rounds_of(*lines, start=start)).pieces[0].known_rounds(0)


def rounds(*counts: int, height: float) -> list[RoundSize]:
    return [
        RoundSize(str(at), n, Band(n, n), height, at * height, Band(at * height, at * height), n, 0)
        for at, n in enumerate(counts, start=1)
    ]


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [("single", 5.0, 6.6), ("half", 8.2, 9.4), ("double", 11.3, 12.6), ("treble", 15.7, 18.2)],
)
def test_flat_growth_of_each_stitch(key: str, low: float, high: float) -> None:
    """2π × height ÷ width over the common ranges of heights (ranges from memory.

    The formula is the circle's).
    """
    height = trade.stitch(key).height
    assert height is not None
    assert flat_growth(height[0], 1) == pytest.approx(low, abs=0.05)
    assert flat_growth(height[1], 1) == pytest.approx(high, abs=0.05)


@pytest.mark.parametrize(("key", "first"), [("single", 6), ("half", 8), ("double", 12), ("treble", 16)])
def test_usual_first_rounds_lie_flat(key: str, first: int) -> None:
    """Usual counts of round 1, common practice, no source: 6, 8 to 10, 12, 16 to 18."""
    height = trade.stitch(key).height or (1, 1)
    found = flatness(rounds(first, 2 * first, 3 * first, height=sum(height) / 2), 0.0, 1.0)
    assert found is not None
    assert found.form == "flat"


def test_seven_a_round_in_uk_double_crochet_is_flat() -> None:
    """Lambert, My Crochet Sampler, 1847.

    The star bottom grows 7 a round from 7 and lies flat (14, 21, 28 …).
    """
    found = flatness(rounds(7, 14, 21, 28, 35, height=0.95), 0.0, 1.0)
    assert found is not None
    assert found.grows == 7
    assert found.form == "flat"


def test_the_star_bottom_has_seven_stripes() -> None:
    """Lambert, My Crochet Sampler, 1847: “every other stitch is to be made a seam … two stitches in the same
    place”, always over the last one; 7 more a round, and “seven raised stripes”.
    """
    lines = [
        "ch 1, sc in each ch around, join",
        *(f"ch 1, *sc in next {n} sts, 2 sc in next st; rep from * around, join" for n in range(1, 6)),
    ]
    piece = worked_rounds(*lines, start="chain 14, joined")
    assert [one.stitches for one in piece] == [14, 21, 28, 35, 42, 49]
    assert piece[-1].stacked == 7


def test_polygons() -> None:
    """Perimeter of a regular polygon over its inradius.

    2c·tan(π/c); a square 8, a hexagon 4√3 (textbook geometry).
    """
    assert polygon_growth(4, 1, 1) == pytest.approx(8)
    assert polygon_growth(6, 1, 1) == pytest.approx(4 * math.sqrt(3))


def test_a_ball_of_24_around() -> None:
    """The sphere's own formula with h = w and 24 at the equator.

    Circumference of latitude at (k − ½)h along a meridian.
    """
    stitches = [round(ball_stitches(k, 12 / math.pi, 1, 1)) for k in range(1, 13)]
    assert stitches == [3, 9, 15, 19, 22, 24, 24, 22, 19, 15, 9, 3]


def test_a_balls_stitches_cover_its_surface() -> None:
    """The surface of a ball is 4πR² (Archimedes): with h = w = 1 its stitches number just that."""
    radius = 40 / math.pi
    total = sum(ball_stitches(k, radius, 1, 1) for k in range(1, 41))
    assert total == pytest.approx(4 * math.pi * radius**2, rel=0.001)


def fanned(*lines: str, head: str = HEAD) -> dict[str, float]:
    """What rows on a chain of 2 or 4 measure, in mm."""
    chain = 4 if "dc" in lines[0] else 2
    piece = measured(rows_of(*lines, chain=chain), head=head).pieces[0]
    return {what: band.middle for what, band in piece.size[0].items()}


def test_a_right_isosceles_triangle() -> None:
    """Twice as wide as deep, and its two equal sides √2 of its depth each (textbook geometry). Stitches as
    wide as high, one more a row at each edge and at each side of the spine: four times 45°.
    """
    grown = "ch 1, 2 sc in first st, {0} sc, 3 sc in next st, {0} sc, 2 sc in last st, turn"
    found = fanned("5 sc in 2nd ch from hook, turn", *(grown.format(2 * n + 1) for n in range(20)))
    assert found["width"] == pytest.approx(2 * found["length"], rel=0.01)
    assert found["length"] == pytest.approx(21 * 5 * math.sqrt(2), rel=0.01)
    assert found["around"] == pytest.approx(2 * math.sqrt(2) * found["length"], rel=0.05)


def test_half_a_disc() -> None:
    """Archimedes, Measurement of a Circle, of half of one: π·r along its edge, 2·r wide, r deep; by chords
    (six here) a little less than the circle that goes through their ends.
    """
    head = HEAD.replace("stitch: sc, stitches: 20, rows: 20", "stitch: dc, stitches: 19, rows: 10")
    grown = [f"ch 3 (does not count), (dc in next {n} sts, 2 dc in next st) x 6, turn" for n in range(1, 15)]
    first = (
        "6 dc in 4th ch from hook (skipped chs do not count), turn",
        "ch 3 (does not count), 2 dc in each st across, turn",
    )
    found = fanned(*first, *grown, head=head)
    assert found["width"] == pytest.approx(2 * 160, rel=0.05)
    assert found["length"] == pytest.approx(160, rel=0.05)
    assert found["around"] == pytest.approx(math.pi * 160, rel=0.05)
