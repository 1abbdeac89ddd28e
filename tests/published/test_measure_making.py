"""Cords, threading, tails, yarn, time, level, cautions, other yarns against published figures."""

import math
from typing import get_args

import pytest

from loopleaf import trade
from loopleaf.measure import Measured, amounts, needs_followed
from loopleaf.measure.cautions import SMALL_MM
from loopleaf.measure.cords import chains_for, least_cord_mm
from loopleaf.measure.other_yarn import likely_hook, likely_stitches
from loopleaf.measure.tails import drawing_up_tail, sewing_tail
from loopleaf.measure.threading import opening_mm, way
from loopleaf.measure.time import PRACTISED, SEWN_A_MINUTE
from loopleaf.measure.yarn import chain_metres
from tests.alter.patterns import demo
from tests.measure.worked_patterns import HEAD, measured, rounds, rows

CHAIN_ROW = "sc in 2nd ch from hook and in each ch across, turn"
ROW = "ch 1, sc in each st across, turn"
WORSTED = HEAD.replace("stitches: 20, rows: 20, over: 10 cm", "stitches: 10, rows: 10.5, over: 9 cm")
"""The hobbyist's sample, worsted with a 5 mm hook: stitches of 9 mm in rows of 8.6 mm."""


def of(name: str) -> Measured:
    found = demo(name).measured
    assert found is not None
    return found


# ---- cords ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(("made", "left"), [(100, 4), (52, 7), (54, 3)])
def test_chains_reach_as_far_as_the_stitches_on_them(made: int, left: int) -> None:
    """Handbook of Wool Knitting and Crochet, 1918: chains of 100, 52 and 54 whose rows stand on all but the
    first 4, 7 and 3 (babies' jacket 96 trebles; girl's jacket a double in the 8th; crocheted jacket miss 3).
    """
    assert chains_for((made - left) * 5.0, 5.0) + left == made


@pytest.mark.parametrize(("around_cm", "least_cm"), [(20, 40), (34, 54), (40, 60), (60, 90)])
def test_the_least_cord(around_cm: float, least_cm: float) -> None:
    """1.5 × around, and on a small bag around + about 20 cm (common practice, no source)."""
    assert least_cord_mm(around_cm * 10) == pytest.approx(least_cm * 10)


def test_a_chain_takes_less_than_a_finger_knotted_cord() -> None:
    """Handbook of 1918: for a finger-knotted cord begin with yarn six times its length. One hobbyist's
    sample: 5.1 times for a plain chain.
    """
    assert 5 <= chain_metres(1000) <= 6


# ---- threading -----------------------------------------------------------------------------------


@pytest.mark.parametrize("posts", range(3, 40))
def test_over_one_under_one_alternates_on_an_odd_number(posts: int) -> None:
    """Basketry's rule for a single weaver (randing), from memory: over an odd number of stakes the second
    round lies the other way, over an even number it repeats the first.
    """
    assert way(posts, 1, 1, 1).same_face == (posts % 2 == 0)


@pytest.mark.parametrize(("posts", "passes"), [(26, 26), (48, 48), (24, 24)])
def test_a_mesh_of_eyelets(posts: int, passes: int) -> None:
    """Handbook of 1918, crocheted jacket: a yoke row of chain 1, miss 1 with 26 doubles for the ribbon. Gaps
    even and both ends on one face is common practice, no source.
    """
    found = way(posts, 1, 1, 1)
    assert len(found.passes) == passes
    assert found.same_face


def test_a_bag_opens_as_far_as_its_cord_lets_it() -> None:
    """Around + 20 cm opens it all the way (common practice, no source); no cord opens it further."""
    assert [opening_mm(cord, 300) for cord in (200, 350, 500, 900)] == [0, 150, 300, 300]


# ---- tails ---------------------------------------------------------------------------------------


@pytest.mark.parametrize("thick", [0.75, 1.0, 1.25])
def test_a_tail_oversews_its_edge(thick: float) -> None:
    """Each oversewn stitch goes slanting to the next hole behind and comes straight over the edge before:
    √(p² + t²) + t for a pitch p and a cloth t thick (Pythagoras). Cloth is about as thick as its stitches are
    wide (from memory), and the usual 2 to 3 times hold it.
    """
    assert math.hypot(1, thick) + thick in sewing_tail(1.0)


def test_a_running_thread_is_as_long_as_its_edge() -> None:
    """Straight through the tops: the edge, and 20 cm to hold and fasten (common practice, no source)."""
    assert drawing_up_tail(90) - 90 == 200
    assert drawing_up_tail(0) == 200


# ---- yarn ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stitches", "in_rows", "low_yd", "high_yd"),
    [
        (22, 24, 40, 60),  # a dishcloth of 8 in
        (28, 30, 60, 100),  # one of 10 in
    ],
)
def test_a_dishcloth(stitches: int, in_rows: int, low_yd: float, high_yd: float) -> None:
    """A worsted dishcloth of 8 in takes about 40 to 60 yards, one of 10 in 60 to 100 (common practice, no
    source).
    """
    cloth = measured(rows(CHAIN_ROW, *[ROW] * (in_rows - 1), chain=stitches + 1), head=WORSTED)
    need = cloth.yarn[0][0].metres
    assert need is not None
    assert need.low < high_yd * 0.9144
    assert need.high > low_yd * 0.9144


def test_an_adults_hat() -> None:
    """A hat for an adult in worsted takes 100 to 200 yards (common practice, no source)."""
    adult = of("curlew-cap").yarn[2][0]
    assert adult.model_metres is not None
    assert 100 * 0.9144 < adult.model_metres.middle < 200 * 0.9144


def test_twice_the_rows_take_twice_the_yarn() -> None:
    """The rule of three (textbook arithmetic): what was weighed follows the stitches, but for the ends."""
    head = HEAD.replace("A: {weight: 4,", "A: {weight: 4, weighed: 20 g,")
    once, twice = (measured(rows(CHAIN_ROW, *[ROW] * n, chain=41), head=head) for n in (39, 79))
    need = needs_followed(once, twice)[0][0].grams
    assert need is not None
    assert 40 in need
    same = needs_followed(once, once)[0][0].grams
    assert same is not None
    assert 20 in same


# ---- time ----------------------------------------------------------------------------------------


def test_a_fast_makers_three_seconds() -> None:
    """A fast maker's 3 seconds a stitch (a forum on the web) are 20 a minute: within the practised band."""
    assert 60 / 3 in PRACTISED


def test_a_granny_square() -> None:
    """Four rounds of a granny square take a practised maker 10 to 30 minutes (common practice, no source)."""
    first = "ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join"
    lines = [first]
    for sides in range(1, 4):
        start = "sl st in next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, "
        along = "ch 1, 3 dc in next ch-1 sp, " * (sides - 1) + "ch 1"
        lines.append(
            f"{start}{along}, *(3 dc, ch 2, 3 dc) in next ch-2 sp, {along}; rep from * 2 more times, join"
        )
    took = measured(rounds(*lines)).hours[0].practised
    assert took.low * 60 < 30
    assert took.high * 60 > 10


def test_sewing_is_slower_than_crochet() -> None:
    """Three to four sewn stitches a minute (from memory) against fifteen and more."""
    assert SEWN_A_MINUTE.high < PRACTISED.low


# ---- level and techniques ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("level", "line"),
    [
        ("basic", "ch 1, sc in each st across, turn"),
        ("basic", "ch 1, inc, sc in next 6 sts, dec, inc, turn"),
        (
            "easy",
            "ch 1, sc in next st, *ch 1, sk 1, sc in next st; rep from * to last st, sc in last st, turn",
        ),
        ("intermediate", "ch 1, (sc in next st, FPdc around next st) x 5, turn"),
    ],
)
def test_the_four_project_levels(level: str, line: str) -> None:
    """Craft Yarn Council, as quoted on the web: basic stitches and simple increases and decreases are basic,
    simple stitch patterns easy, involved ones (here posts: the trade's own tables, chosen) intermediate.
    """
    assert measured(rows(CHAIN_ROW, "ch 1, sc in each st across, turn", line)).level.level == level


def test_several_techniques_at_once_are_complex() -> None:
    """Craft Yarn Council, as quoted on the web: complex projects have several such techniques at once."""
    line = "ch 1, FPdc around next st, 5-dc bobble in next st, sc in st 2 rows below, sc in next 7 sts, turn"
    three = [CHAIN_ROW, ROW, "ch 1, 5-dc bobble in next st, FPdc around next st, sc in next 8 sts, turn"]
    assert measured(rows(*three)).level.level == "intermediate"
    found = measured(rows(CHAIN_ROW, ROW, line)).level
    assert [row.key for row in trade.levels()] == list(get_args(trade.LevelKey))
    assert found.level == "complex"


# ---- cautions ------------------------------------------------------------------------------------


def test_what_counts_as_a_small_part() -> None:
    """16 CFR 1501.4: a cylinder 1 to 2.25 in deep; a test laboratory's page gives 57.1 mm."""
    assert pytest.approx(2.25 * 25.4, abs=0.06) == SMALL_MM
    for across_mm, small in ((40, True), (80, False)):
        gauge = HEAD.replace(
            "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "gauge: {piece: moon, across: %s mm}"
        )
        found = measured(
            rows(CHAIN_ROW) + rounds("6 sc in ring, join", "ch 1, inc x 6, join", name="moon"),
            "finishing:\n  - sew: {piece: moon, to: cloth}\n",
            gauge % across_mm,
        )
        assert ("small-parts" in {one.caution.key for one in found.cautions}) == small


@pytest.mark.parametrize(
    ("caution", "standards"),
    [
        ("cords", {"EN 71-1:2005+A8", "16 CFR 1120, of 2011 (ASTM F1816-97)", "EN 14682:2014"}),
        ("small-parts", {"16 CFR 1501.4, of 1979"}),
        ("safety-eyes", {"EN 71-1:2014+A1:2018"}),
    ],
)
def test_cautions_name_their_standards(caution: str, standards: set[str]) -> None:
    """The regulators' and laboratories' pages that speak of cords, small parts and soft toys."""
    row = next(row for row in trade.cautions() if row.key == caution)
    assert standards <= {one.name for one in row.standards}


# ---- other yarns, amounts ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("weight", "stitches", "hook"), [(1, 26.5, (2.25, 3.5)), (2, 18, (3.5, 4.5)), (4, 12.5, (5.5, 6.5))]
)
def test_the_likely_swatch(weight: int, stitches: float, hook: tuple[float, float]) -> None:
    """Craft Yarn Council, as reprinted: 21 to 32, 16 to 20, 11 to 14 sc in 4 in; hooks, 6 mm for weight 4."""
    assert likely_stitches(weight) == stitches
    assert hook[0] <= likely_hook(6.0, 4, weight) <= hook[1]


@pytest.mark.parametrize(("metres", "yards"), [(85, 93), (115, 126), (210, 230), (100, 110)])
def test_ball_bands(metres: int, yards: int) -> None:
    """As on ball bands, metres and yards rounded up (from memory; the yard of 1959 is 0.9144 m)."""
    assert amounts.metres(metres) == f"{metres} m ({yards} yd)"


def test_four_inches_and_ten_centimetres() -> None:
    """Gauge swatches are printed “4 in (10 cm)” (Craft Yarn Council, as reprinted): 101.6 and 100 mm."""
    assert amounts.centimetres(101.6) == "10 cm"
    assert amounts.inches(100) == "4 in"
