"""A border around pieces laid out: a frame in picture and chart, its sides as long as the whole's."""

from dataclasses import replace
from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import chart_of, first_picture, piece_picture
from loopleaf.draw.border import bordered, spots_of
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.form import form_of
from loopleaf.draw.section import Rectangle
from loopleaf.draw.signs import UNIT
from loopleaf.draw.stand import stand_of
from loopleaf.fabric import Made, PatternWork
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import demo, subject, tree

SQUARE = (
    "  square: {make: 6, yarn: A, worked: joined rounds, start: magic ring, rounds: ["
    '{round: 1, work: "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join, '
    'fasten off"}]}\n'
)
SHORT = "sc in next 3 dc, sc in next 2 ch-2 sps, sc in next 3 dc"
LONG = "(sc in next 3 dc, sc in next 2 ch-2 sps) x 2, sc in next 3 dc"
CORNER = "(sc, ch 2, sc) in next ch-2 sp"
LAY = "finishing:\n  - lay out: {piece: square, across: 3, down: 2}\n"


def blanket(first: str, second: str) -> PatternWork:
    """Three squares by two with a border that begins along a side."""
    line = (
        f"join B with sc in any corner sp, (ch 2, sc) in same sp, {first}, {CORNER}, {second}, {CORNER}, "
        f"{first}, {CORNER}, {second}, join, fasten off"
    )
    border = (
        "  border: {yarn: B, worked: joined rounds, start: {edge: square, laid out: true}, "
        f'rounds: [{{round: 1, work: "{line}"}}]}}\n'
    )
    work = worked(SQUARE + border, LAY)
    assert not [t for piece in work.pieces for r in piece.rounds for t in r.troubles]
    return work


def box_of(svg: str) -> tuple[float, float]:
    """How wide and how high a drawing is, in mm."""
    _, _, wide, high = map(float, str(tree(svg).get("viewBox")).split())
    return wide, high


@pytest.mark.parametrize("lines", [(LONG, SHORT), (SHORT, LONG)])
def test_each_side_of_the_border_stands_on_that_side_of_the_whole(lines: tuple[str, str]) -> None:
    """Along three squares 3 × 3 doubles, two spaces at each seam; along two 8; two a corner."""
    border = subject(blanket(*lines), "border")
    stand, (items,) = stand_of(border)
    assert stand.section == Rectangle(wide=14 * 5.0, high=9 * 5.0)
    stitches = [item for item in items if hasattr(item.thing, "kind")]
    along = [sum(int(item.middle % 1.0 * 4) == side for item in stitches) for side in range(4)]
    assert along == [13 + 2, 8 + 2, 13 + 2, 8 + 2]
    for item in stitches:
        foot = sum(item.foot) / 2
        off = dist(stand.section.at(0.0, foot), stand.section.at(0.0, item.middle))
        assert off < 3 * 5.0, "it leans to no other part of the edge"


def test_the_places_of_the_whole_lie_side_by_side_with_its_corners_in_the_corners() -> None:
    border = subject(blanket(LONG, SHORT), "border")
    whole = bordered(border)
    assert whole is not None
    spots = [spots_of(whole, border)[id(place)] for place in border.piece.starts[0]]
    assert all(a.end == pytest.approx(b.start, abs=0.01) for a, b in pairwise(spots))
    corners = [(spots[at].start + spots[at].end) / 2 for at in whole.at]
    assert corners == pytest.approx([0.0, 0.25, 0.5, 0.75])


def test_the_picture_has_the_border_around_the_pieces() -> None:
    work, measured = demo("harbour-square")
    alone = replace(work, pieces=[piece for piece in work.pieces if piece.name != "border"])
    wide, high = box_of(first_picture(work, measured))
    within_wide, within_high = box_of(first_picture(alone, measured))
    rise = measured.pieces[1].rounds[0][0]
    assert rise is not None
    assert wide - within_wide == pytest.approx(2 * rise.rise_mm, abs=2.5)
    assert high - within_high == pytest.approx(2 * rise.rise_mm, abs=2.5)


def test_the_border_alone_is_a_frame_as_large_as_its_stitches() -> None:
    work = blanket(LONG, SHORT)
    wide, high = box_of(piece_picture(work, "border", measure(work)))
    margins = 2 * 2.0
    assert wide == pytest.approx(14 * 5.0 + 2 * 5.0 + margins, abs=2.5)
    assert high == pytest.approx(9 * 5.0 + 2 * 5.0 + margins, abs=2.5)


def test_its_measures_show_the_whole_its_longer_side_across() -> None:
    form = form_of(subject(blanket(LONG, SHORT), "border"))
    xs, ys = zip(*form.edge, strict=True)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx((80.0, 55.0))
    assert form.lying


def test_its_chart_is_a_rectangle_of_the_same_sides() -> None:
    border = subject(blanket(LONG, SHORT), "border")
    (line,) = lay_out(border).lines
    assert isinstance(line.ground, Rectangle)
    xs, ys = zip(*line.heads.values(), strict=True)
    sides = (line.ground.wide + 2 * line.high, line.ground.high + 2 * line.high)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx(sides, rel=0.05)
    assert (line.ground.wide, line.ground.high) == (14 * UNIT, 9 * UNIT)


TALL = (
    "join B with sl st in any corner sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *dc in each dc "
    "and ch-sp to next corner sp, (2 dc, ch 2, 2 dc) in corner sp; rep from * 2 more times, "
    "dc in each dc and ch-sp around, join"
)


def test_each_foot_stands_on_its_place_on_the_edge_and_its_head_straight_outside() -> None:
    """14 places by 9, 10 units each: a stitch along a side stands over the place that it goes into."""
    border = (
        "  border: {yarn: B, worked: joined rounds, start: {edge: square, laid out: true}, "
        f'rounds: [{{round: 1, work: "{TALL}"}}]}}\n'
    )
    found = subject(worked(SQUARE + border, LAY), "border")
    laid = lay_out(found).lines[0]
    half_wide, half_high = 7 * UNIT, 4.5 * UNIT
    whole = bordered(found)
    assert whole is not None
    corners = {id(found.piece.starts[0][at]) for at in whole.at}
    alone = 0
    for thing in laid.things:
        if isinstance(thing, Made):
            ((x, y),) = laid.feet[id(thing)]
            off = max(abs(x) - half_wide, abs(y) - half_high)
            assert 0 <= off < 3, "it stands just outside of the edge"
            if not corners & set(map(id, thing.into)):
                head_x, head_y = laid.heads[id(thing)]
                aside = head_x - x if abs(y) - half_high > abs(x) - half_wide else head_y - y
                assert abs(aside) < 3.0
                alone += 1
    assert alone == 2 * (13 + 8)


def test_its_chart_shows_the_edge_that_it_stands_on_and_the_seams() -> None:
    """Three squares by two: four upright lines and three level ones."""
    work = blanket(LONG, SHORT)
    layout = lay_out(subject(work, "border"))
    half_wide, half_high = 7 * UNIT, 4.5 * UNIT
    upright = [x for (x, _), (other, _) in layout.outline if x == other]
    level = [y for (_, y), (_, other) in layout.outline if y == other]
    assert upright == pytest.approx([-half_wide, -half_wide / 3, half_wide / 3, half_wide])
    assert level == pytest.approx([-half_high, 0, half_high])
    chart = chart_of(work, "border")
    assert chart is not None
    said = "The lighter lines are the edge that the border goes around and its seams."
    assert said in [line.words for line in chart.key()]
    plain = chart_of(work, "square")
    assert plain is not None
    assert not any("lighter lines" in line.words for line in plain.key())
