"""Rows of a ripple that pass over stitches in their valleys close there, in the chart and in the picture.

How a ripple is worked (several stitches in one at the crests, some passed over in the valleys): common
practice, no source.
"""

from itertools import pairwise

import pytest

from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.items import items_of_rows
from loopleaf.draw.signs import UNIT
from loopleaf.draw.subject import Subject
from loopleaf.draw.wave import wave_of
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import rows, subject

RIPPLE = (
    "2 sc in {first}, sc in next 5 {places}, sk 2 {places}, sc in next 5 {places}, *3 sc in next {place}, "
    "sc in next 5 {places}, sk 2 {places}, sc in next 5 {places}; rep from * to last {place}, "
    "2 sc in last {place}, turn"
)
FIRST = RIPPLE.format(first="2nd ch from hook", places="chs", place="ch")
LATER = "ch 1, " + RIPPLE.format(first="first st", places="sts", place="st")


def ripple() -> Subject:
    return subject(worked(rows(FIRST, *[LATER] * 5, chain=41)))


def closest_in(line_of: Subject, number: int) -> list[float]:
    """How far the heads of each two neighbours of a row lie apart, in stitches."""
    line = lay_out(line_of).lines[number]
    heads = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
    return [(b[0] - a[0]) / UNIT for a, b in pairwise(heads)]


def test_rows_meet_across_their_valleys_in_the_chart() -> None:
    for number in range(6):
        assert max(closest_in(ripple(), number)) < 1.5


def test_crests_rise_above_valleys() -> None:
    line = lay_out(ripple()).lines[-1]
    high = [line.heads[id(thing)][1] for thing in line.things]
    crests, valleys = (high[0], high[13], high[26]), (high[6], high[7], high[19], high[20])
    assert min(crests) - max(valleys) > 0.8 * UNIT


def test_crosses_of_the_first_row_stand_above_its_chains() -> None:
    layout = lay_out(ripple())
    line = layout.lines[0]
    assert min(line.outs) - layout.begin.out > 0.65 * UNIT


def test_the_picture_waves_and_has_no_holes() -> None:
    found = ripple()
    heights = [height for _, height in wave_of(found).knots]
    assert max(heights) - min(heights) > 5.0
    mirrored = [work.side != "WS" for work in found.piece.rounds]
    for row in items_of_rows(found.worked, mirrored, found.scale, found.piece.starts[0]):
        assert all(b.foot[0] - a.foot[1] < 1e-6 for a, b in pairwise(row))


def test_crests_with_chains_between_wave_too() -> None:
    first = FIRST.replace("3 sc in next ch", "(sc, ch 2, sc) in next ch")
    later = LATER.replace("3 sc in next st", "(sc, ch 2, sc) in next ch-2 sp")
    piece = subject(worked(rows(first, *[later] * 5, chain=41)))
    assert wave_of(piece).knots
    line = lay_out(piece).lines[-1]
    middle = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
    assert middle[7][0] - middle[6][0] < 1.5 * UNIT


@pytest.mark.parametrize(
    ("lines", "chain"),
    [
        (
            (
                "sc in 2nd ch from hook, *sk 2 chs, 5 dc in next ch, sk 2 chs, sc in next ch; "
                "rep from * across, turn",
                "ch 3 (counts as dc), 2 dc in first st, *sk 2 sts, sc in next st, sk 2 sts, 5 dc in next st; "
                "rep from * to last 6 sts, sk 2 sts, sc in next st, sk 2 sts, 3 dc in last st, turn",
            ),
            26,
        ),
        (
            (
                "sc in 2nd ch from hook and in each ch across, turn",
                "ch 1, sc in next 5 sts, sk 2 sts, sc in next 5 sts, turn",
            ),
            13,
        ),
    ],
    ids=["shells spread over what they pass", "a row that only shrinks"],
)
def test_what_is_passed_elsewhere_stays_open(lines: tuple[str, ...], chain: int) -> None:
    piece = subject(worked(rows(*lines, chain=chain)))
    assert not wave_of(piece).knots
    mirrored = [work.side != "WS" for work in piece.piece.rounds]
    row = items_of_rows(piece.worked, mirrored, piece.scale, piece.piece.starts[0])[-1]
    assert any(b.foot[0] - a.foot[1] > 1e-3 for a, b in pairwise(row))
