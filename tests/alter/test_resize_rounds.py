"""Flat circles and squares from their middle: more or fewer rounds, and the words that end them."""

import math

import pytest

from loopleaf.alter import CannotAlter, fit_around
from loopleaf.alter.around import way_around
from loopleaf.review import Checked
from tests.alter.patterns import checked
from tests.alter.test_resize_shapes import holds, text_of

COASTER = """\
title: Coaster
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
finished size: {around: 21.5 cm}
materials: {yarns: {A: {weight: 4, name: lichen}}, hook: 5.5 mm, notions: [tapestry needle]}
gauge: {stitch: sc, stitches: 14, rows: 16, over: 10 cm}
turning chains: {sc: does not count}
pieces:
  coaster:
    title: Coaster
    yarn: A
    worked: WORKED
    start: magic ring
    rounds:
      - {round: 1, work: "6 sc in ringJOIN", count: 6}
      - {round: 2, work: "inc x 6JOIN", count: 12}
      - {round: 3, work: "(sc in next st, inc) x 6JOIN", count: 18}
      - {round: 4, work: "(sc in next 2 sts, inc) x 6JOIN", count: 24}
      - {round: 5, work: "(sc in next 3 sts, inc) x 6LAST", count: 30}
"""
ENDS = {
    "joined rounds": (", join", ", fasten off"),
    "spiral rounds": ("", ", sl st in next st, fasten off"),
}


def coaster(worked: str) -> Checked:
    join, last = ENDS[worked]
    return checked(
        COASTER.replace("WORKED", worked).replace("JOIN", join).replace("LAST", join + last), "coaster.yml"
    )


_CORNERED = (
    "sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1"
)
GRANNY = (
    COASTER.split("gauge:")[0].replace("around: 21.5 cm", "across: 14 cm")
    + """\
gauge: {stitch: dc, stitches: 14, rows: 8, over: 10 cm}
turning chains: {dc: counts, sc: does not count}
pieces:
  square:
    title: Square
    yarn: A
    worked: joined rounds
    start: magic ring
    rounds:
      - round: 1
        work: ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join
        count: "12 dc, 4 ch-2 sps"
"""
    + "".join(
        f'      - {{round: {number}, work: "{_CORNERED}, {sides}*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, '
        f'{sides}rep from * around, join{end}", count: "{12 * number} dc, 4 ch-2 sps, {spaces} ch-1 sps"}}\n'
        for number, sides, spaces, end in (
            (2, "", 4, ""),
            (3, "3 dc in next ch-1 sp, ch 1, ", 8, ""),
            (4, "(3 dc in next ch-1 sp, ch 1) x 2, ", 12, ""),
            (5, "(3 dc in next ch-1 sp, ch 1) x 3, ", 16, ", fasten off"),
        )
    ).replace(", rep from *", "; rep from *")
)


FOUR = GRANNY.replace("across: 14 cm", "across: 11 cm")
FOUR = FOUR[: FOUR.index("      - {round: 5")].replace(
    'rep from * around, join", count: "48 dc', 'rep from * around, join, fasten off", count: "48 dc'
)


@pytest.mark.parametrize(
    ("pattern", "third"),
    [
        (FOUR, "(3 dc in next ch-1 sp, ch 1) x 3"),
        (FOUR.replace("ch 1) x 2", "ch 1) twice"), "(3 dc in next ch-1 sp, ch 1) 3 times"),
        (FOUR.replace("ch 1) x 2", "ch 1) 2 times"), "(3 dc in next ch-1 sp, ch 1) 3 times"),
    ],
)
def test_once_without_a_bracket_and_then_twice_goes_on_to_three_times(pattern: str, third: str) -> None:
    """A granny square of four rounds: what is written once in the third stands in a bracket in the fourth."""
    square = checked(pattern)
    assert not square.has_errors
    wider = fit_around(square, square, (way_around(square, "square") or 0.0) * 5 / 4)
    text = text_of(wider)
    assert text.count(third) == 2
    assert '"60 dc, 4 ch-2 sps, 16 ch-1 sps"' in text
    assert text.count("fasten off") == 1
    assert holds(wider)


def test_what_is_worked_otherwise_in_a_bracket_doesnt_go_on() -> None:
    """In the third round the side is worked in the corner's stitches: no step leads from it to the fourth."""
    other = FOUR.replace(" 3 dc in next ch-1 sp, ch 1", " 3 hdc in next ch-1 sp, ch 1")
    square = checked(other.replace('"36 dc', '"24 dc, 12 hdc'))
    assert not square.has_errors
    with pytest.raises(CannotAlter):
        fit_around(square, square, (way_around(square, "square") or 0.0) * 5 / 4)


@pytest.mark.parametrize("worked", sorted(ENDS))
def test_a_flat_circle_ends_with_the_round_that_is_its_last_now(worked: str) -> None:
    """By hand: at 14 stitches over 10 cm, 42 stitches are 30 cm around and 24 are 17 cm."""
    join, last = ENDS[worked]
    wider = fit_around(coaster(worked), coaster(worked), 300)
    assert wider.around_mm == pytest.approx(300)
    assert f'"(sc in next 3 sts, inc) x 6{join}", count: 30' in text_of(wider)
    assert f'round: 7, work: "(sc in next 5 sts, inc) x 6{join}{last}", count: 42' in text_of(wider)
    smaller = fit_around(coaster(worked), coaster(worked), 171)
    assert f'"(sc in next 2 sts, inc) x 6{join}{last}", count: 24' in text_of(smaller)
    for fitted in (wider, smaller):
        assert holds(fitted)
        assert text_of(fitted).count("fasten off") == 1


def test_a_granny_square_goes_on_as_its_last_two_rounds_do() -> None:
    """By hand: a round has 12 dc and 4 ch-1 sps more, so 16 stitches' widths, 11.4 cm at 14 over 10 cm."""
    fitted = fit_around(checked(GRANNY), checked(GRANNY), 714)
    text = text_of(fitted)
    assert fitted.around_mm == pytest.approx(714, abs=1)
    assert "(3 dc in next ch-1 sp, ch 1) x 4; rep from * around, join, fasten off" in text
    assert 'count: "72 dc, 4 ch-2 sps, 20 ch-1 sps"' in text
    assert text.count("fasten off") == 1
    assert holds(fitted)


def test_a_square_that_grows_by_rule_keeps_its_edging() -> None:
    """The edging has a stitch in each space, so more of them than the rule would add."""
    head = GRANNY.split("      - {round: 3")[0]
    sides = "(3 dc in next ch-1 sp, ch 1) x n"
    by_rule = (
        f'{head}      - {{rounds: 3-5, work: "{_CORNERED}, {sides}, '
        f"*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, "
        f'{sides}; rep from * around, join", n: {{from: 1, step: 1}}}}\n'
        '      - {round: 6, work: "ch 1, sc in each st and ch-sp around, join, fasten off", count: 80}\n'
    )
    fitted = fit_around(checked(by_rule), checked(by_rule), 714)
    assert "rounds: 3-6" in text_of(fitted)
    assert "round: 7" in text_of(fitted)
    assert "count: 96" in text_of(fitted)
    assert holds(fitted)


SHAWL = (
    COASTER.split("pieces:")[0]
    .replace("around: 21.5 cm", "width: 57 cm")
    .replace("stitch: sc, stitches: 14, rows: 16", "stitch: dc, stitches: 14, rows: 8")
    .replace("{sc: does not count}", "{dc: counts, sc: does not count}")
    + """\
pieces:
  shawl:
    title: Shawl
    yarn: A
    worked: rows
    start: chain 4
    rows:
      - row: 1
        work: (2 dc, ch 2, 3 dc) in 4th ch from hook (skipped chs count as dc), turn
        count: "6 dc, 1 ch-2 sp"
      - rows: 2-20
        work: >-
          ch 3 (counts as dc), dc in first st, dc in each st to next ch-2 sp,
          (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to last st, 2 dc in last st, turn
        count: {from: 12, step: 6}
      - {row: 21, work: "ch 1, sc in each st and ch-sp across, fasten off", count: 121}
"""
)


@pytest.mark.parametrize(("rows", "stitches"), [(28, 169), (14, 85)])
def test_a_shawl_from_a_point_gets_rows_that_grow(rows: int, stitches: int) -> None:
    """By hand: 6 dc in row 1 and 6 more in each, so 6 × rows, and the edging has one more. Each row of 12.5
    mm leans out by a stitch of 7.1 mm at an edge and by two at the spine: 29.7° and 48.8°, so from tip to tip
    it is 12.5 ÷ cos 29.7° × sin 78.5° wider on either side.
    """
    a_row_mm = 2 * 12.5 / math.cos(math.radians(29.7)) * math.sin(math.radians(78.5))
    fitted = fit_around(checked(SHAWL), checked(SHAWL), (rows + 0.3) * a_row_mm)
    text = text_of(fitted)
    assert f"rows: 2-{rows}\n" in text
    assert f"{{row: {rows + 1}, " in text
    assert f"count: {stitches}}}" in text
    assert "start: chain 4" in text
    assert holds(fitted)
