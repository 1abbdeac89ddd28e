"""Picots of the picture: rings that stand out from the edge, one for each picot made."""

from math import dist

import pytest

from loopleaf.draw import piece_picture
from loopleaf.draw.canvas import Canvas
from loopleaf.draw.items import Item
from loopleaf.draw.picots import draw_picots, picots_of
from loopleaf.draw.stitchwork import Placed, draw_row
from loopleaf.fabric import Made, Space
from tests.measure.worked_patterns import worked

from .pieces import SVG, demo, rounds, rows, subject, tree


def strokes(svg: str) -> int:
    """Lines drawn."""
    return sum(
        str(path.get("d")).count("M") for path in tree(svg).iter(f"{SVG}path") if path.get("stroke-linecap")
    )


def box(svg: str) -> list[float]:
    """Left, top, width, height."""
    return [float(figure) for figure in str(tree(svg).get("viewBox")).split()]


FIRST = "sc in 2nd ch from hook and in each ch across, turn"


@pytest.mark.parametrize("side", ["RS", "WS"])
def test_each_picot_is_a_ring_on_its_ground(side: str) -> None:
    """After a row of the right or of the wrong side, and higher than the row alone."""
    before = ["ch 1, sc in each st across, turn"] if side == "RS" else []
    plain, picots = (
        piece_picture(worked(rows(FIRST, *before, last)), "cloth")
        for last in (
            "ch 1, sc in each st across",
            "ch 1, (sc in next 2 sts, ch-3 picot) x 4, sc in next 2 sts",
        )
    )
    assert strokes(picots) - strokes(plain) == 2 * 4
    assert box(picots)[3] > box(plain)[3] + 1


def test_a_picot_stands_where_the_work_had_come_to() -> None:
    """Row 1 goes to the left as the right side shows it, and row 2 to the right."""
    to_the_left = subject(worked(rows("sc in 2nd ch from hook, ch-3 picot, sc in next 9 ch")))
    (picots,) = picots_of(to_the_left.worked[0]).values()
    assert picots == (3,)
    right, left = (
        piece_picture(worked(rows(*lines)), "cloth")
        for lines in (
            ["sc in 2nd ch from hook and in next 9 ch, ch-3 picot"],
            [FIRST, "ch 1, sc in next 10 sts, ch-3 picot"],
        )
    )
    plain = box(piece_picture(worked(rows(FIRST)), "cloth"))
    assert box(right)[0] < plain[0] - 0.5
    assert box(left)[0] == plain[0]
    assert box(left)[0] + box(left)[2] > plain[0] + plain[2] + 0.5


def test_picots_on_one_stitch_fan_out() -> None:
    canvas = Canvas()
    draw_picots(canvas, 0, ("#000000", "#ffffff"), lambda across, up: (across * 4, up * 4), (3, 3, 3), 1.0)
    rings = canvas._lines[1, "#ffffff", 1.0]
    assert len(rings) == 3
    tips = [max(ring, key=lambda point: dist(point, (4.0, 4.0))) for ring in rings]
    assert tips[0][0] < tips[1][0] < tips[2][0]
    assert tips[1][1] == pytest.approx(max(y for _, y in tips))
    assert all(ring[0] == pytest.approx((4.0, 4.0)) for ring in rings)


def test_every_picot_of_the_doily_and_the_bookmark_is_drawn() -> None:
    for name, many in (("sea-lavender-doily", 24), ("lighthouse-bookmark", 9)):
        last = subject(demo(name)[0]).worked[-1]
        assert sum(len(one) for one in picots_of(last).values()) == many
        assert sum(isinstance(made, Made) and made.role == "picot" for made in last.made) == many


def test_rounds_have_them_too() -> None:
    first = "ch 1, 8 sc in ring, join"
    plain, picots = (
        piece_picture(worked(rounds(first, last)), "piece")
        for last in ("ch 1, sc in each st around, join", "ch 1, (sc in next 2 sts, ch-3 picot) x 4, join")
    )
    assert strokes(picots) - strokes(plain) == 2 * 4


@pytest.mark.parametrize(("high", "slits"), [(2.0, 1), (9.0, 0)])
def test_no_light_shows_through_a_slit(high: float, slits: int) -> None:
    """Chains that lie close above what they pass over, closer than their line is wide, show its ground."""
    canvas = Canvas()
    item = Item(Space(5, 1, "A"), 0.0, 1.0)
    placed = Placed(item, lambda across, up: (across * 9, up * high), 1.0, False, True)
    draw_row(canvas, 0, [placed], {"A": "#9a8bb5"})
    assert sum(len(shapes) for shapes in canvas._fills.values()) == slits
