"""Rows that begin in one place: shawls, half discs, triangles on their tips, what only looks so."""

from itertools import pairwise
from math import atan2, dist, hypot, pi

import pytest

from loopleaf.draw import chart_of
from loopleaf.draw.along_side import parted, side_edge
from loopleaf.draw.chart_ground import Fan, Straight
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_things import begun_in
from loopleaf.draw.chart_words import labels
from loopleaf.draw.from_middle import Middle, middle_of, sheet_of
from loopleaf.draw.section import Half
from loopleaf.draw.sheet import Edging
from loopleaf.draw.signs import UNIT
from loopleaf.draw.subject import Subject

from .engraving import inked, overlaps
from .pieces import rows, subject_from

SPINED = (
    "ch 3 (counts as dc), dc in same st, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, "
    "dc in each st to last st, 2 dc in last st, turn"
)
"""Grown at both ends and at the spine; common practice, no source."""

PLAIN_ENDS = (
    "ch 3 (counts as dc), dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, "
    "dc in each remaining st, turn"
)
ROUND = (
    "6 dc in 4th ch from hook, turn",
    "ch 3 (counts as dc), dc in same st, 2 dc in each st across, turn",
    "ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * across, turn",
    "ch 3 (counts as dc), dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * "
    "across, turn",
)
TIP = "ch 3 (counts as dc), dc in same st, dc in each st to last st, 2 dc in last st, turn"


def shawl(many: int) -> Subject:
    """A triangle from the middle of its long side, of so many rows."""
    return subject_from(rows("(2 dc, ch 2, 3 dc) in 4th ch from hook, turn", *[SPINED] * (many - 1), chain=4))


def half_disc(many: int) -> Subject:
    """Half a disc of so many rows."""
    return subject_from(rows(*ROUND[:many], chain=4))


def tip(many: int) -> Subject:
    """A triangle from its tip, of so many rows."""
    return subject_from(rows("2 dc in 4th ch from hook, turn", *[TIP] * (many - 1), chain=4))


@pytest.mark.parametrize("many", [1, 2, 3, 7])
def test_a_shawl_is_a_triangle_from_its_first_row_on(many: int) -> None:
    found = shawl(many)
    assert middle_of(found) == Middle(pi, 2)
    sheet = sheet_of(found)
    high = found.sizes[-1].height_mm
    left, spine, right = (sheet.point(0.0, along, high) for along in (0.0, 0.5, 1.0))
    assert left == pytest.approx((-right[0], right[1]), abs=1e-9)
    if found.fan is None:  # half a square by its diagonal (textbook geometry): half as high as it is long
        assert right[1] == pytest.approx(0.0, abs=1e-9)
        assert spine == pytest.approx((0.0, right[0]), abs=1e-9)


def test_a_longer_shawl_lies_as_its_increases_make_it() -> None:
    """One stitch more at each end of a row twice as tall as wide: its edge leans out by atan(1 / 2), so that
    the neck edge isn't straight (geometry as in `measure.fan`).
    """
    found = shawl(7)
    assert found.fan is not None
    sheet = sheet_of(found)
    for at, corner in zip((0.0, 0.5, 1.0), sheet.corners, strict=True):
        assert sheet.point(0.0, at, 1.0) == pytest.approx(corner)
    (x0, y0), (x1, y1) = sheet.corners[0], found.fan.outline[0]
    assert y0 / x0 == pytest.approx(y1 / x1)
    assert y0 > 0.2 * abs(x0)


@pytest.mark.parametrize("many", [1, 2, 3, 4])
def test_rows_grown_evenly_are_half_a_disc_from_the_first_on(many: int) -> None:
    sheet = sheet_of(half_disc(many))
    assert (sheet.arc, sheet.sides) == (pi, 0)
    assert sheet.point(0.0, 1.0, 50.0) == pytest.approx((50.0, 0.0), abs=1e-9)
    assert sheet.point(0.0, 0.3, 0.0) == (0.0, 0.0)


@pytest.mark.parametrize("many", [2, 3, 6])
def test_rows_grown_at_their_ends_only_stay_straight_above_their_tip(many: int) -> None:
    found = tip(many)
    assert middle_of(found) == Middle(0.0)
    assert type(lay_out(found).ground) is Straight


def test_rows_on_a_chain_that_grow_at_their_ends_stay_straight_too() -> None:
    grown = "ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn"
    found = subject_from(rows("sc in 2nd ch from hook and in each ch across, turn", *[grown] * 6, chain=5))
    assert middle_of(found) is None
    assert not sheet_of(found).arc


def test_rows_on_a_chain_that_grow_in_their_middle_lie_in_an_arc() -> None:
    grown = "ch 1, *sc in next {} sts, 2 sc in next st; rep from * across, turn"
    first = "sc in 2nd ch from hook and in each ch across, turn"
    found = subject_from(rows(first, *[grown.format(many) for many in range(2, 8)], chain=16))
    assert middle_of(found) is None
    assert sheet_of(found).arc


def test_a_corner_that_grows_at_its_spine_only_is_no_half_polygon() -> None:
    found = subject_from(rows("(2 dc, ch 2, 3 dc) in 4th ch from hook, turn", *[PLAIN_ENDS] * 4, chain=4))
    middle = middle_of(found)
    assert middle is not None
    assert not middle.sides


def test_two_places_are_no_middle() -> None:
    found = subject_from(rows("3 dc in 4th ch from hook, 3 dc in next ch, turn", chain=5))
    assert begun_in(found.worked[0]) is None
    assert middle_of(found) is None


@pytest.mark.parametrize("many", [2, 3, 7])
def test_the_chart_of_a_shawl_is_symmetric_about_its_spine(many: int) -> None:
    layout = lay_out(shawl(many))
    assert layout.ground == Half(2)
    for line in layout.lines:
        heads = [line.heads[id(thing)] for thing in line.things if id(thing) in line.heads]
        for (x, y), (other, as_high) in zip(heads, heads[::-1], strict=True):
            assert x == pytest.approx(-other, abs=0.5)
            assert y == pytest.approx(as_high, abs=0.5)
        (arch,) = line.arches.values()
        assert arch.at(0.0, 0.0)[0] == pytest.approx(0.0, abs=0.1)


@pytest.mark.parametrize("found", [shawl(5), half_disc(4), tip(4)], ids=["shawl", "half disc", "tip"])
def test_first_rows_spring_from_their_place(found: Subject) -> None:
    """Also the skipped chains that count as a stitch; nothing stands apart."""
    layout = lay_out(found)
    feet = [foot for places in layout.lines[0].feet.values() for foot in places]
    middle = (sum(x for x, _ in feet) / len(feet), sum(y for _, y in feet) / len(feet))
    assert max(dist(foot, middle) for foot in feet) < 9.0
    chart = chart_of(found.work)
    assert chart is not None
    assert max((share for share, _, _ in overlaps(inked(chart.svg(), "cloth"))), default=0.0) < 0.5


def test_the_chart_of_half_a_disc_goes_from_one_side_to_the_other() -> None:
    layout = lay_out(half_disc(4))
    assert layout.ground == Fan(pi)
    last = layout.lines[-1]
    heads = [last.heads[id(thing)] for thing in last.things]
    angles = [atan2(y, x) for x, y in heads]
    assert angles[0] == pytest.approx(pi - angles[-1], abs=0.02)
    assert angles[0] - angles[-1] > 0.9 * pi
    outs = [hypot(*head) for head in heads]
    assert max(outs) - min(outs) < 1.0


def test_what_begins_in_a_ring_with_a_fan_is_no_triangle_for_that() -> None:
    """Three and more in one ring have a middle stitch, too."""
    found = subject_from(_in_ring("ch 3 (counts as dc), 6 dc in ring, turn", ROUND[1]))
    assert middle_of(found) == Middle(pi)


def test_a_solid_spine_and_two_spines() -> None:
    solid = "ch 1, 2 sc in first st, sc in each of next {} sts, 3 sc in next st, sc in each of next {} sts, 2 sc in last st, turn"  # noqa: E501
    found = subject_from(_in_ring("ch 1, 5 sc in ring, turn", *(solid.format(n, n) for n in (1, 3, 5))))
    assert middle_of(found) == Middle(pi, 2)
    spine = "dc in each st to next ch-2 sp, (dc, ch 2, dc) in ch-2 sp, "
    row = f"ch 3 (counts as dc), dc in same st, {spine}{spine}dc in each st to last st, 2 dc in last st, turn"
    first = "ch 3 (counts as dc), dc in ring, ch 2, 2 dc in ring, ch 2, 2 dc in ring, turn"
    assert middle_of(subject_from(_in_ring(first, row, row))) == Middle(pi, 3)


def test_an_edging_into_both_sides_lies_along_the_long_side() -> None:
    three = "2 sc in each of next 3 row ends"
    ends = f"ch 1, {three}, {three}, fasten off"
    found = subject_from(
        _in_ring("ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn", SPINED, SPINED, ends)
    )
    assert middle_of(found) == Middle(pi, 2)
    layout = lay_out(found)
    above = [y for line in layout.lines[:-1] for _, y in line.heads.values()]
    below = [y for _, y in layout.lines[-1].heads.values()]
    assert max(below) < min(above)
    edge = side_edge(sheet_of(found), *_parted(found))
    assert isinstance(edge, Edging)
    assert edge.start[0] == pytest.approx(-edge.end[0])
    assert edge.start[1] == pytest.approx(edge.end[1], abs=1e-6)
    assert edge.point(1.0, 0.5, 5.0)[1] < 0


def test_an_edging_into_one_side_stays_there() -> None:
    one = "ch 1, 2 sc in each of next 3 row ends, fasten off"
    found = subject_from(
        _in_ring("ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn", SPINED, SPINED, one)
    )
    edge = side_edge(sheet_of(found), *_parted(found))
    assert isinstance(edge, Edging)
    assert edge.start[0] * edge.end[0] == pytest.approx(0.0, abs=1e-6)


def _parted(subject: Subject) -> tuple[Subject, Subject]:
    rows, aside = parted(subject)
    assert aside is not None
    return rows, aside


def _in_ring(*lines: str) -> str:
    return rows(*lines).replace("chain 11", "magic ring")


def test_a_large_shawl_s_chart_is_a_triangle_to_its_last_row() -> None:
    """Its rows are straight from end to end, its ends lie near the long side, and its spine keeps open."""
    layout = lay_out(shawl(20))
    for line in layout.lines[3:]:
        heads = [line.heads[id(thing)] for thing in line.things if id(thing) in line.heads]
        sums = [abs(x) + y for x, y in heads]
        assert max(sums) - min(sums) < 0.8 * UNIT
        assert heads[0][1] < 0.06 * max(y for _, y in heads) + UNIT
        spine = [abs(x) for x, _ in heads]
        assert sorted(spine)[2] - sorted(spine)[0] > 0.5 * UNIT


def test_numbers_of_the_rows_stand_clear_of_an_edging_below_them() -> None:
    three = "2 sc in each of next 3 row ends"
    last = f"ch 1, {three}, {three}, fasten off"
    found = subject_from(
        _in_ring("ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn", SPINED, SPINED, last)
    )
    layout = lay_out(found)
    low = min(y for _, y in layout.lines[-1].heads.values())
    beside = [one for one in labels(found, layout) if one.text != "4"]
    assert len(beside) == 3
    assert all(-one.at[1] < low for one in beside)
    heads = [layout.lines[-1].heads[id(thing)][0] for thing in layout.lines[-1].things]
    gaps = [b - a for a, b in pairwise(heads)]
    assert min(gaps) > 0.9 * UNIT


def edged(many: int) -> Subject:
    """A shawl of so many rows and a row of shells; one over its spine, too (common practice, no source)."""
    shells, rest = divmod(3 * many - 1, 6)
    side = f"*skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * {shells - 1} more times"
    side += f", sc in each of next {rest} sts" if rest else ""
    last = f"ch 1, sc in first st, {side}, 7 dc in ch-2 sp, sc in next st, {side}, fasten off"
    first = "(2 dc, ch 2, 3 dc) in 4th ch from hook, turn"
    found = subject_from(rows(first, *[SPINED] * (many - 1), last, chain=4))
    assert not [trouble for one in found.piece.rounds for trouble in one.troubles]
    return found


@pytest.mark.parametrize("many", [7, 12])
def test_a_row_of_shells_leaves_a_shawl_its_form(many: int) -> None:
    plain, found = shawl(many), edged(many)
    assert middle_of(found) == Middle(pi, 2)
    for one, other in zip(sheet_of(found).corners, sheet_of(plain).corners, strict=True):
        assert one == pytest.approx(other, abs=0.01)
    assert found.fan is not None
    assert len(found.fan.outline) == 3
    assert lay_out(found).ground == Half(2)


def test_a_row_of_shells_makes_no_triangle_of_half_a_disc() -> None:
    shells = "*skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * 3 more times"
    last = f"ch 1, sc in first st, {shells}, sc in each remaining st, fasten off"
    found = subject_from(rows(*ROUND, last, chain=4))
    assert middle_of(found) == Middle(pi)
