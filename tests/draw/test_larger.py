"""A long border's signs are small: its first corner is shown larger, and counts once all the same."""

import re

from loopleaf.draw import chart_of
from loopleaf.draw.chart_larger import LEAST, READ_AT_EASE, Place, place_of
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_print import printed_scale
from loopleaf.draw.signs import UNIT
from loopleaf.measure import measure
from loopleaf.publish.drawing import drawn_size

from .pieces import SVG, charted, demo, subject, tree
from .test_border import LONG, SHORT, blanket

BOX = (-330.0, -430.0, 330.0, 430.0)


def _place() -> Place:
    found = place_of(lay_out(subject(demo("harbour-square")[0], "border")), BOX)
    assert found is not None
    return found


def test_the_blanket_s_border_has_its_corner_larger() -> None:
    svg = charted("harbour-square", "border").svg()
    wide, high = drawn_size(svg)
    scale = printed_scale(wide, high)
    assert scale < READ_AT_EASE
    assert scale * UNIT * _place().times > 4.0  # millimetres, in print
    assert "The framed corner is shown larger in the middle." in re.sub("</text><text[^>]*>", " ", svg)


def test_it_says_nothing_of_itself_twice() -> None:
    root = tree(charted("harbour-square", "border").svg())
    (larger,) = (group for group in root.iter(f"{SVG}g") if "scale(" in group.get("transform", ""))
    signs = [*larger.iter(f"{SVG}use")]
    assert len(signs) > 10
    assert not [sign for sign in larger.iter() if sign.get("data-kind") or sign.get("data-stitch")]


def test_it_lies_within_what_the_border_goes_around() -> None:
    layout, place = lay_out(subject(demo("harbour-square")[0], "border")), _place()
    xs = [x for line in layout.outline for x, _ in line]
    ys = [-y for line in layout.outline for _, y in line]
    left, top, right, bottom = place.frame
    assert min(xs) < left < right < max(xs)
    assert min(ys) < top < bottom < max(ys)
    assert place.times >= LEAST
    for start, end in layout.outline:  # not on a seam
        assert not (left < start[0] < right and start[0] == end[0])
        assert not (top < -start[1] < bottom and start[1] == end[1])


def test_a_left_hander_has_it_too() -> None:
    svg = charted("harbour-square", "border").svg("US", left_handed=True)
    assert re.search(r'scale\(-1 1\)".*scale\(1?2?\.\d+\)', svg)


def test_what_is_printed_large_has_none() -> None:
    work = blanket(LONG, SHORT)
    found = place_of(lay_out(subject(work, "border")), (-75.0, -55.0, 75.0, 55.0))
    assert found is None
    chart = chart_of(work, "border", measure(work))
    assert chart is not None
    assert "larger" not in chart.svg()


def test_a_piece_of_its_own_has_none_however_large() -> None:
    assert place_of(lay_out(subject(demo("tide-cloth")[0])), (-2000.0, -2000.0, 2000.0, 2000.0)) is None
