"""Layers: rounds worked behind others, into an earlier round (a flower's rows of petals)."""

import re
from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.layers import is_layer, layers_of
from loopleaf.draw.signs import UNIT
from loopleaf.draw.stand import stand_of
from tests.measure.worked_patterns import FLOWER as LINES
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps, place_of
from .pieces import MAT, marked, rounds, rows, subject_from

FLOWER = rounds(*LINES)
SAID = "A layer that lies behind is drawn outside."


def test_what_goes_back_to_an_earlier_round_is_a_layer() -> None:
    found = subject_from(FLOWER)
    upon = [is_layer(one, before) for before, one in pairwise(found.worked)]
    assert upon == [False, True, False, True, False]
    assert layers_of(found.worked) == [0, 0, 1, 1, 2, 2]
    assert layers_of(subject_from(MAT).worked) == [0, 0, 0]


def test_a_spike_among_others_is_no_layer() -> None:
    spiked = rounds(
        "ch 1, 8 sc in ring, join",
        "ch 1, 2 sc in each st around, join",
        "ch 1, (sc in next st, dc in next st 2 rounds below, sk st behind it) x 8, join",
    )
    assert layers_of(subject_from(spiked).worked) == [0, 0, 0]


def test_rounds_that_a_size_leaves_out_make_no_layer() -> None:
    found = subject_from(MAT).worked
    for made in found[2].made:
        made.round += 3
    assert layers_of(found) == [0, 0, 0]


def test_a_spike_without_a_stem_has_a_line_down_to_its_place() -> None:
    plain = "ch 1, sc in each st across, turn"
    start = "sc in 2nd ch from hook and in each ch across, turn"
    drawn = diagram(
        worked(rows(start, plain, plain, "ch 1, (sc in next st, sc in st 2 rows below) x 5, turn", plain))
    )
    signs = [sign for sign in marked(drawn) if sign.get("data-kind") == "sc"]
    heights = {
        label: [place_of(sign)[1] for sign in signs if sign.get("data-round") == label]
        for label in ("2", "3", "4")
    }
    assert max(heights["4"]) - min(heights["4"]) < 0.1, "as high as its neighbours"
    [(name, way)] = re.findall(r'<path fill="none" id="(s[0-9]+)" d="(M0 [^"]*C[^"]*)"/>', drawn)
    stems = re.findall(rf'<use href="#{name}" x="(\S+)" y="(\S+)"', drawn)
    assert len(stems) == 5
    aside, long = map(float, way.rsplit("C", 1)[1].split()[-2:])
    assert abs(aside) < 2.5, "at the stitch that it goes into, beside the one that it passes"
    for _, y in stems:
        assert float(y) == pytest.approx(heights["4"][0] - UNIT / 2, abs=0.1), "the middle of its cross"
        assert heights["3"][0] < float(y) + long < heights["2"][0], "below row 3, on row 2"
    assert "A line leads down" in drawn
    assert "A line leads down" not in diagram(worked(MAT))


def test_a_layer_stands_outside_of_the_one_before_it_in_the_chart() -> None:
    layout = lay_out(subject_from(FLOWER))
    outs = [[dist((0.0, 0.0), head) for head in line.heads.values()] for line in layout.lines]
    assert min(outs[2]) > max(outs[1])
    assert min(outs[4]) > max(outs[3])
    assert [len(line.leads) for line in layout.lines] == [0, 0, 5, 0, 5, 0]


def test_dots_lead_to_the_places_of_a_layer_and_are_explained() -> None:
    drawn = diagram(worked(FLOWER))
    assert drawn.count('stroke-dasharray="0.1 2"') == 10
    assert SAID in drawn
    assert SAID not in diagram(worked(MAT))
    assert max(share for share, *_ in overlaps(inked(drawn, "piece"))) <= 0.6


def test_the_picture_has_a_layer_behind_the_petals_before_it() -> None:
    stand, _ = stand_of(subject_from(FLOWER))
    rings = stand.rings
    assert stand.from_above
    assert rings[2].out0 == rings[0].out1
    assert rings[4].out0 == rings[2].out1
    assert all(one.out1 < other.out1 for one, other in pairwise((rings[1], rings[3], rings[5])))
    alone = sum(one.rise for one in rings)
    assert rings[-1].out1 < 0.75 * alone
