"""The legs of stitches drawn together, however far apart their places lie."""

from itertools import combinations, pairwise
from math import atan2, cos, dist, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.draw import diagram
from loopleaf.draw.canvas import Point
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.drawn_together import Leg, bars_of, drawn_together, head_of, legs_of
from loopleaf.draw.signs import UNIT, bars, height_of
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import rounds, rows, subject

KINDS = ["single", "half", "double", "treble", "double-treble"]
STEPS = [step / 21 for step in range(22)]
UP: Point = (0.0, -1.0)


@st.composite
def stood(draw: st.DrawFn) -> tuple[str, list[Point], Point]:
    """A kind, its feet side by side, below a head that may stand aside, and the way up, all turned."""
    kind = draw(st.sampled_from(KINDS))
    many = draw(st.integers(2, 6))
    apart = draw(st.floats(0.7 * UNIT, 2.5 * UNIT)) if many < 4 else UNIT
    aside = draw(st.floats(-1.0, 1.0)) * UNIT
    deep = height_of(kind) * draw(st.floats(0.6, 1.2))
    turn = draw(st.floats(-pi, pi))
    flat = [((at - (many - 1) / 2) * apart + aside, deep) for at in range(many)]
    feet = [(x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)) for x, y in flat]
    return kind, feet, (sin(turn), -cos(turn))


def crosses(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return side(*one, other[0]) * side(*one, other[1]) < 0 and side(*other, one[0]) * side(*other, one[1]) < 0


def ways(leg: Leg) -> list[tuple[Point, Point]]:
    return list(pairwise(leg.at(step) for step in STEPS))


@settings(max_examples=200, deadline=None, derandomize=True)
@given(stood())
def test_every_leg_stands_on_its_foot_and_meets_the_head(found: tuple[str, list[Point], Point]) -> None:
    kind, feet, up = found
    legs = legs_of(kind, feet, up)
    assert sorted(leg.foot for leg in legs) == sorted(feet)
    start, end = head_of(kind, legs, up)
    for leg in legs:
        if kind == "single":
            assert any(crosses((start, end), way) for way in ways(leg)), "the bar lies across each leg"
        else:
            assert hypot(*leg.end) < dist(start, end) / 2
            assert abs(leg.end[0] * up[0] + leg.end[1] * up[1]) < 1e-6, "on the bar"


@settings(max_examples=200, deadline=None, derandomize=True)
@given(stood())
def test_legs_are_bent_gently_and_never_rise_above_the_head(found: tuple[str, list[Point], Point]) -> None:
    kind, feet, up = found
    for leg in legs_of(kind, feet, up):
        assert all(x * up[0] + y * up[1] < 1e-6 for x, y in map(leg.at, STEPS))
        turns = [atan2(*leg.ahead(share)) for share in (0.0, 0.5, 1.0)]
        turned = abs((turns[2] - turns[0] + pi) % (2 * pi) - pi)
        assert turned < 0.75, "less than 43 degrees"
        upright = [leg.ahead(share)[0] * up[0] + leg.ahead(share)[1] * up[1] for share in (0.0, 1.0)]
        assert upright[0] >= upright[1] - 1e-6, "more upright where it leaves its place"


@settings(max_examples=200, deadline=None, derandomize=True)
@given(stood())
def test_legs_and_bars_keep_clear_of_each_other(found: tuple[str, list[Point], Point]) -> None:
    kind, feet, up = found
    legs = legs_of(kind, feet, up)
    for one, other in combinations(legs, 2):
        assert not any(crosses(a, b) for a in ways(one) for b in ways(other))
    across = bars_of(kind, legs)
    assert len(across) == len(bars(kind)) * len(feet)
    assert not any(crosses(a, b) for a, b in combinations(across, 2))
    for at, bar in enumerate(across):
        own = legs[at // len(bars(kind))]
        assert [leg for leg in legs if any(crosses(bar, way) for way in ways(leg))] == [own]


def test_a_mirrored_stitch_has_mirrored_legs() -> None:
    feet = [(-16.0, 19.0), (-4.0, 19.0), (9.0, 19.0)]
    legs = legs_of("double", feet, UP)
    other = legs_of("double", [(-x, y) for x, y in feet], UP)
    for one, mirrored in zip(legs, reversed(other), strict=True):
        for (x, y), (to_x, to_y) in zip(one, mirrored, strict=True):
            assert (x, y) == pytest.approx((-to_x, to_y))


def test_what_hardly_leans_is_straight() -> None:
    way = drawn_together("double", [(-3.5, 19.0), (3.5, 19.0)])
    assert "Q" not in way
    assert way.startswith("M-3.5 19L0 0M3.5 19L0 0")
    assert way.count("M") == 2 + 2 + 1, "two legs, a bar each, and the head"
    assert drawn_together("double", [(-12.0, 19.0), (12.0, 19.0)]).count("Q") == 2
    assert "Q" not in drawn_together("single", [(-20.0, 18.0), (20.0, 18.0)]), "bent they look like a hoop"
    assert drawn_together("half", [(-5.0, 14.0), (5.0, 14.0)]).count("M") == 2 + 1


@pytest.mark.parametrize(
    "text",
    [
        rows(
            "sc in 2nd ch from hook and in each ch across, turn", "ch 1, (sc2tog, sc3tog) x 3, turn", chain=16
        ),
        rounds(
            "ch 3 (counts as dc), 23 dc in ring, join",
            "ch 3 (counts as dc), dc in next st, (ch 3, dc2tog over next 2 sts) x 11, ch 3, join",
        ),
    ],
    ids=["rows", "rounds"],
)
def test_a_head_stands_above_its_places(text: str) -> None:
    looked_at = 0
    for line in lay_out(subject(worked(text))).lines:
        for thing in line.things:
            if isinstance(thing, Made) and thing.form == "tog":
                feet = line.feet[id(thing)]
                longs = [dist(foot, line.heads[id(thing)]) for foot in (feet[0], feet[-1])]
                assert max(longs) < 1.35 * min(longs)
                looked_at += 1
    assert looked_at >= 6


def test_the_key_has_a_line_for_each_number_of_legs() -> None:
    text = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, (sc2tog, sc3tog) x 3", chain=16)
    drawn = diagram(worked(text))
    assert drawn.count(">sc2tog, ") == 1
    assert drawn.count(">sc3tog, ") == 1


def test_a_bar_crosses_two_legs_alike_however_far_one_of_them_leans() -> None:
    """As on an A: as far below the head on both, and as long beyond the one as beyond the other."""
    legs = legs_of("single", [(-1.0, 14.0), (14.0, 4.0)], UP)
    start, end = head_of("single", legs, UP)
    crossed = [
        next(way[0] for way in ways(leg) if crosses((start, end), way) or crosses((end, start), way))
        for leg in legs
    ]
    assert hypot(*crossed[0]) == pytest.approx(hypot(*crossed[1]), abs=0.8)
    assert dist(start, crossed[0]) == pytest.approx(dist(end, crossed[1]), abs=0.8)
