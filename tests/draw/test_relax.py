"""What pulls at each other comes to rest where the sum of squares is least."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from loopleaf.draw.relax import kept_apart, settle

some = st.floats(-50, 50)


def energy(
    at: list[float], places: list[float], pulls: list[float], rests: list[float], springs: list[float]
) -> float:
    drawn = sum(pull * (x - place) ** 2 for pull, x, place in zip(pulls, at, places, strict=True))
    held = sum(
        spring * (at[(n + 1) % len(at)] - at[n] - rest) ** 2
        for n, (rest, spring) in enumerate(zip(rests, springs, strict=True))
    )
    return drawn + held


@given(
    st.data(),
    st.integers(1, 12),
    st.booleans(),
)
def test_no_small_step_makes_it_better(data: st.DataObject, many: int, closed: bool) -> None:
    places = data.draw(st.lists(some, min_size=many, max_size=many))
    pulls = data.draw(st.lists(st.floats(0.05, 5), min_size=many, max_size=many))
    held = many if closed and many > 1 else many - 1
    rests = data.draw(st.lists(some, min_size=held, max_size=held))
    springs = data.draw(st.lists(st.floats(0.05, 5), min_size=held, max_size=held))
    found = settle(places, pulls, rests, springs)
    least = energy(found, places, pulls, rests, springs)
    for at in range(many):
        for step in (0.01, -0.01):
            moved = [x + step * (n == at) for n, x in enumerate(found)]
            assert energy(moved, places, pulls, rests, springs) > least - 1e-7


def test_a_round_that_is_even_already_stays() -> None:
    places = [10.0 * at for at in range(6)]
    found = settle(places, [0.1] * 6, [10.0] * 5 + [-50.0], [1.0] * 6)
    assert all(abs(a - b) < 1e-9 for a, b in zip(found, places, strict=True))


@given(st.lists(some, min_size=1, max_size=15), st.floats(0.5, 9))
def test_nothing_is_too_close_and_what_was_apart_stays(at: list[float], least: float) -> None:
    close = [least] * (len(at) - 1)
    found = kept_apart(at, close)
    assert all(b - a >= least - 1e-9 for a, b in pairwise(found))
    again = kept_apart(found, close)
    assert all(abs(a - b) < 1e-6 for a, b in zip(found, again, strict=True))
    assert abs(sum(found) - sum(at)) < 1e-6 * len(at)


def test_what_is_too_close_moves_to_both_sides() -> None:
    assert kept_apart([0.0, 1.0, 2.0, 40.0], [5.0, 5.0, 5.0]) == [-4.0, 1.0, 6.0, 40.0]


def test_the_room_is_kept() -> None:
    found = kept_apart([0.0, 10.0, 90.0], [5.0, 5.0], 60.0)
    assert abs(found[-1] - found[0]) <= 60.0 + 1e-9
