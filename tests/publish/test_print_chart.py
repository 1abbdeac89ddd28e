"""Charts for print: nothing is lost in merging, lines stay printable, large ones are parted with marks."""

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_print import (
    EDGE_MM,
    LARGEST,
    OVERLAP,
    PARTED,
    SMALLEST,
    TALLEST_MM,
    WIDEST_MM,
    parts_of,
    printed_scale,
)
from loopleaf.publish.print_chart import merged, parts
from loopleaf.trade import Terms
from tests.draw.pieces import DEMO, MAT, charted, demo, rows
from tests.measure.worked_patterns import worked

SVG = "{http://www.w3.org/2000/svg}"
POINT = 25.4 / 72
EVERYWHERE = (-1e6, -1e6, 2e6, 2e6)


def box(svg: str) -> tuple[float, ...]:
    return tuple(float(value) for value in svg.split('viewBox="', 1)[1].split('"', 1)[0].split())


def strokes(svg: str) -> int:
    """How many times a pen is put down."""
    return sum((path.get("d") or "").count("M") for path in ElementTree.fromstring(svg).iter(f"{SVG}path"))


def wrapped(inside: str) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg">{inside}</svg>'


def sample(inside: str) -> str:
    return wrapped(f'<defs><path id="a" d="M0 0L10 0"/></defs><g stroke="#123456">{inside}</g>')


@pytest.mark.parametrize(
    ("transform", "end"),
    [
        ("translate(5 3)", "M5 3H15"),
        ("translate(5 3)rotate(90)", "M5 3V13"),
        ("translate(5 3)scale(2 1)", "M5 3H25"),
        ("scale(-1 1)", "M0 0H-10"),
    ],
)
def test_a_sign_lands_where_it_was_put(transform: str, end: str) -> None:
    assert end in merged(sample(f'<use href="#a" transform="{transform}"/>'), EVERYWHERE)


def test_signs_of_one_look_share_a_path_and_others_do_not() -> None:
    inside = (
        '<use href="#a" x="1"/><use href="#a" x="2"/>'
        '<g stroke-opacity=".5" fill-opacity=".5"><use href="#a" x="3"/></g>'
        '<g stroke-dasharray="1 1"><use href="#a" x="4"/></g>'
    )
    found = merged(sample(inside), EVERYWHERE)
    assert found.count("<path") == 3
    assert 'stroke-opacity=".5" fill-opacity=".5"' in found
    assert 'stroke-dasharray="1 1"' in found


def test_words_stay_upright_words() -> None:
    found = merged(wrapped('<text x="3" y="4" font-size="9" text-anchor="end">a &lt; b</text>'), EVERYWHERE)
    assert "matrix(1 0 0 1 3 4)" in found
    assert ">a &lt; b</text>" in found


def test_what_does_not_reach_a_part_is_left_out() -> None:
    inside = '<use href="#a" x="0"/><use href="#a" x="5000"/>'
    assert merged(sample(inside), (0, 0, 100, 100)).count("M") == 1


def test_a_whole_chart_keeps_every_sign() -> None:
    svg = diagram(*demo("lantern-pouch")[:1], "pouch", "US", False, demo("lantern-pouch")[1])
    uses = [use.get("href", "")[1:] for use in ElementTree.fromstring(svg).iter(f"{SVG}use")]
    defined = {p.get("id"): p.get("d", "") for p in ElementTree.fromstring(svg).iter(f"{SVG}path")}
    drawn = [way for name in uses if (way := defined.get(name))]
    (only,) = parts(svg)
    assert strokes(only.svg) >= sum(len(re.findall("[Mm]", way)) for way in drawn) > 500
    assert only.svg.count("<path") < 30
    assert only.place == ""
    texts = len(list(ElementTree.fromstring(svg).iter(f"{SVG}text")))
    assert len(list(ElementTree.fromstring(only.svg).iter(f"{SVG}text"))) == texts


@pytest.mark.parametrize("long", [9, 60, 400])
def test_lines_are_a_quarter_point_at_least_and_parts_fit_the_page(long: int) -> None:
    work = worked(rows(*["ch 1, sc in each st across, turn"] * long, chain=60))
    svg = diagram(work, "cloth")
    for part in parts(svg):
        _, _, wide, high = box(part.svg)
        scale = part.wide_mm / wide
        assert SMALLEST - 1e-6 <= scale <= LARGEST + 1e-6
        assert 0.9 * scale >= 0.25 * POINT
        assert part.wide_mm <= WIDEST_MM + 0.1
        assert high * scale <= TALLEST_MM + 0.1


def test_a_large_chart_is_parted_from_the_bottom_up_with_its_overlap_marked() -> None:
    work, measured = demo("ebb-scarf")
    svg = diagram(work, "scarf", "US", False, measured)
    found = parts(svg)
    assert [part.place for part in found] == [f"{n} of {len(found)}" for n in range(1, len(found) + 1)]
    assert len(found) > 1
    tops = [box(part.svg)[1] for part in found]
    assert tops == sorted(tops, reverse=True)
    for lower, upper in pairwise(found):
        assert box(upper.svg)[1] + box(upper.svg)[3] == pytest.approx(box(lower.svg)[1] + OVERLAP, abs=0.3)
    marks = [part.svg.count('stroke-dasharray="6 4"') for part in found]
    assert marks == [1, *[2] * (len(found) - 2), 1]


@pytest.mark.parametrize("size", [(1200.0, 300.0), (300.0, 3000.0), (1500.0, 1500.0)])
def test_parts_are_printed_as_large_as_their_pages_have_room(size: tuple[float, float]) -> None:
    scale = printed_scale(*size)
    across, down = parts_of(*size, PARTED)
    assert (across, down) == parts_of(*size, scale), "no page more than at the least size"
    assert parts_of(*size, 1.02 * scale) != (across, down) or scale == LARGEST
    assert scale >= PARTED


def test_no_number_is_cut_at_the_edge_of_a_part_or_struck_by_its_mark() -> None:
    svg = charted("ebb-scarf", "scarf").svg()
    everywhere: set[str] = set()
    for part in parts(svg):
        _, top, _, high = box(part.svg)
        read = ElementTree.fromstring(part.svg)
        marks = [
            str(path.get("d")) for path in read.iter(f"{SVG}path") if path.get("stroke-dasharray") == "6 4"
        ]
        drawn = [line for way in marks for line in re.findall(r"M(\S+) (\S+)h([\d.]+)", way)]
        lines = [tuple(float(value) for value in line) for line in drawn]
        assert lines
        for text in read.iter(f"{SVG}text"):
            if not (text.text or "").isdigit():
                continue
            everywhere.add(text.text or "")
            size = float(text.get("font-size") or 0)
            x, y = (float(value) for value in re.findall(r"[-\d.]+", str(text.get("transform")))[4:])
            assert top <= y - 0.7 * size
            assert y <= top + high
            half = 0.3 * size * len(text.text or "")
            for left, level, long in lines:
                assert not (y - 0.7 * size < level < y and left < x + half and x - half < left + long)
    assert len(everywhere) == len(re.findall(r">\d+</text>", svg)), "each is in one of them"


def wide_chart() -> str:
    """Rows too long for one page."""
    more = ["ch 1, sc in each st across, turn"] * 29
    return diagram(
        worked(rows("sc in 2nd ch from hook and in each ch across, turn", *more, chain=181)), "cloth"
    )


def test_every_row_has_its_number_where_a_chart_is_cut() -> None:
    found = parts(wide_chart())
    assert len(found) > 2
    for at, part in enumerate(found):
        x, _, wide, _ = box(part.svg)
        room = EDGE_MM * wide / part.wide_mm
        sides = [(x, x + room)] * (at > 0) + [(x + wide - room, x + wide)] * (at < len(found) - 1)
        light = [text for text in ElementTree.fromstring(part.svg).iter(f"{SVG}text") if text.get("x")]
        for left, right in sides:
            beside = [text for text in light if left < float(text.get("x") or 0) < right]
            assert [text.text for text in beside] == [str(row) for row in range(1, 31)]
            assert all(text.get("fill-opacity") for text in beside)
            levels = [float(text.get("y") or 0) for text in beside]
            steps = [a - b for a, b in pairwise(levels)]
            assert max(steps) - min(steps) < 0.5, "each beside its row"
        assert len(light) == 30 * len(sides)
        assert part.wide_mm <= WIDEST_MM + 0.1


def test_a_chart_cut_between_its_rows_needs_no_numbers_at_its_edges() -> None:
    for part in parts(charted("ebb-scarf", "scarf").svg()):
        assert not [text for text in ElementTree.fromstring(part.svg).iter(f"{SVG}text") if text.get("x")]


def test_the_mark_of_an_overlap_ends_above_the_key() -> None:
    svg = wide_chart()
    key = float(ElementTree.fromstring(svg).get("data-key-from") or 0)
    lines = 0
    for part in parts(svg):
        _, top, _, high = box(part.svg)
        assert key < top + high
        for dashes in re.findall(r'stroke-dasharray="6 4" d="([^"]+)"', part.svg):
            for y, long in re.findall(r"M\S+ (\S+?)v([\d.]+)", dashes):
                assert float(y) + float(long) <= key + 0.1
                lines += 1
    assert lines >= 4


def test_print_needs_no_colour() -> None:
    """What only repeats is lighter by its opacity, yarns differ by their dashes."""
    work = worked(MAT)
    (only,) = parts(diagram(work, "mat"))
    assert "class=" not in only.svg
    assert "<style" not in only.svg


@pytest.mark.parametrize("name", DEMO)
@pytest.mark.parametrize("terms", ["US", "UK"])
def test_words_numbers_and_arrows_are_printed_legibly(name: str, terms: Terms) -> None:
    """6.5 points at least, however large the chart: in every part of it."""
    looked_at = 0
    for piece in demo(name)[0].pieces:
        if not piece.rounds:
            continue
        svg = charted(name, piece.name).svg(terms)
        for part in parts(svg):
            scale = part.wide_mm / box(part.svg)[2] / POINT
            sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)"', part.svg)]
            arrows = [float(size) for size in re.findall(r'[" ]scale\(([\d.]+)\)" d="M-2.4 -1.7', svg)]
            assert arrows
            assert all(size * scale > 6.49 for size in sizes)
            assert all(4.8 * size * scale > 4.6 for size in arrows)
            looked_at += len(sizes)
    assert looked_at > 8
