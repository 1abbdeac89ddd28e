"""How the demo's pieces stand or lie."""

from itertools import pairwise
from math import atan2, hypot, pi, tau

import pytest

from loopleaf.draw.section import Oval, Polygon
from loopleaf.draw.stand import Stand, lying_flat, middle_of, stand_of
from loopleaf.fabric import Space
from tests.measure.worked_patterns import worked

from .pieces import MAT, demo, rounds, subject, subject_from


def test_a_square_lies_with_its_corners() -> None:
    stand, _ = stand_of(subject(demo("harbour-square")[0]))
    assert stand.section == Polygon(4)
    assert stand.from_above
    assert not stand.is_open
    assert stand.facing(stand.rings[0], 0.3) == 1.0
    assert stand.light(stand.rings[0], 0.3) == 1.0


def test_a_mat_lies_round() -> None:
    stand, _ = stand_of(subject_from(MAT))
    assert stand.section == Oval()
    assert stand.from_above


def test_a_pouch_stands_open_with_its_moon_to_the_front() -> None:
    work, _ = demo("lantern-pouch")
    pouch = subject(work, "pouch")
    stand, items = stand_of(pouch)
    assert stand.is_open
    assert stand.rings[-1].high1 > 100
    step = next(s.sew for s in work.pattern.finishing if s.sew is not None)
    found = middle_of(pouch, items, step)
    assert found is not None
    x, y = stand.section.at(50.0, found[1])
    assert x == pytest.approx(0.0, abs=1e-6)
    assert y == pytest.approx(-50.0)


def test_where_nothing_is_sewn_on_the_join_is_at_the_back() -> None:
    tube = subject_from(rounds("ch 1, 8 sc in ring, join", *["ch 1, sc in each st around, join"] * 8))
    stand, items = stand_of(tube)
    _, y = stand.section.at(10.0, items[-1][0].start)
    assert y == pytest.approx(10.0)


@pytest.mark.parametrize(("name", "piece"), [("lantern-pouch", "pouch"), ("pebble-ball", "ball")])
def test_in_front_a_standing_piece_is_worked_to_the_left(name: str, piece: str) -> None:
    """Its right side outside and before the maker, a right-hander works to the left (from first principles;
    common practice, no source): what she made next lies further left.
    """
    stand, items = stand_of(subject(demo(name)[0], piece))
    at = len(items) // 2
    ring = stand.rings[at]
    front = [item.middle for item in items[at] if stand.facing(ring, item.middle) > 0.6]
    xs = [stand.point(ring.out1, ring.high1, along)[0] for along in sorted(m % 1.0 for m in front)]
    gaps = [b - a for a, b in pairwise(xs)]
    assert len(xs) > 4
    assert sum(gap < 0 for gap in gaps) >= len(gaps) - 1, "but where the round begins within the front"


def test_what_lies_right_side_up_is_worked_counter_clockwise() -> None:
    stand, _ = stand_of(subject_from(MAT))
    turns = [atan2(y, x) for x, y in (stand.point(10.0, 0.0, along) for along in (0.1, 0.2, 0.3))]
    assert turns == sorted(turns)


def test_a_filled_ball_is_as_tall_as_wide() -> None:
    ball = subject(demo("pebble-ball")[0])
    assert ball.stuffed
    stand, _ = stand_of(ball)
    assert not stand.is_open
    widest = max(ring.out1 for ring in stand.rings)
    assert stand.rings[-1].high1 == pytest.approx(2 * widest, rel=0.1)


def test_stuffing_in_the_finishing_counts_for_the_piece_it_names() -> None:
    text = rounds("ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join")
    assert not subject_from(text).stuffed
    assert subject_from(text, "finishing: [{stuff: {text: Fill it.}}]\n").stuffed
    assert subject_from(text, "finishing: [{stuff: {piece: piece, text: Fill it.}}]\n").stuffed


def test_the_handles_of_the_tray_are_at_its_ends() -> None:
    stand, rounds_of_tray = stand_of(subject(demo("reed-tray")[0]))
    assert isinstance(stand.section, Oval)
    straight = Oval(stand.section.spine)
    for row in rounds_of_tray:
        for item in row:
            if isinstance(item.thing, Space):
                x, y = straight.at(60.0, item.middle)
                assert abs(x) > stand.section.spine / 2 + 30
                assert abs(y) < 35


def test_a_sphere_faces_the_viewer_on_one_side_only() -> None:
    stand, _ = stand_of(subject(demo("pebble-ball")[0]))
    ring = stand.rings[len(stand.rings) // 2]
    facing = [stand.facing(ring, at / 40) for at in range(40)]
    assert max(facing) > 0.8
    assert min(facing) < -0.8
    lights = [stand.light(ring, at / 40) for at in range(40)]
    assert 0.6 < min(lights) < max(lights) < 1.2


def test_a_part_pressed_flat() -> None:
    stand, items = lying_flat(subject(demo("lantern-pouch")[0], "moon"))
    assert stand.from_above
    assert len(items) == 2
    x, y = stand.point(10.0, 3.0, 0.125)
    assert hypot(x, y) == pytest.approx(10.0)


def test_looking_straight_down_nothing_is_open() -> None:
    assert not Stand(Oval(), [], pi / 2).is_open


def test_a_thumb_stands_open_on_the_stitches_left_for_it() -> None:
    hand = rounds(
        "ch 1, 12 sc in ring, join",
        "ch 1, 2 sc in each st around, join",
        "ch 1, sc in each st around, join",
        "ch 1, sc in next 4 sts, ch 4, sk next 4 sts, sc in next 16 sts, join",
    )
    thumb = (
        "thumb:\n  yarn: A\n  worked: joined rounds\n  start: {edge: piece, round: 3, stitches: unworked}\n"
        "  rounds:\n"
        '    - {round: 1, work: "ch 1, sc in next 4 sts, sc in each of 4 chs, join"}\n'
        '    - {rounds: 2-6, work: "ch 1, sc in each st around, join"}\n'
    )
    stand, _ = stand_of(subject(worked(hand + thumb), "thumb"))
    assert not stand.from_above
    assert all(ring.out0 == pytest.approx(ring.out1) for ring in stand.rings)
    assert stand.rings[0].out0 == pytest.approx(8 * 5.0 / tau)


def test_rounds_on_all_of_another_pieces_round_stand_open_as_wide_as_that() -> None:
    """By itself, too: `{edge: piece, round: 2}` names no stitches."""
    cuff = rounds("ch 1, 12 sc in ring, join", "ch 1, 2 sc in each st around, join")
    more = (
        "more:\n  yarn: A\n  worked: joined rounds\n  start: {edge: piece, round: 2}\n  rounds:\n"
        '    - {rounds: 1-4, work: "ch 1, sc in each st around, join"}\n'
    )
    stand, _ = stand_of(subject(worked(cuff + more), "more"))
    assert not stand.from_above
    assert stand.rings[0].out0 == pytest.approx(24 * 5.0 / tau)
    assert stand.rings[-1].high1 == pytest.approx(4 * 5.0)


@pytest.mark.parametrize(("name", "piece"), [("reed-tray", "tray"), ("lantern-pouch", "pouch")])
def test_a_vessel_stands_as_high_as_it_is_measured(name: str, piece: str) -> None:
    """Its base lies: what begins in its middle takes nothing of its sides."""
    work, measured = demo(name)
    found = measured.piece(piece)
    assert found is not None
    stand, _ = stand_of(subject(work, piece))
    height = found.size[0]["height"]
    assert height.low < stand.rings[-1].high1 < height.high


def test_a_base_rises_from_its_first_stitches_unless_it_is_said_to_lie() -> None:
    bowl = rounds("ch 1, 4 sc in ring, join", *["ch 1, sc in each st around, join"] * 8)
    said = bowl.replace("  start: magic ring", "  lies flat: 1\n  start: magic ring")
    assert said != bowl
    rising, flat = (stand_of(subject(worked(text)))[0].rings[0].high1 for text in (bowl, said))
    assert rising > 0
    assert flat == 0
