"""Rows that look alike are written once, and the chart still shows and says all of them."""

import re
from collections import Counter
from collections.abc import Sequence
from math import dist
from xml.etree import ElementTree

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.canvas import Point
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.pen_again import UNSEEN, used_again
from loopleaf.publish.print_chart import merged
from tests.draw.engraving import place_of
from tests.measure.worked_patterns import worked

from .pieces import SVG, charted, demo, marked, rows, subject, tree

CLOTH = rows(
    "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn",
    *["ch 3 (counts as dc), dc in next 7 sts, turn"] * 40,
    chain=10,
)


def signs(places: Sequence[Point], look: str = "x") -> list[tuple[Point, str]]:
    return [(place, look) for place in places]


ROW = [(0.0, 0.0), (10.0, 0.5), (20.0, 0.0), (30.0, 0.5)]


def test_what_is_only_moved_is_used_again() -> None:
    moved = [(x - 3.0, y + 7.0) for x, y in ROW]
    found = used_again([signs(ROW), signs(moved)])
    assert [*found] == [1]
    assert found[1][0] == 0
    assert found[1][1] == pytest.approx((-3.0, 7.0))


@pytest.mark.parametrize(
    "other",
    [
        signs([*ROW[:3], (30.0, 0.5 + 3 * UNSEEN)]),
        signs(ROW, "o"),
        signs(ROW[:3]),
        [*signs(ROW), "<circle/>"],
    ],
    ids=["elsewhere", "another sign", "fewer", "with more"],
)
def test_what_looks_different_is_not(other: list[str | tuple[Point, str]]) -> None:
    assert not used_again([signs(ROW), other])


def test_few_signs_are_written_as_they_are() -> None:
    assert not used_again([signs(ROW[:2]), signs(ROW[:2])])


def test_a_long_scarf_is_written_in_a_quarter() -> None:
    drawn = charted("ebb-scarf", "scarf").svg()
    assert len(marked(drawn)) > 6000
    assert len(drawn) < 150_000
    assert drawn.count("data-like") > 100


@pytest.mark.parametrize("left", [False, True], ids=["right", "left"])
def test_every_row_has_its_group_and_every_sign_its_number(left: bool) -> None:
    """What the page's script reads, once it has written the rows out."""
    work, _ = demo("ebb-scarf")
    drawn = charted("ebb-scarf", "scarf").svg("US", left)
    bare = ElementTree.fromstring(drawn)
    labels = [group.get("data-round") for group in bare.iter(f"{SVG}g") if group.get("data-round")]
    assert [label for label in dict.fromkeys(labels) if label != "0"] == [str(at + 1) for at in range(140)]
    ids = [one.get("id") for one in bare.iter() if one.get("id")]
    assert len(ids) == len(set(ids))
    uses = [use for use in bare.iter(f"{SVG}use") if use.get("data-like")]
    assert uses
    assert all(str(use.get("href")).removeprefix("#") in ids for use in uses)
    piece = work.piece("scarf")
    assert piece is not None
    for label in ("2", "31", "86", "140"):
        counted = [
            int(sign.get("data-stitch") or 0) for sign in marked(drawn) if sign.get("data-round") == label
        ]
        assert [number for number in counted if number] == list(range(1, 44))


def test_rows_that_are_used_again_stand_where_they_were_laid() -> None:
    found = subject(worked(CLOTH))
    layout = lay_out(found)
    drawn = diagram(worked(CLOTH))
    assert drawn.count("data-like") > 30
    for at in (5, 20, 40):
        feet = [places[0] for places in layout.lines[at].feet.values()]
        stems = [
            place_of(sign)
            for sign in marked(drawn)
            if sign.get("data-round") == str(at + 1) and sign.get("data-kind") == "dc"
        ]
        assert len(stems) == 7
        for x, y in stems:
            assert min(dist((x, y), (fx, -fy)) for fx, fy in feet) < 0.25


def test_print_has_every_row() -> None:
    """The same in print, wherever a page begins, as if every sign had been written by itself."""
    drawn = charted("ebb-scarf", "scarf").svg()
    written = ElementTree.tostring(tree(drawn), encoding="unicode")
    wide, high = (float(size) for size in re.findall(r'viewBox="0 0 (\S+) ([^"]+)"', drawn)[0])
    for box in ((0.0, 0.0, wide, high), (0.0, high * 0.4, wide, high * 0.1)):
        assert _strokes(merged(drawn, box)) == _strokes(merged(written, box))


def _strokes(merged_parts: str) -> Counter[tuple[str, int]]:
    return Counter((look, way.count("M")) for look, way in re.findall(r'<path(.*?) d="(.*?)"', merged_parts))


def test_rows_worked_alike_lie_alike() -> None:
    """A long cloth's rows would else settle by a hair's breadth from one to the next."""
    lines = lay_out(subject(demo("ebb-scarf")[0], "scarf")).lines
    for before, line in zip(lines[40:], lines[42:], strict=False):
        pairs = zip(before.things, line.things, strict=True)
        steps = [
            (line.heads[id(b)][0] - before.heads[id(a)][0], line.heads[id(b)][1] - before.heads[id(a)][1])
            for a, b in pairs
        ]
        assert max(dist(step, steps[0]) for step in steps) < 1e-6
