"""The schematic of a flat piece shows, dashed, what begins on its stitches, where it stands."""

import re

import pytest

from loopleaf.draw import schematic
from loopleaf.draw.parts_outlined import part_outlines
from loopleaf.draw.subject import subject_of
from loopleaf.measure import measure
from tests.draw.test_begun_on_others import CLOTH, FAN, PLAIN, base, of, part, piece

WIDE = 5.0
DASHED = re.compile(r'<path [^>]*stroke-dasharray="1.2 1.2"[^>]*>')
FRONTS = (
    CLOTH
    + part("base, row: 8, stitches: 1-6", *[PLAIN] * 5, name="left")
    + part("base, row: 8, stitches: 15-20", *[PLAIN] * 3, name="right")
)


def test_they_lie_where_their_stitches_are() -> None:
    """Row 8 was made on the wrong side, its first stitch is the left one."""
    subject, measured = base(FRONTS)
    left, right = part_outlines(subject, measured)
    assert (left.title, right.title) == ("left", "right")
    for outline, side, rows in ((left, (-10, -4), 5), (right, (4, 10), 3)):
        xs, ys = zip(*outline.points, strict=True)
        assert (min(xs) / WIDE, max(xs) / WIDE) == pytest.approx(side)
        assert (min(ys) / WIDE, max(ys) / WIDE) == pytest.approx((8, 8 + rows))


def test_a_front_that_narrows_slopes() -> None:
    lines = [PLAIN, *["ch 1, sc2tog, sc in each st across, turn"] * 2]
    subject, measured = base(CLOTH + part("base, row: 8, stitches: 1-6", *lines))
    (outline,) = part_outlines(subject, measured)
    xs = [x / WIDE for x, y in outline.points if y == pytest.approx(11 * WIDE)]
    assert max(xs) - min(xs) == pytest.approx(4)


def test_the_schematic_draws_and_tells_them() -> None:
    figure = schematic(of(FRONTS), "base")
    assert figure is not None
    assert len(DASHED.findall(figure.svg)) == 2
    assert figure.alt.endswith("; dashed above it, what begins on it: left, right.")
    alone = schematic(of(CLOTH), "base")
    assert alone is not None
    assert not DASHED.findall(alone.svg)
    assert "begins on it" not in alone.alt


@pytest.mark.parametrize(
    "pieces",
    [
        CLOTH + part("base, row: 4, stitches: 1-6"),  # these stitches have others on them
        CLOTH + part("base, row ends: true", "ch 1, sc in end of each row, turn", PLAIN),
        FAN + part("base, row: 3, stitches: 4-9"),  # rows in an arc
        piece("base", "rows", "chain 81", "sc in 2nd ch from hook and in each ch across, turn", *[PLAIN] * 7)
        + part("base, row: 8, stitches: 4-9"),  # drawn shorter, with a break
    ],
)
def test_what_does_not_stand_straight_above_it_is_not_there(pieces: str) -> None:
    figure = schematic(of(pieces), "base")
    assert figure is not None
    assert "begins on it" not in figure.alt
    alone = of(pieces[: pieces.index("part:")])
    assert DASHED.findall(figure.svg) == DASHED.findall(getattr(schematic(alone, "base"), "svg", ""))


def test_a_part_shows_what_stands_on_it() -> None:
    work = of(FRONTS + part("left, row: 5, stitches: 1-2", name="strap"))
    subject = subject_of(work, work.pieces[1], measure(work))
    assert subject is not None
    assert [one.title for one in part_outlines(subject, measure(work))] == ["strap"]
