"""Shapes collected by colour, and how they are written."""

import pytest

from loopleaf.draw.canvas import Canvas, number, svg

from .pieces import SVG, tree


def inks(canvas: Canvas) -> list[str | None]:
    """The colours of its paths in the order drawn."""
    body = canvas.body("#00000f", 0.2, "", canvas.box)
    return [path.get("stroke") or path.get("fill") for path in tree(f"<g>{body}</g>")]


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.001, "0"), (1.5, "1.5"), (-0.25, "-.25"), (10.0, "10"), (2.006, "2.01")],
)
def test_numbers_are_short(value: float, text: str) -> None:
    assert number(value) == text


def test_a_path_goes_from_point_to_point_and_down_is_down() -> None:
    canvas = Canvas()
    canvas.fill(0, "#112233", [(0.0, 0.0), (1.0, 0.0), (1.0, 2.5), (-0.5, 2.5)])
    assert canvas.body("#000000", 1.0, "", canvas.box) == '<path fill="#112233" d="M0 0l1 0 0-2.5-1.5 0z"/>'


def test_no_rounding_adds_up() -> None:
    canvas = Canvas()
    canvas.line(0, "#112233", 1.0, [(at * 0.0149, 0.0) for at in range(1001)])
    way = canvas.body("#000000", 1.0, "", canvas.box).split(' d="M0 0l')[1].split('"')[0].replace("-", " -")
    across = [float(figure) for figure in way.split()][::2]
    assert sum(across) == pytest.approx(14.9, abs=0.011)


def test_layers_are_drawn_in_order_and_outlines_beneath() -> None:
    canvas = Canvas()
    square = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0)]
    canvas.line(2, "#000002", 0.5, square)
    canvas.fill(1, "#000001", square)
    canvas.fill(3, "#000003", square)
    canvas.fill(1, "#000001", square)
    canvas.outline(square)
    drawn = [
        p.get("stroke") or p.get("fill")
        for p in tree(f"<g>{canvas.body('#00000f', 0.2, '', canvas.box)}</g>")
    ]
    assert drawn == ["#00000f", "#000001", "#000002", "#000003"]


def test_the_box_holds_lines_with_their_width() -> None:
    canvas = Canvas()
    assert canvas.box == (0.0, 0.0, 0.0, 0.0)
    canvas.line(0, "#000000", 2.0, [(0.0, 0.0), (10.0, 5.0)])
    canvas.fill(0, "#000000", [(3.0, -8.0), (4.0, 0.0), (5.0, 0.0)])
    assert canvas.box == (-1.0, -6.0, 11.0, 8.0)


def test_a_pasted_canvas_lies_at_its_place_and_lower() -> None:
    small, large = Canvas(), Canvas()
    small.fill(2, "#000001", [(-1.0, -2.0), (1.0, -2.0), (1.0, 2.0)])
    small.line(1001, "#000002", 0.4, [(0.0, 0.0), (0.0, 2.0)])
    large.paste(small, 50, 10.0, 20.0, 0.5)
    assert large.box == pytest.approx((9.0, -21.2, 11.0, -19.0))
    drawn = [
        p.get("stroke") or p.get("fill") for p in tree(f"<g>{large.body('#000000', 1.0, '', large.box)}</g>")
    ]
    assert drawn == ["#000002", "#000001"]


def test_a_title_is_escaped_and_the_view_has_a_margin() -> None:
    root = tree(svg("", (0.0, 0.0, 10.0, 5.0), "Sea & <sand>", 2.0))
    assert root.get("viewBox") == "-2 -2 14 9"
    assert root.findtext(f"{SVG}title") == "Sea & <sand>"


def test_what_is_stamped_twice_is_written_once_and_used_in_its_places() -> None:
    canvas, row, other = Canvas(), Canvas(), Canvas()
    row.fill(1, "#112233", [(0.0, 0.0), (1.0, 0.0), (1.0, 2.5)])
    row.line(0, "#112244", 1.0, [(0.0, 0.0), (1.0, 2.5)])
    other.fill(0, "#112255", [(5.0, 0.0), (7.0, 0.0), (7.0, 2.0)])
    for at in (0, 2):
        canvas.stamp(row, at, 10.0 * at)
    canvas.stamp(other, 1, 10.0)
    assert canvas.box == pytest.approx((-0.5, -23.0, 7.0, 0.5))
    drawn = tree(f"<g>{canvas.body('#000000', 1.0, 'rows', canvas.box)}</g>")
    assert [part.tag for part in drawn] == ["defs", "use", "g", "use"]
    assert [(use.get("href"), use.get("y")) for use in drawn.iter("use")] == [
        ("#rows-1", "0"),
        ("#rows-1", "-20"),
    ]
    assert drawn[2].get("transform") == "translate(0 -10)"
    inks = [path.get("stroke") or path.get("fill") for path in drawn.iter("path")]
    assert inks == ["#112244", "#112233", "#112255"]


def test_a_large_drawing_is_written_to_the_twentieth_of_a_millimetre() -> None:
    canvas = Canvas()
    canvas.fill(0, "#112233", [(0.01, 0.0), (200.02, 0.0), (200.02, 0.04)])
    assert 'd="M0 0l200 0 0-.05z"' in canvas.body("#000000", 1.0, "", canvas.box)


def test_a_canvas_laid_over_another_keeps_its_layers_and_outlines() -> None:
    below, over = Canvas(), Canvas()
    below.fill(7, "#00000a", [(0, 0), (1, 0), (1, 1)])
    over.outline([(0, 0), (1, 0), (1, 1)])
    over.fill(-1, "#00000b", [(0, 0), (1, 0), (1, 1)])
    over.line(1200, "#00000c", 1.0, [(0, 0), (1, 1)])
    below.lay(over, 100, "#00000d", 0.3)
    drawn = [
        p.get("stroke") or p.get("fill") for p in tree(f"<g>{below.body('#000000', 1.0, '', below.box)}</g>")
    ]
    assert drawn == ["#00000a", "#00000d", "#00000b", "#00000c"]
