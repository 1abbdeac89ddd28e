"""A cord's way through a round: worked out by hand on small rounds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.measure import Pass
from loopleaf.measure.threading import opening_mm, way

from .worked_patterns import measured, rounds


def test_under_one_over_one_around_six() -> None:
    found = way(6, 1, 1, 1)
    assert found.passes == (
        Pass("under", 1, 1),
        Pass("over", 2, 2),
        Pass("under", 3, 3),
        Pass("over", 4, 4),
        Pass("under", 5, 5),
        Pass("over", 6, 6),
    )
    assert found.same_face


def test_the_second_cord_begins_opposite_and_goes_on_past_the_first_post() -> None:
    found = way(8, 5, 2, 2)
    assert found.passes == (Pass("under", 5, 6), Pass("over", 7, 8), Pass("under", 1, 2), Pass("over", 3, 4))


def test_a_pass_may_lie_across_the_rounds_beginning() -> None:
    assert way(6, 6, 2, 1).passes[0] == Pass("under", 6, 1)


def test_an_odd_round_leaves_the_ends_on_opposite_faces() -> None:
    """Five posts, under one and over one: the last goes under, so that its end stays inside."""
    assert not way(5, 1, 1, 1).same_face


@given(st.integers(1, 60), st.integers(1, 5), st.integers(1, 5), st.data())
def test_every_post_is_passed_once(posts: int, under: int, over: int, data: st.DataObject) -> None:
    start = data.draw(st.integers(1, posts))
    passed: list[int] = []
    for one in way(posts, start, under, over).passes:
        number = (one.last - one.first) % posts + 1
        passed += [(one.first - 1 + turn) % posts + 1 for turn in range(number)]
    assert sorted(passed) == list(range(1, posts + 1))
    assert passed[0] == start


def test_how_far_it_opens() -> None:
    """Around + 20 cm for ends and knot is common practice: with that much it opens all the way."""
    assert opening_mm(550, 340) == 340
    assert opening_mm(540, 340) == 340
    assert opening_mm(500, 340) == 300
    assert opening_mm(150, 340) == 0


def test_two_cords_of_a_pattern() -> None:
    bag = rounds("24 sc in ring, join", "ch 1, sc in each st around, join", name="bag")
    cord = "\ncord:\n  yarn: A\n  worked: chain\n  make: 2\n  length: 34 cm\n"
    step = "finishing:\n  - thread: {piece: cord, through: bag, round: 2, under: 2, over: 2, from: [1, 13]}\n"
    ((found,),) = measured(bag + cord, step).threadings
    assert (found.cord, found.through, found.label, found.posts) == ("cord", "bag", "2", 24)
    assert [one.start for one in found.ways] == [1, 13]
    assert found.same_gaps  # 12 posts apart, and the passes come again every four
    assert found.opens_mm == pytest.approx(120)  # 24 stitches of 5 mm
    assert found.spare_mm == pytest.approx(220)


def test_a_second_cord_in_the_other_gaps_is_told() -> None:
    bag = rounds("24 sc in ring, join", "ch 1, sc in each st around, join", name="bag")
    cord = "\ncord:\n  yarn: A\n  worked: chain\n  make: 2\n  length: 34 cm\n"
    step = "finishing:\n  - thread: {piece: cord, through: bag, round: 2, under: 1, over: 1, from: [1, 12]}\n"
    ((found,),) = measured(bag + cord, step).threadings
    assert not found.same_gaps
