"""Charts with corners: sides as long as each other, corners on rays from the middle, one above the other.

The rules are our own: no source outside states them in numbers.
"""

from itertools import pairwise
from math import atan2, degrees, dist, hypot

import pytest

from loopleaf.draw import chart_of
from loopleaf.draw.chart_corners import corners_of
from loopleaf.draw.chart_labels import box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Line
from loopleaf.draw.chart_words import labels
from loopleaf.draw.section import Oval, Polygon
from loopleaf.draw.signs import UNIT
from loopleaf.fabric import Made, Space
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .engraving import Inked, inked, overlaps
from .pieces import SQUARE, charted, demo, rounds, subject, subject_from

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


STARTED = {key: motif for key, motif in MOTIFS.items() if "square" in key} | {
    "square with an edge": (4, 0, SQUARE),
}


@pytest.mark.parametrize("text", [text for _, _, text in STARTED.values()], ids=STARTED)
def test_stitches_beside_a_start_lean_no_more_than_their_likes(text: str) -> None:
    """On a square's other sides the same stitches stand without a gap beside them."""
    found = subject_from(text)
    looked_at = 0
    for line in lay_out(found).lines:
        if not isinstance(line.ground, Polygon):
            continue
        quarter, left = divmod(len(line.things), 4)
        if left or not all(isinstance(thing, Space) or len(thing.into) == 1 for thing in line.things):
            continue
        leans = [
            hypot(*(a - b for a, b in zip(line.heads[id(thing)], line.feet[id(thing)][0], strict=True)))
            if isinstance(thing, Made)
            else 0.0
            for thing in line.things
        ]
        for at, lean in enumerate(leans):
            assert lean == pytest.approx(leans[(at + 2 * quarter) % len(leans)], abs=0.35 * UNIT)
            looked_at += 1
    assert looked_at > 4


def test_the_squares_first_and_last_stitches_stand_nearly_upright() -> None:
    """Those of rounds 4 and 5 of the demo's square, away from its corners, stood askew beside their gaps."""
    work, _ = demo("harbour-square")
    found = subject(work, "square")
    worst = 0.0
    for line in lay_out(found).lines[3:5]:
        for thing in line.things:
            if not isinstance(thing, Made) or not isinstance(thing.into[0], Made):
                continue
            (x, y), (over, high) = line.feet[id(thing)][0], line.heads[id(thing)]
            lean = degrees(atan2(over - x, high - y)) % 90
            worst = max(worst, min(lean, 90 - lean))
    assert worst < 20


def test_crosses_on_a_polygons_sides_are_upright() -> None:
    """Turned by half a right angle a cross would be the other sign for the same stitch."""
    signs = inked(charted("harbour-square").svg(), "square")
    crosses = [sign for sign in signs if sign.kind == "sc"]
    assert len(crosses) > 60
    for sign in crosses:
        assert (degrees(sign.turned) + 45) % 90 == pytest.approx(45, abs=0.1)


@pytest.mark.parametrize("text", [*(text for _, _, text in MOTIFS.values()), SQUARE], ids=[*MOTIFS, "edged"])
def test_numbers_stand_clear_of_stitches(text: str) -> None:
    work = worked(text)
    chart = chart_of(work, "", measure(work))
    assert chart is not None
    found = subject_from(text)
    signs = inked(chart.svg(), found.piece.name)
    shown = [one for one in placed(list(labels(found, lay_out(found))), 6.0) if one.text]
    assert [one.text for one in shown] == [round.plan.label for round in found.piece.rounds]
    for one in shown:
        left, top, right, bottom = box_of(one, 6.0)
        middle, half = ((left + right) / 2, (top + bottom) / 2), ((right - left) / 2, (bottom - top) / 2)
        number = Inked("", one.text, middle, half, 0.0)
        assert not [pair for sign in signs for pair in overlaps([number, sign]) if pair[0] > 0.35], one
