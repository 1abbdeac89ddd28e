"""Where each stitch of a round lies, and what it stands on."""

import itertools

import pytest

from loopleaf.draw.items import CHAIN_SHARE, Item, items_of_rounds, items_of_rows
from loopleaf.draw.profile import Ring
from loopleaf.draw.ring_chains import link_ends
from loopleaf.draw.section import Oval, Polygon
from loopleaf.draw.stand import stand_of
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Made, Space

from .pieces import DEMO, MAT, SQUARE, demo, rounds, rows, subject, subject_from


def in_rows(piece: Subject) -> list[list[Item]]:
    mirrored = [work.side != "WS" for work in piece.piece.rounds]
    return items_of_rows(piece.worked, mirrored, piece.scale, piece.piece.starts[0])


def in_rounds(piece: Subject, corners: int = 0) -> list[list[Item]]:
    section = Polygon(corners) if corners else Oval()
    rings = [Ring(5.0 * at, 0.0, 5.0 * at + 5, 0.0) for at in range(len(piece.worked))]
    return items_of_rounds(piece.worked, piece.scale, section, rings, {})


def middle(item: Item) -> float:
    return (item.foot[0] + item.foot[1]) / 2


@pytest.mark.parametrize("name", DEMO)
def test_every_counted_stitch_and_space_has_its_item(name: str) -> None:
    work, _ = demo(name)
    for piece in work.pieces:
        if not piece.rounds:
            continue
        one = subject(work, piece.name)
        items = in_rows(one) if one.in_rows else in_rounds(one)
        for worked, row in zip(one.worked, items, strict=True):
            assert sum(isinstance(item.thing, Made) for item in row) == sum(
                isinstance(made, Made) and made.number > 0 for made in worked.made
            )
            assert sum(isinstance(item.thing, Space) for item in row) == sum(
                isinstance(made, Space) and not made.back for made in worked.made
            )
            assert row[-1].end - row[0].start == pytest.approx(1.0)


def test_rows_turn_and_stand_above_each_other() -> None:
    first, second = in_rows(
        subject_from(rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across"))
    )
    assert [item.thing.number for item in first] == list(range(10, 0, -1))
    assert [item.thing.number for item in second] == list(range(1, 11))
    for below, above in zip(first, second, strict=True):
        assert above.thing.into == (below.thing,)
        assert above.foot == pytest.approx((below.start, below.end))


def test_chains_passed_at_the_start_stand_under_their_stitch() -> None:
    (row,) = in_rows(subject_from(rows("dc in 4th ch from hook and in each ch across")))
    assert len(row) == 9
    assert row[-1].thing.number == 1
    assert row[-1].foot == pytest.approx((8 / 9, 1.0))
    assert row[0].foot == pytest.approx((0.0, 1 / 9))


def test_a_fan_spreads_from_one_place_and_is_highest_in_its_middle() -> None:
    piece = subject_from(
        rows(
            "sc in 2nd ch from hook and in each ch across, turn",
            "ch 1, sc in first st, sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st",
            chain=8,
        )
    )
    base, fan = in_rows(piece)
    stitches = [item for item in fan if isinstance(item.thing, Made) and item.thing.kind == "double"]
    assert len(stitches) == 5
    place = next(item for item in base if item.thing is stitches[0].thing.into[0])
    assert all(place.start - 0.2 < middle(item) < place.end + 0.2 for item in stitches)
    assert stitches[0].tops[0] < stitches[1].tops[0] < stitches[2].tops[0]
    assert stitches[2].tops[0] == pytest.approx(stitches[2].tops[1])
    assert all(a.tops[1] == b.tops[0] for a, b in itertools.pairwise(stitches))
    low = next(item for item in fan if isinstance(item.thing, Made) and item.thing.kind == "single")
    assert low.tops[0] < 0.7


def test_a_round_is_turned_until_its_stitches_stand_on_their_places() -> None:
    for piece in (
        subject_from(MAT),
        subject(demo("pebble-ball")[0]),
        subject(demo("lantern-pouch")[0], "pouch"),
    ):
        for row in in_rounds(piece)[1:]:
            leans = [item.middle - middle(item) for item in row if isinstance(item.thing, Made)]
            assert abs(sum(leans) / len(leans)) < 0.01
            assert max(abs(lean) for lean in leans) < 3 / len(row)


def test_corners_stand_where_the_polygon_has_them() -> None:
    for row in in_rounds(subject(demo("harbour-square")[0]), 4):
        corners = [item.middle * 4 for item in row if item.corner]
        assert len(corners) == 4
        assert all(at == pytest.approx(round(at), abs=1e-6) for at in corners)


def test_a_round_without_the_corners_is_left_as_it_is() -> None:
    rounds_of_square = in_rounds(subject_from(SQUARE), 4)
    assert not any(item.corner for item in rounds_of_square[2])
    assert len({round(item.end - item.start, 6) for item in rounds_of_square[2]}) == 1


def test_a_decrease_stands_on_all_its_places_also_across_the_join() -> None:
    rows_of_ball = in_rounds(subject(demo("pebble-ball")[0]))
    gathered = [
        item
        for row in rows_of_ball
        for item in row
        if isinstance(item.thing, Made) and item.thing.form == "tog"
    ]
    assert gathered
    for item in gathered:
        assert len(item.thing.into) == 2
        assert 0 < item.foot[1] - item.foot[0] < 0.5


def test_stitches_in_the_chains_of_a_space_stand_side_by_side_on_it() -> None:
    work, _ = demo("reed-tray")
    tray = subject(work)
    items = in_rounds(tray)
    at = next(i for i, r in enumerate(tray.piece.rounds) if r.plan.label == "18")
    space = next(item for item in items[at - 1] if isinstance(item.thing, Space))
    on_it = [
        i
        for i in items[at]
        if any(isinstance(p, Made) and p.into and p.into[0] is space.thing for p in i.thing.into)
    ]
    assert len(on_it) == 12
    feet = [middle(item) for item in on_it]
    assert feet == sorted(feet)
    assert space.start - 0.01 < feet[0]
    assert feet[-1] < space.end + 0.01


def test_the_chains_of_a_mirrored_space_run_the_other_way() -> None:
    _, over, back = in_rows(
        subject_from(
            rows(
                "sc in 2nd ch from hook and in each ch across, turn",
                "ch 1, sc in first 3 sts, ch 4, sk 4 sts, sc in last 3 sts, turn",
                "ch 1, sc in first 3 sts, sc in each ch of next ch-4, sc in last 3 sts",
            )
        )
    )
    space = next(item for item in over if isinstance(item.thing, Space))
    feet = [middle(item) for item in back]
    assert feet == sorted(feet)
    assert [space.start < foot < space.end for foot in feet].count(True) == 4


def test_spaces_are_as_wide_as_what_they_pass() -> None:
    _, row = in_rows(
        subject_from(
            rows(
                "sc in 2nd ch from hook and in each ch across, turn",
                "ch 1, sc in first st, (ch 1, sk next st, sc in next st) x 4, sc in last st",
            )
        )
    )
    wide = {type(item.thing): item.end - item.start for item in row}
    assert wide[Space] / wide[Made] == pytest.approx(1.0), "each stands over the stitch that it passes"


def test_a_chain_that_passes_nothing_is_as_wide_as_its_chains() -> None:
    _, row = in_rows(
        subject_from(
            rows(
                "sc in 2nd ch from hook and in each ch across, turn",
                "ch 1, sc in first st, (ch 2, sc in next st) x 9",
            )
        )
    )
    wide = {type(item.thing): item.end - item.start for item in row}
    assert wide[Space] / wide[Made] == pytest.approx(2 * CHAIN_SHARE)


def test_the_columns_of_a_net_stand_straight() -> None:
    mesh, block = "(ch 2, sk 2 sts, dc in next st) x 3", "dc in next 9 sts"
    piece = subject_from(
        rows(
            "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn",
            f"ch 3 (counts as dc), {block}, {mesh}, turn",
            "ch 3 (counts as dc), (ch 2, sk next ch-2 sp, dc in next dc) x 3, dc in next 9 sts",
            chain=21,
        )
    )
    for row in in_rows(piece):
        for item in row:
            assert item.start * 19 == pytest.approx(round(item.start * 19), abs=1e-6)


def test_a_spike_stands_further_down_and_is_no_taller_than_its_neighbours() -> None:
    plain = ["ch 1, 12 sc in ring, join", *["ch 1, sc in each st around, join"] * 2]
    spikes = subject_from(rounds(*plain, "ch 1, (sc in next 2 sts, dc in st 2 rounds below) x 4, join"))
    row = in_rounds(spikes)[-1]
    assert [item.floor for item in row] == [1.0, 1.0, 0.0] * 4
    assert {item.tops for item in row} == {(1.0, 1.0)}
    for one in row[2::3]:
        assert abs(one.middle - middle(one)) < 1 / len(row), "straight above its place"


def test_what_is_lower_than_its_neighbours_is_stood_on_lower_down() -> None:
    piece = subject_from(
        rounds(
            "ch 1, 6 sc in ring, join",
            "ch 1, (sc in next st, tr in next st) x 3, join",
            "ch 1, sc in each st around, join",
        )
    )
    low, high = sorted({item.floor for item in in_rounds(piece)[2]})
    assert low < 0.7
    assert high == 1.0


EDGED = "ch 1, *sc in next st, sk 1 st, 5 dc in next st, sk 1 st; rep from * around, join"
HEXAGON = (
    "ch 3 (counts as dc), dc in ring, (ch 1, 2 dc in ring) x 5, ch 1, join",
    "sl st in next dc, sl st in next ch-1 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp, "
    "*dc in next 2 dc, (2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * 4 more times, dc in next 2 dc, join",
)


def test_a_polygons_corners_are_no_scallops() -> None:
    """Its last round is level along each side, though four stitches share a corner; a coaster's isn't."""
    _, hexagon = stand_of(subject_from(rounds(*HEXAGON)))
    assert {item.tops for item in hexagon[-1]} == {(1.0, 1.0)}
    _, coaster = stand_of(subject_from(rounds("ch 3 (counts as dc), 11 dc in ring, join", EDGED)))
    assert min(top for item in coaster[-1] for top in item.tops) < 0.5


NET = ("ch 1, 6 sc in ring, join", "ch 1, *sc in next st, ch 6; rep from * around, join")


@pytest.mark.parametrize(("many", "share"), [(1, 0.35), (2, 0.7)])
def test_a_stitch_alone_in_a_wide_arch_draws_its_chains_together(many: int, share: float) -> None:
    """Its foot is about as wide as itself, in the middle of the arch; a few of them stand close together."""
    fan = f"ch 1, *{many} sc in next ch-6 sp, ch 6; rep from * around, join"
    _, items = stand_of(subject_from(rounds(*NET, fan)))
    arches = [one.end - one.start for one in items[1] if isinstance(one.thing, Space)]
    feet = [one.foot for one in items[2] if isinstance(one.thing, Made)]
    assert len(feet) == 6 * many
    assert sum(end - start for start, end in feet) < share * sum(arches)


def test_a_full_fan_fills_its_arch() -> None:
    """Nine stitches side by side in six chains: from one end of the arch to the other, and no further."""
    _, items = stand_of(subject_from(rounds(*NET, "ch 1, *9 dc in next ch-6 sp; rep from * around, join")))
    arches = [one.end - one.start for one in items[1] if isinstance(one.thing, Space)]
    feet = [one.foot for one in items[2] if isinstance(one.thing, Made)]
    assert sum(end - start for start, end in feet) == pytest.approx(sum(arches), rel=0.15)


YOKE = (
    "ch 3 (counts as dc), dc in next 3 ch, (dc, ch 2, dc) in next ch, dc in next 8 ch, "
    "(dc, ch 2, dc) in next ch, dc in next 4 ch, (dc, ch 2, dc) in next ch, dc in next 8 ch, "
    "(dc, ch 2, dc) in next ch, join",
    "ch 3 (counts as dc), *dc in each dc to ch-2 sp, (dc, ch 2, dc) in ch-2 sp; rep from * 3 more times, "
    "dc in each st to end, join",
)


def test_a_yoke_s_corners_close_at_its_neck() -> None:
    """Both sides of a corner stand in one chain, so the hole between them ends in a point there; the neck is
    as long as its chains.
    """
    yoke = subject_from(rounds(*YOKE, start="chain 28, joined"))
    stand, items = stand_of(yoke)
    assert stand.section.way(stand.rings[0].out0) == pytest.approx(28 * yoke.scale.width_mm)
    ends = link_ends(yoke, stand.section)
    assert len(ends) == 29
    for before, space, after in zip(items[0], items[0][1:], items[0][2:], strict=False):
        if isinstance(space.thing, Space):
            assert before.foot[1] == pytest.approx(after.foot[0], abs=1e-6)
            assert before.foot[1] * 4 == pytest.approx(round(before.foot[1] * 4), abs=0.05)


def test_a_ring_that_is_worked_over_has_no_single_chains() -> None:
    granny = subject_from(rounds(*HEXAGON, start="chain 6, joined"))
    stand, _ = stand_of(granny)
    assert link_ends(granny, stand.section) == []


@pytest.mark.parametrize(("line", "level"), [("ch 1, 6 sc in ring, join", True), (EDGED, False)])
def test_a_round_in_a_ring_is_no_scallop(line: str, level: bool) -> None:
    """A small disc of one round is as high all around; shells of the last round are not."""
    first = () if level else ("ch 1, 12 sc in ring, join",)
    _, items = stand_of(subject_from(rounds(*first, line)))
    assert ({top for item in items[-1] for top in item.tops} == {1.0}) is level


def test_a_real_ring_is_as_large_as_its_stitches_need() -> None:
    """Thirty heads a stitch apart around it; in a ring of yarn they begin at its middle."""
    hoop, disc = (
        stand_of(subject_from(rounds("ch 1, 30 sc in ring, join", start=start)))[0].rings[0]
        for start in ("ring", "magic ring")
    )
    assert hoop.out1 * 2 * 3.14159 == pytest.approx(30 * 5.0, rel=0.01)
    assert hoop.out0 > 15
    assert disc.out0 == 0
