"""Petals whose sides are chains; the ground of layered ones."""

import re
from itertools import accumulate, combinations, pairwise
from math import dist, hypot

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.canvas import Canvas
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_things import place_key
from loopleaf.draw.in_the_round import draw_rounds
from loopleaf.draw.items import Item
from loopleaf.draw.petals import FALL, petals_of
from loopleaf.draw.signing import between
from loopleaf.draw.signs import UNIT, height_of
from loopleaf.draw.stand import stand_of
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Made, Space
from tests.measure.worked_patterns import FLOWER, HEAD, worked

from .engraving import inked, overlaps
from .pieces import rounds, subject, subject_from

RING = "ch 1, 12 sc in ring, join"
IN_ONE = "*(sl st, ch 3, 2 dc, ch 3, sl st) in next st, sl st in next st; rep from * around"
WITHOUT = HEAD.replace("dc: counts, tr: counts", "dc: does not count, tr: does not count")


def last_round(*lines: str) -> list[Item]:
    work = worked(rounds(*lines), head=WITHOUT)
    assert not [t for r in work.pieces[0].rounds for t in r.troubles]
    return stand_of(subject(work))[1][-1]


def test_a_petals_chains_rise_beside_its_stitches() -> None:
    """From the slip stitch to the heads, on the foot of the stitch beside them."""
    items = last_round(RING, IN_ONE)
    sides = [at for at, item in enumerate(items) if item.upright]
    assert len(sides) == 12
    first, last = (items[at] for at in sides[:2])
    assert first.tops[0] == pytest.approx(1 - FALL)
    assert first.tops[1] == items[sides[0] + 1].tops[0] > 0.8
    assert (last.tops[1], last.tops[0]) == pytest.approx(first.tops)
    assert first.foot == pytest.approx((items[sides[0] + 1].foot[0],) * 2)
    assert last.foot == pytest.approx((items[sides[1] - 1].foot[1],) * 2)


def test_without_a_first_slip_stitch_the_one_before_ends_the_valley() -> None:
    items = last_round("(ch 4, 3 tr, ch 4, sl st) 5 times in ring")
    assert sum(item.upright for item in items) == 10


@pytest.mark.parametrize(
    "line",
    [
        "*ch 3, skip 1 st, dc in next st; rep from * around",
        "*sl st in next st, ch 3, skip 1 st, sl st in next st, sc in next st; rep from * around",
        "*(sl st, ch 3, sl st) in next st, sl st in next st; rep from * around",
        "*(sl st, ch 9, 2 dc, ch 9, sl st) in next st, sl st in next st; rep from * around",
        "*(sc, ch 3, 2 dc, ch 3, sc) in next st, sl st in next st; rep from * around",
    ],
    ids=["net", "arches", "picots", "long loops", "beside single crochet"],
)
def test_other_chains_are_spaces(line: str) -> None:
    assert not [item for item in last_round(RING, line) if item.upright]


def test_a_round_worked_on_has_its_spaces() -> None:
    """The next round's stitches go into them: they are no petals' sides any more."""
    piece = worked(rounds(RING, IN_ONE, "ch 1, sc in each ch-3 sp around"), head=WITHOUT)
    assert petals_of(subject(piece).worked[1])
    items = stand_of(subject(piece))[1][1]
    assert [item for item in items if isinstance(item.thing, Space)]
    assert not [item for item in items if item.upright]


def covered(piece: Subject, out: float, along: float) -> bool:
    """Whether yarn or cloth lies at a point of the drawing, so far along a round's way."""
    stand, items = stand_of(piece)
    canvas = Canvas()
    draw_rounds(canvas, stand, piece, items)
    x, y = stand.point(out, 0.0, along)
    body = canvas.body("#000000", 0.1, "", canvas.box)
    shapes = "".join(re.findall(r'fill="#[^"]+" d="([^"]+)"', body)).split("z")
    return any(_within(shape, x, -y) for shape in shapes if shape)


def _within(way: str, x: float, y: float) -> bool:
    """Whether a shape written from point to point goes around a point."""
    steps = [float(number) for number in re.findall(r"-?\d*\.?\d+", way)]
    xs, ys = accumulate(steps[::2]), accumulate(steps[1::2])
    points = [*zip(xs, ys, strict=True)]
    inside = False
    for (ax, ay), (bx, by) in pairwise([*points, points[0]]):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
    return inside


def test_no_light_shows_between_layered_petals() -> None:
    """Where a petal of the first layer ends and the next one begins, below the chains behind them."""
    flower = subject_from(rounds(*FLOWER))
    stand, items = stand_of(flower)
    first, second = stand.rings[1], stand.rings[3]
    ends = [item.start for item in items[1][::5]]
    assert all(covered(flower, first.out0 + first.rise / 2, along) for along in ends)
    assert all(covered(flower, second.out0 + second.rise / 4, item.start) for item in items[3][::7])


def test_a_nets_meshes_stay_open() -> None:
    net = subject_from(rounds(RING, "ch 1, (sc in next st, ch 5, sk next 2 sts) x 4, join"))
    stand, items = stand_of(net)
    mesh = next(item for item in items[1] if isinstance(item.thing, Space))
    assert not covered(net, stand.rings[1].out0 + 0.4 * stand.rings[1].rise, mesh.middle)


IN_FRONT = "*(sl st, ch 2, dc, ch 2, sl st) in FLO of next st; rep from * around"
FLOWERS = (
    rounds("ch 1, 6 sc in ring, join", IN_FRONT),
    rounds("5 sc in ring", IN_FRONT, worked_in="spiral rounds"),
    rounds("ch 1, 6 sc in ring, join", "*(sl st, ch 3, 2 dc, ch 3, sl st) in next st; rep from * around"),
    rounds(RING, IN_ONE),
    rounds(RING, "*sl st in next st, ch 3, dc in next st, ch 3, sl st in next st; rep from * around"),
)


@pytest.mark.parametrize("text", FLOWERS, ids=["six", "five", "two stitches each", "twelve", "wide"])
def test_a_charts_petals_are_as_tall_as_their_stitches(text: str) -> None:
    """On a small ring too: no more than a third taller, feet on their place, slip stitches beside it."""
    flower = subject_from(text)
    layout = lay_out(flower)
    line = layout.lines[-1]
    dots = []
    for made in flower.worked[-1].made:
        if not isinstance(made, Made) or id(made) not in line.feet:
            continue
        foot, head = line.feet[id(made)][0], line.heads[id(made)]
        place = layout.tops[place_key(made.into[0])]
        on = place.point(place.out)
        if made.kind == "double":
            assert dist(foot, head) < 1.34 * height_of("double")
            assert dist(foot, on) < 0.4 * UNIT
        else:
            dots.append(((foot[0] + head[0]) / 2, (foot[1] + head[1]) / 2))
            assert dist(dots[-1], on) < 0.9 * UNIT
    assert min(dist(a, b) for a, b in combinations(dots, 2)) > 3.4, "a dot's width"


@pytest.mark.parametrize("text", FLOWERS, ids=["six", "five", "two stitches each", "twelve", "wide"])
def test_a_petals_chains_lead_from_its_slip_stitch_to_its_head(text: str) -> None:
    flower = subject_from(text)
    line = lay_out(flower).lines[-1]
    at = {id(thing): number for number, thing in enumerate(line.things)}
    sides = [thing for petal in petals_of(flower.worked[-1]) for thing in petal.things]
    sides = [thing for thing in sides if isinstance(thing, Space)]
    assert len(sides) == 2 * len(petals_of(flower.worked[-1])) >= 8
    for side in sides:
        ends = [line.things[(at[id(side)] + step) % len(line.things)] for step in (-1, 1)]
        beads = [bead.middle for bead in line.arches[id(side)].beads]
        for end, bead in zip(ends, (beads[0], beads[-1]), strict=True):
            assert isinstance(end, Made)
            near = line.heads[id(end)]
            if end.kind == "slip":
                near = between(line.feet[id(end)][0], near, 0.5)
            assert dist(bead, near) < UNIT


def test_signs_of_petals_hardly_lie_on_each_other() -> None:
    for text in FLOWERS:
        signs = inked(diagram(worked(text)), "piece")
        assert not [(a, b) for share, a, b in overlaps(signs) if share > 0.6]
        assert not [(a, b) for share, a, b in overlaps(signs) if share > 0.2 and a.kind == b.kind == "ch"]


def test_chains_that_are_worked_into_stay_arches() -> None:
    """In a chart as in the picture: they hang from head to head, above what lies between."""
    flower = subject_from(rounds(RING, IN_ONE, "ch 1, sc in each ch-3 sp around, join"))
    layout = lay_out(flower)
    assert not layout.lines[1].petals
    assert lay_out(subject_from(rounds(RING, IN_ONE))).lines[1].petals


def test_what_goes_on_behind_petals_does_not_close_the_piece() -> None:
    """The petals' round is the fullest, but the next one stands in the loops that it left."""
    behind = "ch 1, 2 sc in BLO of each st of round 1, join"
    plain = "ch 1, sc in each st around, join"
    flower = subject_from(rounds("ch 1, 6 sc in ring, join", IN_FRONT, behind, plain))
    layout = lay_out(flower)
    assert not layout.rims
    outs = [max(hypot(*head) for head in line.heads.values()) for line in layout.lines]
    assert outs == sorted(outs)


@pytest.mark.parametrize(
    "edge", ["(sc, ch 2, 2 dc, ch 2, sc) in each st around", "(sc, ch 2, dc, ch 2, sc) in each st around"]
)
def test_petals_between_single_crochets_stand_as_close(edge: str) -> None:
    """Those in the petal's own place lie at its foot, as slip stitches do."""
    flower = subject_from(rounds("ch 1, 6 sc in ring, join", f"ch 1, {edge}, join"))
    layout = lay_out(flower)
    line = layout.lines[1]
    for made in line.things:
        if isinstance(made, Made) and made.kind == "double":
            assert dist(line.heads[id(made)], line.feet[id(made)][0]) < 1.5 * height_of("double")
        elif isinstance(made, Made):
            place = layout.tops[place_key(made.into[0])]
            assert dist(line.heads[id(made)], place.point(place.out)) < 1.8 * UNIT
    signs = inked(diagram(worked(rounds("ch 1, 6 sc in ring, join", f"ch 1, {edge}, join"))), "piece")
    assert max(share for share, _, _ in overlaps(signs)) < 0.5


def test_a_single_crochet_between_two_petals_is_no_part_of_either() -> None:
    edge = "ch 1, (sc in next st, ch 3, 2 dc in next st, ch 3) x 6, join"
    assert not lay_out(subject_from(rounds(RING, edge))).lines[1].petals
