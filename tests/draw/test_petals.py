"""Petals whose sides are chains; the ground of layered ones."""

import re
from itertools import accumulate, pairwise

import pytest

from loopleaf.draw.canvas import Canvas
from loopleaf.draw.in_the_round import draw_rounds
from loopleaf.draw.items import Item
from loopleaf.draw.petals import FALL, petals_of
from loopleaf.draw.stand import stand_of
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Space
from tests.measure.worked_patterns import FLOWER, HEAD, worked

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
