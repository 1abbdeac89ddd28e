"""Circle, oval and polygon against the formulas of geometry (Euclid; perimeter of a regular polygon about a
circle 2n·tan(π/n)·r).
"""

import itertools
from math import cos, dist, hypot, pi, tan, tau

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.draw.section import Oval, Polygon, Rectangle, Section, outward

SECTIONS = [
    *(Oval(), Oval(swing=1.0), Oval(80.0), Oval(80.0, 0.4)),
    *(Polygon(n) for n in range(3, 9)),
    Rectangle(wide=60.0, high=90.0),
]
lengths = st.floats(0.5, 300.0)
shares = st.floats(0.0, 1.0)


def walked(section: Section, out: float, steps: int = 4800) -> float:
    points = [section.at(out, at / steps) for at in range(steps + 1)]
    return sum(dist(a, b) for a, b in itertools.pairwise(points))


@pytest.mark.parametrize("section", SECTIONS, ids=str)
def test_walking_around_takes_the_way(section: Section) -> None:
    assert walked(section, 40.0) == pytest.approx(section.way(40.0), rel=1e-4)


@pytest.mark.parametrize("section", SECTIONS, ids=str)
@given(out=lengths)
def test_out_for_undoes_way(section: Section, out: float) -> None:
    assert section.out_for(section.way(out)) == pytest.approx(out)


@given(out=lengths, spine=lengths, corners=st.integers(3, 8))
def test_formulas(out: float, spine: float, corners: int) -> None:
    assert Oval().way(out) == pytest.approx(tau * out)
    assert Oval(spine).way(out) == pytest.approx(2 * spine + tau * out)
    assert Polygon(corners).way(out) == pytest.approx(2 * corners * tan(pi / corners) * out)


@given(out=lengths, along=shares, swing=st.floats(-3.0, 3.0))
def test_every_point_of_a_circle_is_as_far_out(out: float, along: float, swing: float) -> None:
    assert hypot(*Oval(swing=swing).at(out, along)) == pytest.approx(out)


@given(out=lengths, along=shares, spine=lengths)
def test_every_point_of_an_oval_is_as_far_from_its_spine(out: float, along: float, spine: float) -> None:
    x, y = Oval(spine).at(out, along)
    beyond = max(abs(x) - spine / 2, 0.0)
    assert hypot(beyond, y) == pytest.approx(out)


@given(out=lengths, along=shares, corners=st.integers(3, 8))
def test_a_polygon_lies_between_its_circles(out: float, along: float, corners: int) -> None:
    far = hypot(*Polygon(corners).at(out, along))
    assert out * (1 - 1e-9) <= far <= out / cos(pi / corners) * (1 + 1e-9)


def test_a_polygon_has_its_corners_where_the_sides_meet() -> None:
    for corners in range(3, 9):
        for at in range(corners):
            far = hypot(*Polygon(corners).at(10.0, at / corners))
            assert far == pytest.approx(10.0 / cos(pi / corners))


@pytest.mark.parametrize("section", SECTIONS, ids=str)
@given(along=st.floats(0.0, 0.999))
def test_the_outside_faces_outwards(section: Section, along: float) -> None:
    x, y = section.at(30.0, along)
    nx, ny = outward(section, 30.0, along)
    assert hypot(nx, ny) == pytest.approx(1.0)
    assert x * nx + y * ny > 0


@pytest.mark.parametrize("section", SECTIONS, ids=str)
@given(along=st.floats(0.0, 0.999), out=st.floats(5.0, 50.0), further=st.floats(0.5, 50.0))
def test_carried_outwards_and_back(section: Section, along: float, out: float, further: float) -> None:
    there = section.carried(along, out, out + further)
    assert section.carried(there, out + further, out) == pytest.approx(along, abs=1e-9)
    a, b = section.at(out, along), section.at(out + further, there)
    assert dist(a, b) >= further * (1 - 1e-6)
    if isinstance(section, Oval) or 0.2 < along * section.corners % 1 < 0.8:
        assert dist(a, b) == pytest.approx(further, rel=1e-6)


def test_what_lies_beyond_a_shorter_side_comes_to_its_corner() -> None:
    assert Polygon(4).carried(0.01, 20.0, 10.0) == 0.0
    assert Polygon(4).carried(0.24, 20.0, 10.0) == 0.25


def test_from_a_bare_spine_the_sides_keep_their_chains() -> None:
    oval = Oval(100.0)
    straight = 100.0 / oval.way(20.0)
    assert oval.carried(0.25, 0.0, 20.0) == pytest.approx(straight / 2)
    assert oval.carried(0.75, 0.0, 20.0) == pytest.approx(0.5 + straight / 2)
