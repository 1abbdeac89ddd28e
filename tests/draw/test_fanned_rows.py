"""Rows in an arc that grow along a few lines, as a yoke's: evenly spaced, and symmetrical.

That a yoke's rows are charted as arcs with its lines fanning out: common practice, no source.
"""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw.chart_ground import Fan
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout
from loopleaf.fabric import Made

from .pieces import demo, rows, subject, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
FIRST_DC = "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"

EVEN = 1.15
"""The widest step of a row from stitch to stitch, of its closest one."""


def raglan(stitch: str, start: str, fronts: int, sleeves: int, back: int, many: int) -> list[str]:
    """Rows with three stitches in one at each of four lines."""
    return [
        f"{start}{stitch} in next {fronts + k} sts, 3 {stitch} in next st, "
        f"{stitch} in next {sleeves + 2 * k} sts, 3 {stitch} in next st, "
        f"{stitch} in next {back + 2 * k} sts, 3 {stitch} in next st, "
        f"{stitch} in next {sleeves + 2 * k} sts, 3 {stitch} in next st, {stitch} in each st across, turn"
        for k in range(many)
    ]


YOKES = {
    "raglan": (31, [FIRST, *raglan("sc", "ch 1, ", 5, 4, 8, 7)]),
    "narrow sleeves": (46, [FIRST, *raglan("sc", "ch 1, ", 8, 5, 15, 7)]),
    "double": (31, [FIRST_DC, *raglan("dc", "ch 3 (counts as dc), ", 5, 3, 7, 6)]),
    "wedges": (
        31,
        [FIRST, *[f"ch 1, (sc in next {4 + k} sts, 2 sc in next st) x 6, turn" for k in range(8)]],
    ),
}


def laid(name: str) -> Layout:
    chain, lines = YOKES[name]
    found = lay_out(subject_from(rows(*lines, chain=chain)))
    assert isinstance(found.ground, Fan)
    return found


@pytest.mark.parametrize("name", YOKES)
def test_steps_are_even_along_each_row(name: str) -> None:
    for line in laid(name).lines:
        heads = [line.heads[id(thing)] for thing in line.things]
        steps = [dist(a, b) for a, b in pairwise(heads)]
        assert max(steps) < EVEN * min(steps)
        assert min(steps) > 9


@pytest.mark.parametrize("name", YOKES)
def test_rows_are_arcs_about_the_middle(name: str) -> None:
    for line in laid(name).lines:
        assert max(line.outs) - min(line.outs) < 1
        left, right = (line.heads[id(line.things[end])][0] for end in (0, -1))
        assert abs(left + right) < 2, "what the first row passes at the hook takes nothing of the arc"


@pytest.mark.parametrize("name", YOKES)
def test_stitches_stay_near_their_places(name: str) -> None:
    """No more than two stitches' width aside from it: the evenness is not paid with leaning stems."""
    for line in laid(name).lines:
        for thing in line.things:
            if isinstance(thing, Made) and thing.into:
                (foot, *_), head = line.feet[id(thing)], line.heads[id(thing)]
                assert dist(foot, head) < 30


def test_a_row_that_grows_on_one_side_alone_is_not_pulled_over_to_the_other() -> None:
    """Near miss: even steps would leave the plain side's stitches far from their places."""
    lines = [
        f"ch 1, sc in next {24 if at % 2 else 5 + 6 * at} sts, 7 sc in next st, sc in each st across, turn"
        for at in range(6)
    ]
    layout = lay_out(subject_from(rows(FIRST, *lines, chain=31)))
    for line in layout.lines[1:]:
        for thing in line.things:
            assert dist(line.feet[id(thing)][0], line.heads[id(thing)]) < 40


def test_a_collar_that_grows_everywhere_stands_above_its_places() -> None:
    """Near miss: two in every other stitch; each pair stays in the middle above its one."""
    layout = lay_out(subject(demo("gull-collar")[0], "collar"))
    line = layout.lines[6]
    assert len(line.things) > 1.4 * len(layout.lines[5].things)
    by_place: dict[int, list[float]] = {}
    for thing, x in zip(line.things, line.xs, strict=True):
        for place in thing.into if isinstance(thing, Made) else ():
            by_place.setdefault(id(place), []).append(x)
    tops = layout.lines[5]
    wider = line.ground.way(line.level) / tops.ground.way(tops.level)
    below = {id(thing): x * wider for thing, x in zip(tops.things, tops.xs, strict=True)}
    aways = [sum(xs) / len(xs) - below[key] for key, xs in by_place.items() if len(xs) == 2]
    assert max(map(abs, aways)) < 5
