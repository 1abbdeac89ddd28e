"""Rows worked from a point: how far from tip to tip, and how deep, by the angles of their increases."""

import math
from textwrap import dedent

import pytest

from loopleaf.alter import fit_around
from loopleaf.draw import schematic
from loopleaf.measure import PieceMeasure
from loopleaf.measure.finished import What
from loopleaf.publish.json_report import pattern_object
from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.measure_report import measure_text
from loopleaf.publish.settings import Settings
from loopleaf.review import Checked, check
from tests.review.frame import framed

from .worked_patterns import HEAD, measured

EVEN = "ch 1, sc in each st across, turn"
SHAWL = """\
shawl:
  yarn: A
  worked: rows
  start: chain 4
  rows:
    - {row: 1, work: "(2 dc, ch 2, 3 dc) in 4th ch from hook (skipped chs count as dc), turn"}
    - rows: 2-20
      work: >-
        ch 3 (counts as dc), dc in first st, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2
        sp, dc in each st to last st, 2 dc in last st, turn
"""
"""Six stitches more a row: one at each edge, two on either side of the spine."""


def dc_gauge(stitches: int, rows: int) -> str:
    return HEAD.replace(
        "stitch: sc, stitches: 20, rows: 20", f"stitch: dc, stitches: {stitches}, rows: {rows}"
    )


def piece(pieces: str, head: str = HEAD) -> PieceMeasure:
    return measured(pieces, head=head).pieces[0]


def middle(one: PieceMeasure, what: What) -> float:
    return one.size[0][what].middle


def in_rows(*lines: str, start: str = "chain 2") -> str:
    rows = "\n".join(f'    - {{row: {at}, work: "{line}"}}' for at, line in enumerate(lines, start=1))
    return f"cloth:\n  yarn: A\n  worked: rows\n  start: {start}\n  rows:\n{rows}\n"


def test_a_shawl_with_a_spine() -> None:
    """14 stitches and 8 rows of dc over 10 cm: 7.14 mm by 12.5 mm. A stitch a row at an edge leans it by
    atan(7.14 ÷ 12.5), 29.7°; two beside the spine by atan(14.29 ÷ 12.5), 48.8°. Twenty rows are 250 mm high:
    each arm of the top edge is 250 ÷ cos 29.7° long, the spine 250 ÷ cos 48.8°.
    """
    one = piece(SHAWL, dc_gauge(14, 8))
    edge, spine = math.atan(1 / 1.75), math.atan(2 / 1.75)
    tip_to_tip = 2 * 250 / math.cos(edge) * math.sin(edge + spine)
    assert middle(one, "width") == pytest.approx(tip_to_tip, rel=0.02)
    assert middle(one, "length") == pytest.approx(250 / math.cos(spine), rel=0.02)
    assert one.from_a_point
    assert one.rounds[0][-1] is not None
    assert one.rounds[0][-1].length_mm == pytest.approx(857 + 14.3, rel=0.01)  # its last row stays as long


def test_from_tip_to_tip_lies_within_its_band() -> None:
    one = piece(SHAWL, dc_gauge(14, 8))
    size = one.size[0]
    assert 0.03 < size["width"].off < 0.2
    assert 0.03 < size["length"].off < 0.2


def test_a_semicircle() -> None:
    """Six stitches more a row of dc, each where the last one stands; 19 stitches and 10 rows over 10 cm:
    5.26 by 10 mm, so 180.9° by 6 × 5.26 ÷ 10. Ten rows: 20 cm wide, 10 cm deep, the last row 31.6 cm long.
    """
    rows = ["6 dc in 4th ch from hook (skipped chs do not count), turn"]
    rows += [
        f"ch 3 (does not count), (dc in next {n} sts, 2 dc in next st) x 6, turn"
        if n
        else "ch 3 (does not count), 2 dc in each st across, turn"
        for n in range(9)
    ]
    one = piece(in_rows(*rows, start="chain 4"), dc_gauge(19, 10))
    assert middle(one, "width") == pytest.approx(200, rel=0.05)
    assert middle(one, "length") == pytest.approx(100, rel=0.05)
    assert middle(one, "around") == pytest.approx(100 * math.pi, rel=0.05)


def test_a_triangle_from_its_lower_point_has_straight_rows() -> None:
    """Near miss: grown at both ends, every row is straight, so its width is its last row."""
    rows = ["3 sc in 2nd ch from hook, turn"]
    rows += ["ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"] * 12
    one = piece(in_rows(*rows))
    assert not one.from_a_point
    assert middle(one, "width") == pytest.approx(27 * 5)
    assert middle(one, "length") == pytest.approx(13 * 5)


def test_a_triangle_grown_at_one_end_has_straight_rows() -> None:
    rows = ["2 sc in 2nd ch from hook, turn"]
    rows += [
        "ch 1, sc in each st to last st, 2 sc in last st, turn",
        "ch 1, 2 sc in first st, sc in each st across, turn",
    ] * 6
    one = piece(in_rows(*rows))
    assert not one.from_a_point
    assert middle(one, "width") == pytest.approx(14 * 5)


def test_a_yoke_from_the_neck_isnt_worked_from_a_point() -> None:
    """Near miss: grown at four places, but from a neck's whole length; how it lies, the angles don't tell."""
    rows = ["sc in 2nd ch from hook and in each ch across, turn"]
    rows += [
        f"ch 1, sc in next {n + 4} sts, (3 sc in next st, sc in next {2 * n + 9} sts) x 3, 3 sc in next st, "
        f"sc in next {n + 4} sts, turn"
        for n in range(6)
    ]
    one = piece(in_rows(*rows, start=f"chain {4 * 2 + 4 + 3 * 9 + 1}"))
    assert not one.from_a_point


def test_a_square_from_its_corner_is_measured_by_its_sides() -> None:
    """Single crochet as wide as high, two more a row in its middle: both edges are straight up, the rows
    bend by a right angle, and a square grows: each side as long as the work is high, 10 rows of 5 mm.
    """
    rows = ["3 sc in 2nd ch from hook, turn"]
    rows += [f"ch 1, sc in next {n} sts, 3 sc in next st, sc in next {n} sts, turn" for n in range(1, 10)]
    one = piece(in_rows(*rows))
    assert one.from_a_point
    assert middle(one, "width") == pytest.approx(50, rel=0.08)
    assert middle(one, "length") == pytest.approx(50, rel=0.08)
    assert middle(one, "diagonal") == pytest.approx(50 * math.sqrt(2), rel=0.08)


def test_a_square_drawn_in_to_its_corner() -> None:
    """Begun along two of its sides, 41 stitches of 5 mm, and two fewer in the middle of each row: each side
    is half as long as the first row.
    """
    rows = ["sc in 2nd ch from hook and in next 18 chs, sc3tog, sc in next 19 chs, turn"]
    rows += [f"ch 1, sc in next {n} sts, sc3tog, sc in next {n} sts, turn" for n in range(18, -1, -1)]
    one = piece(
        in_rows(
            *[row.replace("sc in next 0 sts, ", "").replace(", sc in next 0 sts", "") for row in rows],
            start="chain 42",
        )
    )
    assert middle(one, "width") == pytest.approx(100, rel=0.05)
    assert middle(one, "length") == pytest.approx(100, rel=0.05)


def test_a_small_square_is_drawn_in_to_its_corner_as_a_large_one_is() -> None:
    """Its rows are so short that their middle is never far from either end: 21 stitches of 5 mm around it."""
    rows = ["sc in 2nd ch from hook and in each ch across, turn"]
    rows += [f"ch 1, sc in next {n} sts, sc3tog, sc in next {n} sts, turn" for n in range(9, 0, -1)]
    one = piece(in_rows(*rows, "ch 1, sc3tog", start="chain 22"))
    assert middle(one, "width") == pytest.approx(52.5, rel=0.05)
    assert middle(one, "length") == pytest.approx(52.5, rel=0.05)


def test_a_flag_drawn_in_at_both_ends_is_as_wide_as_it_begins() -> None:
    """Near miss: its rows are straight, and hardly two of them alike: 21 stitches of 5 mm at its widest."""
    rows = ["sc in 2nd ch from hook and in each ch across, turn"]
    rows += ["ch 1, dec, sc in each st to last 2 sts, dec, turn"] * 9
    one = piece(in_rows(*rows, EVEN, start="chain 22"))
    assert not one.from_a_point
    assert middle(one, "width") == pytest.approx(105)


def test_a_cloth_with_a_shaped_end_is_as_wide_as_most_of_its_rows() -> None:
    """Near miss: two rows of ten are wider."""
    rows = ["sc in 2nd ch from hook and in each ch across, turn", *[EVEN] * 7]
    rows += ["ch 1, 2 sc in each st across, turn", EVEN]
    one = piece(in_rows(*rows, start="chain 11"))
    assert middle(one, "width") == pytest.approx(50)


def test_a_trellis_of_groups_with_a_spine() -> None:
    """Groups of three with a chain between them: a group more a row at each edge and at the spine."""
    rows = ["ch 4 (counts as dc, ch 1), (3 dc, ch 2, 3 dc) in ring, ch 1, dc in ring, turn"]
    rows += [
        f"ch 4 (counts as dc, ch 1), (3 dc in next ch-1 sp, ch 1) x {n}, (3 dc, ch 2, 3 dc) in next ch-2 sp, "
        f"ch 1, (3 dc in next ch-1 sp, ch 1) x {n}, dc in last st, turn"
        for n in range(1, 16)
    ]
    text = in_rows(*rows, start="chain 4, joined")
    one = piece(text, dc_gauge(14, 8))
    assert one.from_a_point
    lean = math.atan(2 / 1.75)
    assert middle(one, "length") == pytest.approx(200 / math.cos(lean), rel=0.12)
    assert middle(one, "width") == pytest.approx(2 * 200 / math.cos(lean), rel=0.12)


SIZED = """\
gauge: {{stitch: dc, stitches: 14, rows: 8, over: 10 cm}}
turning chains: {{dc: counts}}
finished size: {{width: {width} cm, length: {length} cm}}
"""


@pytest.mark.parametrize(
    ("width", "length", "differs"),
    [(56, 38, []), (60, 36, []), (87, 38, ["width"]), (56, 25, ["length"]), (87, 25, ["width", "length"])],
)
def test_a_stated_wingspan_and_depth(width: int, length: int, differs: list[str]) -> None:
    """The last row's 87 cm aren't how wide it is, nor its 25 cm along the cloth how deep."""
    found = [one for one in _shawl(width, length).findings if one.rule == "size-differs"]
    assert ["width" if " wide," in one.message else "length" for one in found] == differs


def test_the_table_says_how_it_is_measured() -> None:
    lines = measure_text(measured(SHAWL, head=dc_gauge(14, 8))).splitlines()
    (width,) = (line for line in lines if line.startswith("  width"))
    (length,) = (line for line in lines if line.startswith("  length"))
    assert width.endswith(", from tip to tip")
    assert length.endswith(", from the middle of the top edge to the lowest point")
    assert any("along the row" in line for line in lines)
    straight = measure_text(measured(in_rows(*["3 sc in 2nd ch from hook, turn", *[EVEN] * 4])))
    assert "tip" not in straight


def _shawl(width: int, length: int) -> Checked:
    fields = dedent(SHAWL[SHAWL.index("  yarn") :])
    return check(framed(SIZED.format(width=width, length=length) + fields).encode(), "shawl.yml")


def test_the_page_says_how_it_is_measured() -> None:
    said = [line for one in leaflet(_shawl(56, 38), "US", Settings()).sizes for line in one.lines]
    assert {"56 cm (22 in) from tip to tip", "38 cm (15 in) deep from the middle of the top edge"} <= set(
        said
    )


def test_the_schematic_shows_it() -> None:
    """Its outline has the point, two tips and the lowest point."""
    checked = _shawl(56, 38)
    assert checked.work is not None
    figure = schematic(checked.work, "piece", checked.measured)
    assert figure is not None
    assert "from tip to tip" in figure.alt
    assert "38 cm (15 in) deep" in figure.alt


@pytest.mark.parametrize(("wanted", "rows"), [(45, 16), (70, 25)])
def test_resized_by_its_wingspan(wanted: int, rows: int) -> None:
    """About 28 mm a row from tip to tip."""
    checked = _shawl(56, 38)
    fitted = fit_around(checked, checked, wanted * 10.0)
    assert fitted.altered is not None
    assert fitted.altered.checked.work is not None
    assert len(fitted.altered.checked.work.pieces[0].rounds) == pytest.approx(rows, abs=1)
    assert fitted.around_mm == pytest.approx(wanted * 10, abs=15)


def test_its_measures_for_programs() -> None:
    size = pattern_object(_shawl(56, 38))["size"]
    assert size["width_mm"][0] < 564 < size["width_mm"][1]
    assert size["length_mm"][0] < 380 < size["length_mm"][1]
