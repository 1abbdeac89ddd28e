"""Rows that gather or gain two stitches in their middle make a square around a corner."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw import diagram, piece_picture
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_mitred import Mitred, mitred
from loopleaf.draw.items import items_of_rows
from loopleaf.draw.mitre import Mitre, mitre_of
from loopleaf.draw.subject import subject_of
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import DEMO, demo, rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
IN = [f"ch 1, sc in next {by} sts, sc3tog, sc in next {by} sts, turn" for by in range(8, 0, -1)]
IN += ["ch 1, sc3tog"]
OUT = [f"ch 1, sc in next {by} sts, 3 sc in next st, sc in next {by} sts, turn" for by in range(1, 9)]
ASIDE = [f"ch 1, sc in next {by} sts, sc3tog, sc in each st across, turn" for by in (2, 2, 3, 3)]
ENDS = ["ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn"] * 8
WIDE = 5.0
"""A stitch, in mm, as high as it is wide."""


def box(text: str) -> list[float]:
    work = worked(text)
    found = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', piece_picture(work, "cloth", measure(work)))
    assert found is not None
    return [float(part) - 4 for part in found.groups()]


@pytest.mark.parametrize(("lines", "chain", "side", "inward"), [(IN, 20, 10.5, True), (OUT, 4, 9.5, False)])
def test_the_picture_is_a_square(lines: list[str], chain: int, side: float, inward: bool) -> None:
    """Half of its longest row and the height of a row along its outer edges; no trapezoid, twice as wide."""
    text = rows(FIRST, *lines, chain=chain)
    mitre = mitre_of(subject_from(text))
    assert mitre is not None
    assert mitre.inward == inward
    assert box(text) == pytest.approx([side * WIDE] * 2, abs=2.5)


@pytest.mark.parametrize("lines", [ASIDE, ENDS, ["ch 1, sc in each st across, turn"] * 5])
def test_rows_without_a_corner_in_their_middle_lie_straight(lines: list[str]) -> None:
    assert mitre_of(subject_from(rows(FIRST, *lines, chain=20))) is None


@pytest.mark.parametrize("name", DEMO)
def test_no_demo_has_a_mitred_square(name: str) -> None:
    work, measured = demo(name)
    subjects = [subject_of(work, piece, measured) for piece in work.pieces]
    assert all(mitre_of(one) is None for one in subjects if one is not None)


def test_points_lie_around_the_corner() -> None:
    """The first row's foot along the left and the lower side; inner rows end at the same edges."""
    mitre = Mitre(50.0, inward=True)
    assert [mitre.point(0.0, along, 0.0) for along in (0.0, 0.5, 1.0)] == [(0, 50), (0, 0), (50, 0)]
    assert [mitre.point(0.0, along, 10.0) for along in (0.0, 0.5, 1.0)] == [(10, 50), (10, 10), (50, 10)]
    outer = Mitre(5.0, inward=False)
    assert [outer.point(0.0, along, 10.0) for along in (0.0, 0.5, 1.0)] == [(-5, 10), (10, 10), (10, -5)]


def test_what_gathers_all_of_a_row_stands_on_all_of_it() -> None:
    """In a row nothing lies beyond its ends: the last of three stitches is not one before the first."""
    found = subject_from(rows(FIRST, *IN, chain=20))
    mirrored = [one.side != "WS" for one in found.piece.rounds]
    (last,) = items_of_rows(found.worked, mirrored, found.scale, found.piece.starts[0])[-1]
    assert last.foot == pytest.approx((0.0, 1.0), abs=0.01)
    assert (last.start, last.end) == pytest.approx((0.0, 1.0), abs=0.01)


CHARTED = [(IN, 20, True), (OUT, 4, False)]


@pytest.mark.parametrize(("lines", "chain", "inward"), CHARTED, ids=["inward", "outward"])
def test_the_charts_rows_bend_at_their_corner(lines: list[str], chain: int, inward: bool) -> None:
    """Half of each row stands upright on the line through the corner, the other half level on it."""
    layout = lay_out(subject_from(rows(FIRST, *lines, chain=chain)))
    for line in layout.lines[2:]:
        heads = [line.heads[id(thing)] for thing in line.things]
        half = len(heads) // 2
        left, corner, right = heads[:half], heads[half], heads[half + 1 :]
        side, level = (0, 1) if inward else (1, 0)
        assert corner[0] == pytest.approx(corner[1], abs=1.0)
        assert [at[side] for at in left] == pytest.approx([corner[0]] * half, abs=3.0)
        assert [at[level] for at in right] == pytest.approx([corner[0]] * half, abs=3.0)
        if half > 1:
            steps = [abs(a[1 - side] - b[1 - side]) for a, b in pairwise(left)]
            assert min(steps) > 9.0


@pytest.mark.parametrize(("lines", "chain", "inward"), CHARTED, ids=["inward", "outward"])
def test_no_sign_of_such_a_chart_lies_on_another(lines: list[str], chain: int, inward: bool) -> None:
    drawn = diagram(worked(rows(FIRST, *lines, chain=chain)))
    assert [
        (one.kind, other.kind) for share, one, other in overlaps(inked(drawn, "cloth")) if share > 0.1
    ] == []


@pytest.mark.parametrize("lines", [ASIDE, ENDS])
def test_the_chart_of_other_rows_has_no_corner(lines: list[str]) -> None:
    assert mitred(subject_from(rows(FIRST, *lines, chain=20))) is None


@pytest.mark.parametrize("inward", [True, False])
def test_straight_above_a_place_on_either_side(inward: bool) -> None:
    """There and back again; what stands on the corner stays there."""
    ground = Mitred(100.0, 12.0, inward)
    for along in (20.0, 160.0):
        carried = ground.carried(along, 20.0, 50.0)
        (x, y), (up_x, up_y) = ground.at(20.0, along), ground.at(50.0, carried)
        assert sorted((abs(up_x - x), abs(up_y - y))) == pytest.approx([0.0, 30.0])
        assert ground.carried(carried, 50.0, 20.0) == pytest.approx(along)
    assert ground.at(50.0, ground.carried(100.0, 20.0, 50.0)) == pytest.approx((50.0, 50.0))
