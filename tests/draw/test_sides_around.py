"""A row that goes around its own piece stands around it in the chart: on what it was worked into."""

from itertools import pairwise
from math import atan2, degrees, dist, tau

import pytest

from loopleaf.draw import chart_of
from loopleaf.draw.canvas import Point
from loopleaf.draw.chart_beside import beside, joined
from loopleaf.draw.chart_labels import box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout, Line
from loopleaf.draw.chart_words import labels
from loopleaf.draw.signs import UNIT
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Made
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
OVER = "ch 1, sc in each st across, do not turn"
DOWN_AND_ON = "sc in end of each row, working along other side of foundation ch"
UP = "sc in end of each row, join"
AROUND = f"{OVER}, {DOWN_AND_ON}, sc in each ch across, {UP}"
CORNERS = f"{OVER}, {DOWN_AND_ON}, 3 sc in first ch, sc in each ch to last ch, 3 sc in last ch, {UP}"
TALL = AROUND.replace("ch 1, sc", "ch 3 (counts as dc), dc", 1).replace("sc in e", "dc in e")

NEAR_RIGHT = rows(FIRST, PLAIN, PLAIN, AROUND)
NEAR_LEFT = rows(FIRST, PLAIN, PLAIN, PLAIN, AROUND)
OWN_ROW = rows(
    FIRST, PLAIN, PLAIN, OVER, f"ch 1, {DOWN_AND_ON}, sc in each ch across, sc in end of each row, join"
)
WITH_CORNERS = rows(FIRST, PLAIN, PLAIN, CORNERS)
IN_TALL = rows(FIRST, PLAIN, PLAIN, TALL)
GROWING = rows(FIRST, *["ch 1, 2 sc in first st, sc in each st across, turn"] * 5, AROUND)
TWICE = rows(FIRST, PLAIN, PLAIN, f"{CORNERS}, turn", "ch 1, sc in each st around, join")
ALL_CORNERS = rows(FIRST, PLAIN, PLAIN, PLAIN, CORNERS.replace("row, join", "row, 3 sc in corner, join"))

ALL = [
    pytest.param(NEAR_RIGHT, 3, False, id="right"),
    pytest.param(NEAR_LEFT, 4, True, id="left"),
    pytest.param(OWN_ROW, 4, False, id="own row"),
    pytest.param(WITH_CORNERS, 3, False, id="corners"),
    pytest.param(IN_TALL, 3, False, id="tall"),
    pytest.param(GROWING, 6, True, id="growing"),
    pytest.param(ALL_CORNERS, 4, True, id="all corners"),
    pytest.param(TWICE, 3, False, id="twice"),
]


def _laid(text: str) -> tuple[Subject, Layout]:
    found = subject_from(text)
    return found, lay_out(found)


def _stitches(line: Line) -> list[Made]:
    return [thing for thing in line.things if isinstance(thing, Made)]


def _place(made: Made) -> Made:
    (place,) = made.into
    assert isinstance(place, Made)
    return place


def _chains(found: Subject, layout: Layout) -> dict[int, Point]:
    """Where the chains of the foundation lie, by their numbers."""
    return {
        place.number: layout.ground.at(layout.begin.out, layout.begin.chains[id(place)])
        for place in found.piece.starts[0]
        if isinstance(place, Made)
    }


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_what_goes_into_the_foundation_hangs_below_its_chain(text: str, first: int, left: bool) -> None:
    found, layout = _laid(text)
    line, chains = layout.lines[first], _chains(found, layout)
    below = [made for made in _stitches(line) if made.into and _place(made).role == "foundation"]
    assert len(below) >= 10
    for made in below:
        x, y = chains[_place(made).number]
        (foot,), head = line.feet[id(made)], line.heads[id(made)]
        assert abs(foot[0] - x) < 0.3 * UNIT
        assert -0.4 * UNIT < foot[1] - y < 0
        assert head[1] < foot[1] or abs(head[0] - x) > UNIT  # around a corner
    alone = [made for made in below if sum(_place(made) is _place(other) for other in below) == 1]
    for made in alone:
        assert line.heads[id(made)][1] < line.feet[id(made)][0][1]
        assert line.heads[id(made)][0] == pytest.approx(chains[_place(made).number][0], abs=0.6 * UNIT)


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_what_goes_into_row_ends_stands_outside_of_its_row(text: str, first: int, left: bool) -> None:
    _, layout = _laid(text)
    line = layout.lines[first]
    passed, sides = False, {False: 0, True: 0}
    for made in _stitches(line):
        passed = passed or bool(made.into and _place(made).role == "foundation")
        if not made.into or _place(made).role != "row-end" or _place(made).into[0] in line.things:
            continue
        below = _place(made).into[0]
        row = next(one for one in layout.lines if id(below) in one.heads)
        foot, head = row.feet[id(below)][0], row.heads[id(below)]
        (x, y), own = line.feet[id(made)][0], line.heads[id(made)]
        at_left = left != passed
        assert (x < head[0]) == at_left
        assert (own[0] < x) == at_left
        assert foot[1] - 0.4 * UNIT < y < head[1] + 0.4 * UNIT
        if text is not GROWING:
            assert abs(own[1] - y) < UNIT
        sides[at_left] += 1
    assert min(sides.values()) >= 3


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_over_the_top_each_stands_on_its_stitch(text: str, first: int, left: bool) -> None:
    _, layout = _laid(text)
    line, last = layout.lines[first], layout.lines[first - 1]
    over = [made for made in _stitches(line) if made.into and id(_place(made)) in last.heads]
    assert bool(over) == (text is not OWN_ROW)
    for made in over:
        (foot,), below = line.feet[id(made)], last.heads[id(_place(made))]
        assert dist(foot, below) < 0.4 * UNIT
        assert line.heads[id(made)][1] > foot[1]


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_they_go_around_in_order(text: str, first: int, left: bool) -> None:
    _, layout = _laid(text)
    heads = [layout.lines[first].heads[id(made)] for made in _stitches(layout.lines[first])]
    x = (min(head[0] for head in heads) + max(head[0] for head in heads)) / 2
    y = (min(head[1] for head in heads) + max(head[1] for head in heads)) / 2
    angles = [atan2(head[1] - y, head[0] - x) * (1 if left else -1) for head in heads]
    steps = [(after - angle) % tau for angle, after in pairwise(angles)]
    assert max(steps) < tau / 4
    assert sum(steps) < 1.05 * tau  # the last corner may lie outside of the first stitch


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_nothing_lies_on_anything_else_and_crosses_stay_crosses(text: str, first: int, left: bool) -> None:
    work = worked(text)
    chart = chart_of(work, "", measure(work))
    assert chart is not None
    signs = inked(chart.svg(), work.pieces[0].name)
    share, one, other = max(overlaps(signs), default=(0.0, None, None), key=lambda pair: pair[0])
    assert share < 0.2, (one, other)
    assert "spike" not in chart.svg()
    label = str(subject_from(text).piece.rounds[first].plan.label)
    crosses = [sign for sign in signs if sign.round == label and sign.kind == "sc"]
    off = [abs(degrees(sign.turned) / 90 - round(degrees(sign.turned) / 90)) for sign in crosses]
    assert max(off, default=0.0) < 1e-6


@pytest.mark.parametrize(("text", "first", "left"), ALL)
def test_the_row_begins_at_its_first_stitch(text: str, first: int, left: bool) -> None:
    found, layout = _laid(text)
    line = layout.lines[first]
    head = line.heads[id(_stitches(line)[0])]
    chain, join = beside(line, UNIT / 2).middle, line.before(joined(line), 1.0)
    assert dist(join, head) < UNIT
    if text is not IN_TALL:  # there the chain is the first stitch itself
        others = [line.heads[id(made)] for made in _stitches(line)[1:]]
        assert dist(chain, head) < 1.6 * UNIT
        assert min(dist(chain, other) for other in others) > 0.9 * UNIT
    start = line.before(0.0, 0.5)
    shown = placed(list(labels(found, layout)), 6.0)
    own = next(one for one in shown if one.text == found.piece.rounds[first].plan.label)
    # It may stand beyond what comes up the other side, but on the line that the row begins on.
    off = abs(own.middle[0] - start[0]) if text is OWN_ROW else abs(-own.middle[1] - start[1])
    assert off < 0.5 * UNIT
    stitches = [at for one in layout.lines for at in one.heads.values()]
    for one in shown:
        low_x, low_y, high_x, high_y = box_of(one, 6.0)
        assert not any(low_x < x < high_x and low_y < -y < high_y for x, y in stitches), one


def test_the_next_row_goes_around_outside_of_it() -> None:
    _, layout = _laid(TWICE)
    inner, outer = layout.lines[-2:]
    assert len(_stitches(outer)) == len(_stitches(inner))
    for made in _stitches(outer):
        (foot,), below = outer.feet[id(made)], inner.heads[id(_place(made))]
        assert dist(foot, below) < 0.4 * UNIT
        assert dist(outer.heads[id(made)], below) < 2.2 * UNIT
    xs, ys = zip(*inner.heads.values(), strict=True)
    for head in outer.heads.values():
        assert not (min(xs) < head[0] < max(xs) and min(ys) < head[1] < max(ys))


def test_a_crowded_side_ends_above_what_hangs_from_the_foundation() -> None:
    text = rows(FIRST, PLAIN, PLAIN, PLAIN, AROUND.replace("sc in end", "3 sc in end"))
    _, layout = _laid(text)
    line = layout.lines[-1]
    low = max(
        line.heads[id(made)][1] for made in _stitches(line) if made.into and _place(made).role == "foundation"
    )
    sides = [made for made in _stitches(line) if made.into and _place(made).role == "row-end"]
    assert len(sides) == 30
    assert min(line.heads[id(made)][1] for made in sides) > low
    work = worked(text)
    chart = chart_of(work, "", measure(work))
    assert chart is not None
    assert max(overlaps(inked(chart.svg(), work.pieces[0].name)), default=(0.0,))[0] < 0.3


def test_chains_of_the_row_hang_below_the_foundation_too() -> None:
    netted = "sc in first ch, (ch 2, sk next 2 ch, sc in next ch) x 3"
    _, layout = _laid(rows(FIRST, PLAIN, PLAIN, f"{OVER}, {DOWN_AND_ON}, {netted}, {UP}"))
    arches = [*layout.lines[-1].arches.values()]
    assert len(arches) == 3
    for hung in arches:
        assert all(bead.middle[1] < layout.begin.out - UNIT / 2 for bead in hung.beads)
