"""Corner to corner: blocks in their squares, in diagonal rows, in the chart and in the picture."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import diagram, first_picture
from loopleaf.draw.blocks import blocks_of
from loopleaf.draw.chart_ground import Sideways, Straight, outward
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.schematic import schematic
from loopleaf.draw.signs import UNIT
from tests.measure.worked_patterns import HEAD, worked

from .engraving import inked, overlaps
from .pieces import marked, rows, stitches_by_kind, subject, subject_from, tree

ASIDE = " (skipped chs count as ch-3 sp)"
FIRST = f"dc in 4th ch from hook{ASIDE}, dc in next 2 chs"
SECOND = f"ch 6, {FIRST}, (sl st, ch 3, 3 dc) in next ch-3 sp, turn"
WIDER = f"ch 6, {FIRST}, (sl st, ch 3, 3 dc) in each ch-3 sp across, turn"
NARROWER = (
    "sl st in next 3 dc, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * to last ch-3 sp, "
    "sl st in last ch-3 sp, turn"
)
LAST = "sl st in next 3 dc, (sl st, ch 3, 3 dc) in next ch-3 sp, sl st in last ch-3 sp"


def square(side: int) -> str:
    """A square of so many blocks a side."""
    out, back = [WIDER] * (side - 2), [NARROWER] * (side - 2)
    return rows(f"{FIRST}, turn", SECOND, *out, *back, LAST, chain=6)


@pytest.mark.parametrize("side", [2, 3, 6])
def test_blocks_fill_a_square_along_its_diagonals(side: int) -> None:
    found = blocks_of(subject_from(square(side)))
    assert {block.square for row in found for block in row} == {
        (x, y) for x in range(side) for y in range(side)
    }
    for at, row in enumerate(found):
        assert {sum(block.square) for block in row} == {at}
        step = (-1, 1) if at % 2 == 0 else (1, -1)
        for one, after in pairwise(row):
            assert (after.square[0] - one.square[0], after.square[1] - one.square[1]) == step
        assert {block.upright for block in row} == {at % 2 == 0}


def test_a_chart_draws_each_block_in_its_square() -> None:
    piece = subject_from(square(4))
    layout = lay_out(piece)
    middles: dict[tuple[int, int], tuple[float, float]] = {}
    for line, row in zip(layout.lines, blocks_of(piece), strict=True):
        assert isinstance(line.ground, Sideways if not row[0].upright else Straight)
        for block in row:
            heads = [line.heads[id(made)] for made in block.stitches]
            feet = [line.feet[id(made)][0] for made in block.stitches]
            for (x0, y0), (x1, y1) in zip(feet, heads, strict=True):
                assert (x0 == x1 and y1 > y0) if block.upright else (y0 == y1 and x1 > x0)
            steps = [dist(a, b) for a, b in pairwise(heads)]
            assert max(steps) == pytest.approx(min(steps))
            assert min(steps) > 0.8 * UNIT
            points = [*heads, *feet]
            middles[block.square] = (sum(x for x, _ in points) / 6, sum(y for _, y in points) / 6)
    for (x, y), (across, up) in middles.items():
        assert abs(across - middles[0, 0][0] - x * 38) < 6
        assert abs(up - middles[0, 0][1] - y * 38) < 6


def test_its_signs_keep_apart_and_are_counted() -> None:
    drawn = diagram(worked(square(6)))
    signs = inked(drawn, "cloth")
    assert max(share for share, _, _ in overlaps(signs)) < 0.3
    assert [stitches_by_kind(marked(drawn), str(at + 1))["dc"] for at in range(11)] == [
        3, 6, 9, 12, 15, 18, 15, 12, 9, 6, 3
    ]  # fmt: skip
    chains = [sign for sign in marked(drawn) if sign.get("data-kind") == "ch"]
    assert len(chains) == 36 * 3 + 6 * 3, "each block's side, and what the outer ones stand on"


def test_rows_are_numbered_outside_and_arrows_go_along_them() -> None:
    layout = lay_out(subject_from(square(3)))
    reach = [c for line in layout.lines for head in line.heads.values() for c in head]
    for at, line in enumerate(layout.lines):
        x, y = line.before(20.0, 0.5)
        assert min(x, y) < min(reach) or max(x, y) > max(reach)
        ahead = line.before(19.0, 0.5)
        assert (ahead[0] < x, ahead[1] > y) == ((True, True) if at % 2 == 0 else (False, False))


def test_a_picture_of_blocks_is_square() -> None:
    for side in (3, 6):
        _, _, wide, high = map(float, str(tree(first_picture(worked(square(side)))).get("viewBox")).split())
        assert 0.93 < wide / high < 1.07


def test_its_outline_is_the_whole_square() -> None:
    """Four blocks of 13.9 mm a side, not the one that it begins with."""
    figure = schematic(worked(square(4)), "cloth")
    assert figure is not None
    assert "about 5.5 cm (2¼ in) wide; about 5.5 cm (2¼ in) long" in figure.alt


def test_the_aside_may_be_left_out() -> None:
    lines = [line.replace(ASIDE, "") for line in (f"{FIRST}, turn", SECOND, WIDER)]
    work = worked(rows(*lines, chain=6), head=HEAD.replace(" dc: counts", " dc: does not count"))
    assert [len(row) for row in blocks_of(subject(work))] == [1, 2, 3]


def test_other_rows_are_no_blocks() -> None:
    plain = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across, turn")
    assert blocks_of(subject_from(plain)) == []
    only_chains = worked(edged("ch 1, turn", "sc in each dc across"))
    assert blocks_of(subject(only_chains)) == []
    assert diagram(only_chains)


def edged(*more: str) -> str:
    """A square of four blocks a side with an edging."""
    rest = [WIDER] * 2 + [NARROWER] * 2
    return rows(f"{FIRST}, turn", SECOND, *rest, f"{LAST}, turn", *more, chain=6)


def test_an_edging_goes_all_around_the_blocks() -> None:
    piece = subject_from(edged("ch 1, 56 sc evenly along edge, turn", "ch 1, sc in each st across"))
    assert [len(row) for row in blocks_of(piece)] == [1, 2, 3, 4, 3, 2, 1]
    layout = lay_out(piece)
    *blocks, inner, outer = layout.lines
    reach = [c for line in blocks for head in line.heads.values() for c in head]
    for line, inside in ((inner, reach), (outer, [c for head in inner.heads.values() for c in head])):
        heads = list(line.heads.values())
        assert len(heads) == 56
        sides = [(x > max(inside), y > max(inside), x < min(inside), y < min(inside)) for x, y in heads]
        assert all(map(any, sides)), "outside of what it edges"
        assert all(sum(side) > 9 for side in zip(*sides, strict=True)), "on all four sides"
    turns = [
        sum(ax * by - ay * bx for (ax, ay), (bx, by) in pairwise(line.heads.values()))
        for line in (inner, outer)
    ]
    assert turns[0] * turns[1] < 0, "turned, it goes back the other way"
    assert max(share for share, _, _ in overlaps(inked(diagram(piece.work), "cloth"))) < 0.3


@pytest.mark.parametrize(
    "more",
    [
        ("ch 1, 56 sc evenly along edge, turn", "ch 1, sc in each st across"),
        ("ch 1, 57 sc evenly along edge, turn", "ch 3 (counts as dc), dc in each st across"),
    ],
    ids=["two rows", "tall"],
)
def test_no_sign_of_an_edging_touches_another(more: tuple[str, ...]) -> None:
    signs = [sign for sign in inked(diagram(worked(edged(*more))), "cloth") if sign.round in ("8", "9")]
    assert max((share for share, _, _ in overlaps(signs)), default=0.0) == 0


def test_what_goes_around_grows_outwards_on_each_side() -> None:
    piece = subject_from(edged("ch 1, 56 sc evenly along edge"))
    ground = lay_out(piece).lines[-1].ground
    ways = [outward(ground, at) for at in ((70.0, 170.0), (170.0, 70.0), (70.0, -15.0), (-15.0, 70.0))]
    assert ways == [(0.0, 1.0), (1.0, 0.0), (0.0, -1.0), (-1.0, 0.0)]


def test_its_numbers_stand_outside_of_all_rows() -> None:
    *_, inner, outer = lay_out(
        subject_from(edged("ch 1, 56 sc evenly along edge, turn", "ch 1, sc in each st across"))
    ).lines
    reach = [c for head in outer.heads.values() for c in head]
    for line in (inner, outer):
        assert max(line.before(14.0 + line.beyond, 0.5)) > max(reach) + 5


def test_rows_on_a_slanting_edge_go_along_it() -> None:
    corner = rows(f"{FIRST}, turn", SECOND, WIDER, "ch 1, sc in each dc across", chain=6)
    layout = lay_out(subject_from(corner))
    heads = list(layout.lines[-1].heads.values())
    assert len(heads) == 9
    assert max(x + y for x, y in heads) == pytest.approx(min(x + y for x, y in heads))
    assert min(x + y for x, y in heads) > max(
        x + y for head in layout.lines[-2].heads.values() for x, y in [head]
    )


def test_a_picture_has_the_edging_around_its_blocks() -> None:
    bare, whole = (
        [float(v) for v in str(tree(first_picture(worked(text))).get("viewBox")).split()[2:]]
        for text in (edged(), edged("ch 1, 56 sc evenly along edge"))
    )
    assert all(b < w for b, w in zip(bare, whole, strict=True))
