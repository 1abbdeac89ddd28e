"""Stems of spikes: between the stitches that they pass, not over them. That a chart leads a spike's stem down
to its stitch is common practice, no source.
"""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.signs import CROSS_REACH, UNIT, is_cross
from loopleaf.draw.spike_stems import Passed, own_part
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import rows, subject

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
SPIKED = "ch 1, sc in next 4 sts, {} in next st {} rows below, sc in next 5 sts"


def stems(cloth: str):
    """The layout, and of each spike its line, head, foot and stem."""
    layout = lay_out(subject(worked(cloth)))
    passed = Passed(layout)
    found = [
        (line, head, foot, passed.stem(at, head, foot))
        for at, line in enumerate(layout.lines)
        for thing in line.things
        if isinstance(thing, Made) and id(thing) in line.deep
        for head, foot in [(line.heads[id(thing)], line.feet[id(thing)][0])]
    ]
    return layout, found


@pytest.mark.parametrize("kind", ["sc", "dc", "tr"])
@pytest.mark.parametrize("deep", [2, 3])
def test_a_stem_passes_between_the_crosses(kind, deep) -> None:
    layout, found = stems(rows(FIRST, PLAIN, PLAIN, PLAIN, SPIKED.format(kind, deep)))
    ((own, head, foot, stem),) = found
    assert abs(stem.aside) == pytest.approx(UNIT / 2, abs=1)
    way = [*stem.points(head, foot)]
    assert max(dist(a, b) for a, b in pairwise(way)) < deep * 13
    for line in layout.lines:
        for thing in line.things:
            x, y = line.heads[id(thing)]
            if line is not own and is_cross(thing.kind):
                assert min(dist(at, (x, y - UNIT / 2)) for at in way) > CROSS_REACH + 0.5
    assert dist(way[-1], foot) < 2


def test_a_stem_that_passes_nothing_is_straight() -> None:
    """What closes a short row goes into what the row before left: no stitch stands between."""
    closing = "ch 1, sc in each st across, sc in next 4 unworked sts of row 2, turn"
    short = "ch 1, sc in next 6 sts, leave last 4 sts unworked, turn"
    _, found = stems(rows(FIRST, PLAIN, short, PLAIN, closing))
    assert len(found) == 4
    assert {stem.aside for *_, stem in found} == {0.0}


@pytest.mark.parametrize("kind", ["sc", "dc"])
def test_no_sign_of_a_spike_lies_on_another(kind) -> None:
    signs = inked(diagram(worked(rows(FIRST, PLAIN, SPIKED.format(kind, 2)))), "cloth")
    assert sum(sign.kind == kind and sign.round == "3" for sign in signs) == (1 if kind == "dc" else 10)
    assert max((share for share, *_ in overlaps(signs)), default=0) < 0.25


def test_a_spike_of_a_tall_stitch_is_told_and_keeps_its_bars() -> None:
    drawn = diagram(worked(rows(FIRST, PLAIN, SPIKED.format("tr", 2))))
    assert "A stem that is led down past a row" in drawn
    assert "A stem that is led down past a row" not in diagram(worked(rows(FIRST, PLAIN, PLAIN)))
    for kind, bars in (("half", 0), ("double", 1), ("treble", 2)):
        assert own_part(kind, 9.0).count("l4.8 -2.2") == bars


def test_a_spike_in_one_loop_keeps_its_mark() -> None:
    spike = SPIKED.format("dc", 2)
    looped = spike.replace("dc in next st", "dc in FLO of next st")
    drawn, plain = (diagram(worked(rows(FIRST, PLAIN, one))) for one in (looped, spike))
    assert "q3.4 3.6 6.8 0" in drawn
    assert "q3.4 3.6 6.8 0" not in plain
