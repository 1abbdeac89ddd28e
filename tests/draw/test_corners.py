"""Charts with corners: sides as long as each other, corners on rays from the middle, one above the other.

The rules are our own: no source outside states them in numbers.
"""

from itertools import pairwise
from math import atan2, degrees, dist, hypot

import pytest

from loopleaf.draw.chart_corners import corners_of
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Line
from loopleaf.draw.section import Oval, Polygon
from loopleaf.fabric import Space

from .pieces import SQUARE, rounds, subject_from

CORNER = "(2 dc, ch 2, 2 dc) in next"
MOTIFS = {
    "triangle": (3, 1, rounds(
        "ch 3 (counts as dc), 11 dc in ring, join",
        "ch 3 (counts as dc), *(3 dc, ch 2, 3 dc) in next st, dc in next 3 sts; rep from * once more, "
        "(3 dc, ch 2, 3 dc) in next st, dc in next 2 sts, join",
        "ch 3 (counts as dc), dc in next 3 sts, *(3 dc, ch 2, 3 dc) in next ch-2 sp, dc in next 9 sts; "
        "rep from * once more, (3 dc, ch 2, 3 dc) in next ch-2 sp, dc in next 5 sts, join",
    )),
    "square from a circle": (4, 1, rounds(
        "ch 3 (counts as dc), 11 dc in ring, join",
        f"ch 3 (counts as dc), *{CORNER} st, dc in next 2 sts; rep from * 2 more times, {CORNER} st, "
        "dc in next st, join",
        f"ch 3 (counts as dc), dc in next 2 sts, *{CORNER} ch-2 sp, dc in next 6 sts; "
        f"rep from * 2 more times, {CORNER} ch-2 sp, dc in next 3 sts, join",
    )),
    "square from a corner": (4, 0, rounds(
        "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join",
        "sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, "
        "*ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1, join",
    )),
    "solid square": (4, 1, rounds(
        "ch 1, 8 sc in ring, join",
        "ch 1, *3 sc in next st, sc in next st; rep from * around, join",
        "ch 1, sc in next st, *3 sc in next st, sc in next 3 sts; rep from * 2 more times, 3 sc in next st, "
        "sc in next 2 sts, join",
    )),
    "solid hexagon": (6, 1, rounds(
        "ch 3 (counts as dc), 11 dc in ring, join",
        "ch 3 (counts as dc), 2 dc in same st, *dc in next st, 3 dc in next st; rep from * 4 more times, "
        "dc in next st, join",
        "ch 3 (counts as dc), *3 dc in next st, dc in next 3 sts; rep from * 4 more times, 3 dc in next st, "
        "dc in next 2 sts, join",
    )),
    "hexagon": (6, 0, rounds(
        "ch 3 (counts as dc), dc in ring, ch 1, (2 dc in ring, ch 1) x 5, join",
        "sl st in next dc, sl st in next sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, "
        "(2 dc, ch 2, 2 dc) in each of next 5 ch-1 sps, join",
        f"ch 3 (counts as dc), dc in next st, *{CORNER} ch-2 sp, dc in next 4 sts; rep from * 4 more times, "
        f"{CORNER} ch-2 sp, dc in last 2 sts, join",
    )),
    "octagon": (8, 1, rounds(
        "ch 3 (counts as dc), 15 dc in ring, join",
        "ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st, *sk next st, (2 dc, ch 2, 2 dc) in next st; "
        "rep from * to last st, sk last st, join",
        "ch 3 (counts as dc), dc in next st, *(dc, ch 2, dc) in next ch-2 sp, dc in next 4 sts; "
        "rep from * 6 more times, (dc, ch 2, dc) in next ch-2 sp, dc in next 2 sts, join",
    )),
}  # fmt: skip


def _corners(line: Line) -> list[tuple[float, float]]:
    return [
        line.arches[id(thing)].at(0.0) if isinstance(thing, Space) else line.heads[id(thing)]
        for thing in line.things
        if id(thing) in line.corners
    ]


@pytest.mark.parametrize(("corners", "first", "text"), MOTIFS.values(), ids=MOTIFS)
def test_sides_are_equal_and_corners_stand_on_rays(corners: int, first: int, text: str) -> None:
    piece = subject_from(text)
    layout = lay_out(piece)
    rays: list[float] = []
    for line in layout.lines[first:]:
        assert isinstance(line.ground, Polygon)
        found = _corners(line)
        assert len(found) == corners
        sides = [dist(a, b) for a, b in pairwise([*found, found[0]])]
        assert max(sides) < 1.03 * min(sides)
        outs = [hypot(*at) for at in found]
        assert max(outs) < 1.03 * min(outs)
        turns = sorted(degrees(atan2(y, x)) % 360 for x, y in found)
        assert not rays or turns == pytest.approx(rays, abs=1.5)
        rays = turns
        level = [y for _, y in found]
        assert sum(abs(y - min(level)) < 1.0 for y in level) == 2, "it stands on a side"
    assert len(corners_of(piece.worked[-1])) == corners


@pytest.mark.parametrize(("corners", "first", "text"), MOTIFS.values(), ids=MOTIFS)
def test_rounds_before_the_first_corners_lie_in_circles(corners: int, first: int, text: str) -> None:
    layout = lay_out(subject_from(text))
    for line in layout.lines[:first]:
        assert isinstance(line.ground, Oval)
        outs = [hypot(*head) for head in line.heads.values()]
        assert max(outs) - min(outs) < 0.5
    for line in layout.lines[first : first + 1]:
        stems = [
            dist(line.heads[id(thing)], line.feet[id(thing)][0])
            for thing in line.things
            if id(thing) in line.feet
        ]
        assert max(stems) < 4.5 * min(stems)


def test_a_plain_edge_keeps_the_corners_below_it() -> None:
    layout = lay_out(subject_from(SQUARE))
    assert {type(line.ground) for line in layout.lines} == {Polygon}
    top = [
        line
        for line in layout.lines[-1:]
        for _, y in line.heads.values()
        if y > 0.97 * max(high for _, high in line.heads.values())
    ]
    assert len(top) >= 6


def test_three_in_one_stitch_here_and_there_make_no_corners() -> None:
    shells = "ch 1, *sc in next st, sk next st, 5 dc in next st, sk next st; rep from * around, join"
    layout = lay_out(
        subject_from(rounds("ch 3 (counts as dc), 15 dc in ring, join", shells, "ch 1, sc in each st around"))
    )
    assert not any(isinstance(line.ground, Polygon) for line in layout.lines)
