"""Filled pieces with what is sewn to them, and caps: turned as they are used."""

from math import isclose

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.assembled import Part, is_assembled, parts_of
from loopleaf.draw.pose import Posed, Vector, around, cross, dot, unit, worn
from loopleaf.draw.section import Oval
from loopleaf.draw.stand import stand_of
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import SVG, demo, subject, tree

BALL = """
ball:
  yarn: A
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "6 sc in ring"}
    - {round: 2, work: "inc around"}
    - {round: 3, work: "(sc in next st, inc) x 6"}
    - {rounds: 4-6, work: "sc in each st around"}
    - {round: 7, work: "(sc in next st, sc2tog) x 6"}
    - stuff: Fill it.
    - {round: 8, work: "sc2tog x 6, fasten off"}
ear:
  make: 2
  yarn: B
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "5 sc in ring"}
    - {rounds: 2-3, work: "sc in each st around"}
    - {round: 4, work: "sc in each st around, fasten off"}
"""
SEWN = 'finishing:\n  - sew: {piece: ear, to: ball, round: 5, stitches: "2-3, 11-12"}\n'


@pytest.mark.parametrize("axis", [(0.0, 0.0, 1.0), (0.6, 0.8, 0.0), (0.3, -0.2, 0.9)])
@pytest.mark.parametrize("along", [0.0, 0.3, 0.5])
def test_axes_stand_square_and_face_as_told(axis: Vector, along: float) -> None:
    right, away, up = around(axis, (0.1, -1.0, 0.2), along)
    assert all(isclose(dot(one, one), 1.0) for one in (right, away, up))
    assert isclose(dot(right, away), 0.0, abs_tol=1e-9)
    assert all(isclose(a, b, abs_tol=1e-9) for a, b in zip(cross(right, away), up, strict=True))
    assert all(isclose(a, b, abs_tol=1e-9) for a, b in zip(up, unit(axis), strict=True))


@pytest.mark.parametrize("along", [0.0, 0.2, 0.7])
def test_a_piece_faces_as_told_where_it_is_told(along: float) -> None:
    stand, _ = stand_of(subject(demo("pebble-ball")[0]))
    facing = (0.0, -1.0, 0.0)
    pose = Posed(Oval(), stand.rings, stand.slant, around((0.3, 0.0, 0.9), facing, along), (0.0, 0.0, 0.0))
    middle = pose.rings[len(pose.rings) // 2]
    assert dot(pose.normal(middle, along), facing) > 0.9


def test_a_worn_cap_is_worked_to_the_right_in_front() -> None:
    """It grows downwards there: turned over, what goes to the left goes to the right."""
    stand, _ = stand_of(subject(demo("curlew-cap")[0]))
    cap = worn(stand, stand.rings)
    ring = cap.rings[-1]
    front = [at / 60 for at in range(60) if cap.facing(ring, at / 60) > 0.6]
    xs = [cap.point(ring.out1, ring.high1, along)[0] for along in front]
    assert xs == sorted(xs)


def test_a_cap_is_drawn_as_it_is_worn() -> None:
    one = subject(demo("curlew-cap")[0])
    stand, _ = stand_of(one)
    cap = worn(stand, stand.rings)
    crown, edge = cap.rings[0], cap.rings[-1]
    assert cap.point(0.0, crown.high0, 0.0)[1] > cap.point(0.0, edge.high1, 0.0)[1]
    assert cap.facing(crown, 0.75) > 0
    fronts = [at / 40 for at in range(40) if cap.facing(edge, at / 40) > 0.5]
    assert fronts
    assert all(stand.facing(stand.rings[-1], along) > 0 for along in fronts)
    lit, shaded = (
        cap.light(edge, along) for along in (fronts[len(fronts) // 2], fronts[len(fronts) // 2] + 0.5)
    )
    assert lit > shaded
    assert not cap.is_open


def test_the_seal_has_all_its_parts() -> None:
    work, measured = demo("sandbank-seal")
    assert is_assembled(subject(work, "body"), measured)
    drawn = tree(first_picture(work, measured))
    bare = tree(piece_picture(work, "body", measured))
    whites = [p for p in drawn.iter(f"{SVG}path") if str(p.get("stroke")).lower() > "#d8"]
    assert whites, "the muzzle is in shell white"
    assert len(list(drawn.iter(f"{SVG}path"))) > 1.5 * len(list(bare.iter(f"{SVG}path")))
    left, _, wide, high = (float(n) for n in str(drawn.get("viewBox")).split())
    assert wide > 1.3 * high
    assert left < 0


def test_ears_stand_out_on_both_sides() -> None:
    work = worked(BALL, SEWN)
    assert not work.problems
    measured = measure(work)
    assert is_assembled(subject(work, "ball"), measured)
    one, alone = (
        [float(n) for n in svg.partition('viewBox="')[2].partition('"')[0].split()]
        for svg in (first_picture(work, measured), piece_picture(work, "ball", measured))
    )
    assert one[2] > alone[2] * 1.1 or one[3] > alone[3] * 1.1
    assert not is_assembled(subject(worked(BALL), "ball"), measure(worked(BALL)))


def test_what_has_no_stitches_named_is_not_drawn_on() -> None:
    work = worked(BALL, "finishing:\n  - sew: {piece: ear, to: ball, text: Somewhere.}\n")
    assert not is_assembled(subject(work, "ball"), measure(work))
    assert first_picture(work)


def test_a_round_shape_faces_the_viewer_on_one_side_only() -> None:
    one = subject(demo("pebble-ball")[0])
    stand, _ = stand_of(one)
    pose = worn(stand, stand.rings)
    middle = pose.rings[len(pose.rings) // 2]
    turned = [pose.facing(middle, at / 60) > 0 for at in range(60)]
    changes = sum(a != b for a, b in zip(turned, [*turned[1:], turned[0]], strict=True))
    assert changes == 2
    assert 0.3 < sum(turned) / 60 < 0.7


def ball(name: str, rounds_of_it: int) -> str:
    """A ball of 18 stitches around, or as long as so many rounds between its ends make it."""
    return f"""
{name}:
  yarn: A
  worked: spiral rounds
  start: magic ring
  rounds:
    - {{round: 1, work: "6 sc in ring"}}
    - {{round: 2, work: "inc around"}}
    - {{round: 3, work: "(sc in next st, inc) x 6"}}
    - {{rounds: 4-{rounds_of_it + 3}, work: "sc in each st around"}}
    - {{round: {rounds_of_it + 4}, work: "(sc in next st, sc2tog) x 6"}}
    - {{round: {rounds_of_it + 5}, work: "sc2tog x 6, fasten off"}}
"""


LIMB = """
{name}:
  make: 2
  yarn: A
  worked: spiral rounds
  start: magic ring
  rounds:
    - {{round: 1, work: "6 sc in ring"}}
    - {{rounds: 2-6, work: "sc in each st around"}}
"""
FIGURE = ball("body", 7) + ball("head", 3) + "".join(LIMB.format(name=name) for name in ("arm", "ear"))
STUFFED = "finishing:\n  - stuff: {piece: body, text: Fill.}\n  - stuff: {piece: head, text: Fill.}\n"
LIMBS = """\
  - sew: {piece: arm, to: body, round: 9, stitches: "4-6, 13-15"}
  - sew: {piece: ear, to: head, round: 3, stitches: "4-6, 13-15"}
"""


def _figure(head_at: str) -> dict[str, list[Part]]:
    """The parts by the names of their pieces, where the head is sewn on at such stitches."""
    work = worked(FIGURE, STUFFED + f"  - sew: {{piece: head, to: body, {head_at}}}\n" + LIMBS)
    assert not work.problems
    found: dict[str, list[Part]] = {}
    for part in parts_of(subject(work, "body"), measure(work)):
        found.setdefault(part.subject.piece.name, []).append(part)
    return found


def _ends(part: Part) -> tuple[Vector, Vector]:
    """Where the middle of a part's beginning and that of its end lie."""
    begins, ends = (part.pose.place(0.0, high, 0.0) for high in (0.0, part.pose.rings[-1].high1))
    return begins, ends


def test_a_figure_stands_with_its_head_on_top_and_its_arms_at_its_sides() -> None:
    """The head is sewn on all around the body's end: common practice, no source."""
    figure = _figure('round: 12, stitches: "1-6"')
    (foot, neck), (crown, chin) = (_ends(figure[name][0]) for name in ("body", "head"))
    assert foot[2] < neck[2] <= chin[2] + 3 < crown[2]
    assert (crown[0], crown[1]) == pytest.approx((neck[0], neck[1]), abs=0.1)
    arms = [_ends(arm) for arm in figure["arm"]]
    assert sorted(hand[0] > 0 for hand, _ in arms) == [False, True]
    assert all(hand[2] < shoulder[2] and abs(hand[0]) > abs(shoulder[0]) for hand, shoulder in arms)
    assert all(arm.nearness < figure["body"][0].nearness for arm in figure["arm"]), "no open end shows"
    assert all(tip[2] > root[2] for tip, root in map(_ends, figure["ear"]))


def test_a_head_at_one_side_leaves_the_body_lying() -> None:
    figure = _figure('round: 6, stitches: "7-12"')
    foot, tail = _ends(figure["body"][0])
    assert foot[2] == pytest.approx(tail[2])
    assert not any(part.upright for parts in figure.values() for part in parts)


FLAT_TOP = """
ball:
  yarn: A
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "8 sc in ring"}
    - {round: 2, work: "inc around"}
    - {rounds: 3-4, work: "sc in each st around"}
    - stuff: Fill it.
    - {round: 5, work: "sc2tog x 8, fasten off"}
ear:
  yarn: B
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "6 sc in ring"}
    - {rounds: 2-5, work: "sc in each st around"}
nose:
  yarn: B
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "6 sc in ring, sl st in next st"}
"""


@pytest.mark.parametrize("part", ["ear", "nose"])
@pytest.mark.parametrize("at", [1, 2, 3, 4, 5])
def test_a_part_stands_on_any_round_where_it_lies_flat_too(part: str, at: int) -> None:
    sewn = f"finishing:\n  - sew: {{piece: {part}, to: ball, round: {at}, stitches: 2-3}}\n"
    work = worked(FLAT_TOP, sewn)
    measured = measure(work)
    parts = parts_of(subject(work, "ball"), measured)
    assert [one.subject.piece.name for one in parts] == ["ball", part]
    for axis in parts[1].pose.axes:
        assert dot(axis, axis) > 0.01
    assert first_picture(work, measured).startswith("<svg")


def test_a_filled_piece_of_few_rounds_stands_and_one_that_is_drawn_in_does_too() -> None:
    work = worked(FLAT_TOP)
    assert not stand_of(subject(work, "ball"))[0].from_above
    work = worked(FLAT_TOP.replace("    - stuff: Fill it.\n", ""))
    assert not stand_of(subject(work, "ball"))[0].from_above
    assert stand_of(subject(work, "nose"))[0].from_above


def test_limbs_stand_out_from_a_piece_that_is_not_filled_and_a_flat_part_lies_on_it() -> None:
    empty = FLAT_TOP.replace("    - stuff: Fill it.\n", "")
    sewn = "finishing:\n  - sew: {piece: %s, to: ball, round: 3, stitches: 2-3}\n"
    work = worked(empty, sewn % "ear")
    assert is_assembled(subject(work, "ball"), measure(work))
    work = worked(empty, sewn % "nose")
    assert not is_assembled(subject(work, "ball"), measure(work))


def test_a_part_sewn_on_at_the_very_end_has_a_direction() -> None:
    """There the outside faces where the piece grows: no direction is left over, and one is chosen."""
    for one in ((0.0, 0.0, 1.0), (0.0, -1.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, -2.0)):
        right, away, up = around(one, one, 0.3)
        for axis in (right, away, up):
            assert dot(axis, axis) == pytest.approx(1.0)
        assert dot(right, up) == pytest.approx(0.0, abs=1e-9)
        assert dot(right, away) == pytest.approx(0.0, abs=1e-9)
