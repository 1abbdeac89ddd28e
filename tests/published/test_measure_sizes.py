"""Gauge, sizes, standing heights and checkpoints against published figures and textbook formulas."""

import math

import pytest

from loopleaf import trade
from loopleaf.measure import flat_growth
from loopleaf.measure.amounts import centimetres, fraction
from loopleaf.measure.shape import RUFFLES_ABOVE, flatness, standing_height_mm, stretches
from loopleaf.measure.size import RoundSize, length_band
from loopleaf.measure.units import Band, mm_to_inches
from tests.measure.by_hand import made, scale
from tests.measure.worked_patterns import HEAD, measured, rounds, rows

SC_ROW = "sc in 2nd ch from hook and in each ch across, turn"
SC = "ch 1, sc in each st across, turn"
AROUND = "ch 1, sc in each st around, join"


def lengths(*mm: float, rise: float = 1.0) -> list[RoundSize]:
    return [
        RoundSize(str(at), n, Band(n, n), rise, at * rise, Band(at * rise, at * rise), 0, 0)
        for at, n in enumerate(mm, start=1)
    ]


@pytest.mark.parametrize(("kind", "printed"), [("half", 12.4), ("double", 16.4)])
def test_heights_of_a_hobbyists_sample(kind: str, printed: float) -> None:
    """One hobbyist's published sample, worsted, 5 mm hook: rows of sc, hdc, dc are 8.6, 12.4, 16.4 mm."""
    assert printed in scale("single", 9.0, 8.6).height_band(kind)


@pytest.mark.parametrize(("kind", "ratio"), [("half", 1.5), ("double", 2.0)])
def test_heights_of_a_rule_page(kind: str, ratio: float) -> None:
    """A page of rules on the web: rows of sc, hdc and dc stand to each other as 1 to 1.5 to 2."""
    assert ratio * 10 in scale("single", 10, 10).height_band(kind)


def test_a_chain_of_a_hundred_and_a_row_of_ninety_six() -> None:
    """Handbook of Wool Knitting and Crochet, 1918, babies' jacket: a chain of 100, the first four left for
    the turn, carries 96 trebles. A chain is as wide as a stitch.
    """
    row = "tr in 5th ch from hook (missed chs count as tr), tr in each ch across"
    head = HEAD.replace("stitch: sc", "stitch: tr").replace("terms: US", "terms: UK")
    head = head.replace("{sc: does not count, hdc: does not count, dc: counts,", "{")
    jacket = measured(rows(row, chain=100), head=head)
    (one,) = jacket.pieces[0].known_rounds(0)
    assert one.stitches == 97  # the four chains left stand for one more
    assert length_band(made(("chain", 96)), scale(width_mm=5)).middle == pytest.approx(
        one.length_mm - 5, rel=1e-6
    )


@pytest.mark.parametrize(
    ("stitches", "over_in", "wide_in", "cast"), [(14, 4, 8, 28), (11, 4, 20, 55), (20, 4, 9, 45)]
)
def test_stitches_are_inches_times_gauge(stitches: int, over_in: int, wide_in: int, cast: int) -> None:
    """The rule of three, as every handbook of the trade has it (textbook arithmetic)."""
    head = HEAD.replace(
        "stitches: 20, rows: 20, over: 10 cm", f"stitches: {stitches}, rows: {stitches}, over: {over_in} in"
    )
    cloth = measured(rows(SC_ROW, SC, chain=cast + 1), head=head)
    assert mm_to_inches(cloth.pieces[0].size[0]["width"].middle) == pytest.approx(wide_in)


@pytest.mark.parametrize(
    ("inch", "cm"), [(28, 71), (30, 76), (36, 91.5), (38, 96.5), (40, 101.5), (42, 106.5), (46, 117)]
)
def test_inches_and_centimetres_of_standard_sizes(inch: float, cm: float) -> None:
    """Craft Yarn Council, women's chest, from memory: printed in inches and in centimetres to the half."""
    assert centimetres(inch * 25.4) == f"{cm:g} cm"
    assert fraction(mm_to_inches(cm * 10), 4) == f"{inch}"


def test_an_oval_is_a_stadium() -> None:
    """A stadium of straight sides a and radius r is 2a + 2πr around, a + 2r long (textbook geometry)."""
    oval = (
        "2 sc in 2nd ch from hook, sc in next 18 chs, 3 sc in last ch, "
        "working along other side of foundation ch, sc in next 18 chs, sc in last ch, join"
    )
    grown = "ch 1, inc x 2, sc in next 18 sts, inc x 3, sc in next 18 sts, inc, join"
    tray = measured(rounds(oval, grown, start="chain 21, both sides"))
    size = tray.pieces[0].size[0]
    straight, radius = 19 * 5, 2 * 5
    assert size["length"].middle == pytest.approx(straight + 2 * radius)
    assert size["width"].middle == pytest.approx(2 * radius)
    around = tray.pieces[0].known_rounds(0)[-1].length_mm
    assert around == pytest.approx(2 * straight + math.tau * radius, rel=0.1)


def test_archimedes_on_the_circle() -> None:
    """A circle is between 3 10/71 and 3 1/7 times its width around (Archimedes, Measurement of a Circle).

    42 stitches of 5 mm are 21 cm around.
    """
    odd = [
        "ch 1, (sc in next {} sts, inc) x 6, join",
        "ch 1, (sc in next {1}, inc, sc in next {1}) x 6, join",
    ]
    grown = [odd[n % 2 == 0].format(n, n // 2) for n in range(1, 6)]  # not stacked, or it is a hexagon
    base = ["ch 1, 6 sc in ring, join", "ch 1, inc x 6, join", *grown]
    (one,) = measured(rounds(*base, *[AROUND] * 3)).checkpoints
    across = one.length_mm[0]
    assert across is not None
    assert 210 / (3 + 1 / 7) < across < 210 / (3 + 10 / 71)


def test_a_checkpoint_on_a_straight_edge() -> None:
    """Girl's jacket, Handbook of 1918: loops of chain 3 over 4 chains each, 12 of them on 52 chains; at the
    hobbyist's stitch of 9 mm 45 of them are 405 mm. Rows are told by the rule of three.
    """
    head = HEAD.replace("stitches: 20, rows: 20, over: 10 cm", "stitches: 10, rows: 10, over: 9 cm")
    lines = [SC_ROW, SC, "ch 1, inc, sc in each st across, turn", SC, SC]
    (one,) = measured(rows(*lines, chain=45), head=head).checkpoints
    assert one.what == "width"
    assert one.length_mm[0] == pytest.approx(405)


@pytest.mark.parametrize(("degrees", "share"), [(30, math.sqrt(3) / 2), (45, math.sqrt(0.5)), (60, 0.5)])
def test_a_cone_stands_by_its_angle(degrees: int, share: float) -> None:
    """A cone of half-angle a grows by sin a of what lies flat and stands cos a of its slant (textbook)."""
    slant = 20
    growth = math.tau * math.sin(math.radians(degrees))
    cone = lengths(*(growth * k for k in range(1, slant + 1)))
    shape = stretches(cone, 0.0, 1.0)
    if degrees < 53:  # steeper than 0.8 of the rule for flat
        assert {one.form for one in shape} == {"cups"}
        assert standing_height_mm(cone, shape, 0.0) == pytest.approx(slant * share)
    else:
        assert {one.form for one in shape} == {"flat"}


def test_three_four_five() -> None:
    """Pythagoras: each round 5 along the cloth and 3 inward stands 4 high."""
    cone = lengths(*(math.tau * (100 - 3 * k) for k in range(1, 6)), rise=5)
    assert standing_height_mm(cone, stretches(cone, math.tau * 100, 1.0), math.tau * 100) == pytest.approx(20)


def test_where_a_ball_begins_to_cup() -> None:
    """On a ball the edge grows by 2π·cos(s/R) along a meridian: 0.8 of the plane's at the angle of the 3-4-5
    triangle, 36.87° (textbook trigonometry).
    """
    radius = 100.0
    ball = lengths(*(math.tau * radius * math.sin(k / radius) for k in range(1, 100)))
    turns = stretches(ball, 0.0, 1.0)
    assert [one.form for one in turns[:2]] == ["flat", "cups"]
    assert int(turns[1].first) == pytest.approx(radius * math.radians(36.87), abs=1)


def test_where_a_hyperbolic_plane_begins_to_ruffle() -> None:
    """A circle of radius s in the hyperbolic plane of radius R is 2πR·sinh(s/R) around, so its edge grows by
    cosh(s/R) times the plane's: 1.25 just where s = R·ln 2 (textbook geometry; cosh ln 2 = 5/4).
    """
    radius = 100.0
    surface = lengths(*(math.tau * radius * math.sinh(k / radius) for k in range(1, 200)))
    turns = stretches(surface, 0.0, 1.0)
    assert [one.form for one in turns] == ["flat", "ruffles"]
    assert int(turns[1].first) == pytest.approx(radius * math.log(2), abs=1)


def test_doubling_every_round_grows_exponentially() -> None:
    """Six, then two in each stitch again and again: 6·2ᵏ after k rounds, which no flat circle holds beyond
    the second (arithmetic: 24 against 6·3, 48 against 6·4).
    """
    found = [6 * 2**k for k in range(6)]
    growth = [flatness(lengths(*found[: k + 1], rise=6 / math.tau), 0.0, 1.0) for k in range(6)]
    ratios = [one.ratio for one in growth if one is not None]
    assert ratios == pytest.approx([2**k / (k + 1) for k in range(6)])
    assert ratios[1] < RUFFLES_ABOVE < ratios[2]


@pytest.mark.parametrize(
    ("stitches", "rows_", "grows"), [(20, 20, 6.28), (14, 10, 8.80), (13, 7, 11.67), (18, 20, 5.65)]
)
def test_growth_is_two_pi_stitches_over_rows(stitches: int, rows_: int, grows: float) -> None:
    """From a gauge over one length h ÷ w is stitches ÷ rows (derived from the circle's circumference)."""
    assert flat_growth(1 / rows_, 1 / stitches) == pytest.approx(grows, abs=0.01)


def test_the_table_of_turning_chains() -> None:
    """Handbook of Wool Knitting and Crochet, 1918 (there double, half, treble, double treble, triple): 1, 2,
    3, 4, 5. A chain for each step of height, so the table's heights rise with them.
    """
    keys = ("single", "half", "double", "treble", "double-treble")
    found = [trade.stitch(key) for key in keys]
    assert [one.turning_chain for one in found] == [1, 2, 3, 4, 5]
    heights = [sum(one.height or (0, 0)) for one in found]
    assert heights == sorted(heights)


@pytest.mark.parametrize(
    ("lines", "rate"),
    [
        ((SC_ROW, *[SC] * 29), "sc in end of each row, turn"),
        (
            (
                "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn",
                *["ch 3 (counts as dc), dc in each st across, turn"] * 14,
            ),
            "2 sc in end of each row, turn",
        ),
    ],
    ids=["sc", "dc"],
)
def test_the_usual_rates_along_row_ends_hardly_need_easing(lines: tuple[str, ...], rate: str) -> None:
    """One single crochet for a row of singles, two for one of doubles (common practice, no source)."""
    band = rows(rate, name="band").replace("chain 11", "{edge: cloth, row ends: true}")
    found = measured(rows(*lines) + band)
    piece = found.piece("band")
    assert piece is not None
    (edging,) = piece.known_rounds(0)
    assert edging.eased
    assert edging.length_mm == pytest.approx(edging.stitches * 5, rel=0.15)
