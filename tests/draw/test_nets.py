"""A net of arches hangs as wide as what it hangs on; gathered rows stand in folds."""

import re

import pytest

from loopleaf.draw import piece_picture
from loopleaf.draw.chart_ground import Straight
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.nets import as_hung
from loopleaf.draw.ruffle import ruffled
from loopleaf.draw.sheet import Sheet
from loopleaf.draw.subject import subject_of
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import DEMO, demo, rows, subject_from

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
NET = (
    "ch 1, sc in first st, *ch 5, sk 2 sts, sc in next st; rep from * across, turn",
    "ch 5 (counts as dc, ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, "
    "dc in last st, turn",
)
ARCHES = "ch 1, sc in first st, *ch 5, sk 3 sts, sc in next st; rep from * across, turn"
FANS = "ch 1, *(sc, hdc, dc, hdc, sc) in next ch-5 sp; rep from * across"
FULL = "ch 3 (counts as dc), 2 dc in same st, 3 dc in each st across, turn"
DOUBLE = "ch 3 (counts as dc), dc in each st across, turn"
WIDE = 5.0
"""A stitch, in mm."""


def wide(*lines: str, chain: int) -> float:
    work = worked(rows(*lines, chain=chain))
    found = re.search(r'viewBox="\S+ \S+ (\S+) ', piece_picture(work, "cloth", measure(work)))
    assert found is not None
    return float(found[1]) - 4


def test_a_net_is_as_wide_as_its_beginning() -> None:
    """Forty stitches, over which thirteen arches of five chains would reach twice as far laid straight."""
    assert wide(FIRST, *NET, chain=41) == pytest.approx(40 * WIDE, rel=0.06)


def test_fans_on_arches_are_as_wide_as_the_arches() -> None:
    """Five stitches over four: drawn in to the width of the cloth below."""
    assert wide(FIRST, PLAIN, ARCHES, FANS, chain=22) == pytest.approx(21 * WIDE, rel=0.06)


def test_cloth_that_really_widens_keeps_its_own_widths() -> None:
    grows = subject_from(rows(FIRST, *["ch 1, 2 sc in first st, sc in each st across, turn"] * 4))
    assert [one.length_mm for one in as_hung(grows).sizes] == [one.length_mm for one in grows.sizes]
    chained = "ch 3 (counts as dc), *ch 1, dc in next st; rep from * across, turn"
    full = subject_from(rows(FIRST, chained))
    assert as_hung(full).sizes[1].length_mm > 1.6 * full.sizes[0].length_mm


def test_a_gathered_row_spreads_no_further_than_it_is_high_and_folds() -> None:
    """Thirty-six double crochets on twelve stitches, each by its own height at either end."""
    found = subject_from(rows(FIRST, PLAIN, FULL, DOUBLE, chain=13))
    gathered = ruffled(found, Sheet(0.0, 0.0))
    assert gathered is not None
    shown, ruffle = gathered
    lengths = [one.length_mm for one in shown.sizes]
    assert lengths[:2] == [60, 60]
    assert 60 < lengths[2] <= 60 + 2 * found.sizes[2].rise_mm
    tops = [ruffle.point(lengths[-1], along / 100, shown.sizes[-1].height_mm)[1] for along in range(101)]
    assert max(tops) - min(tops) > 1.0
    assert ruffle.point(60, 0.3, ruffle.begins) == Sheet(0.0, 0.0).point(60, 0.3, ruffle.begins)


@pytest.mark.parametrize(
    "lines", [(PLAIN,), ("ch 1, 2 sc in first st, sc in each st across, turn",), NET[:1]]
)
def test_what_lies_flat_has_no_folds(lines: tuple[str, ...]) -> None:
    assert ruffled(as_hung(subject_from(rows(FIRST, *lines))), Sheet(0.0, 0.0)) is None


@pytest.mark.parametrize("name", DEMO)
def test_no_demo_ruffles(name: str) -> None:
    work, measured = demo(name)
    subjects = [subject_of(work, piece, measured) for piece in work.pieces]
    assert all(ruffled(as_hung(one), Sheet(0.0, 0.0)) is None for one in subjects if one and one.in_rows)


def test_the_chart_of_a_net_has_straight_rows() -> None:
    """Its chains aren't taken for growth: no arc."""
    meshes = "ch 1, sc in next dc, *ch 5, sc in next ch-5 sp; rep from * across, leave remaining sts unworked"
    net = subject_from(rows(FIRST, *NET, meshes, chain=41))
    assert type(lay_out(net).ground) is Straight


POSTS = "ch 3 (counts as dc), FPdc around next st, dc in next st and in each st across, turn"


def test_a_row_with_a_post_stitch_is_as_wide_as_the_others() -> None:
    """What post stitches draw in is less sure than a plain stitch's width: that makes no row wider."""
    piece = subject_from(rows("dc in 4th ch from hook and in each ch across, turn", POSTS, DOUBLE, chain=18))
    assert [one.length_mm for one in as_hung(piece).sizes] == pytest.approx([16 * WIDE] * 3)


TWICE = "ch 1, 2 sc in each st across, turn"


TOGETHER = "ch 1, (sc2tog) 5 times, turn"


@pytest.mark.parametrize("line", [TWICE, TOGETHER])
def test_the_chart_of_gathered_rows_is_straight(line: str) -> None:
    """Twice as many stitches in a row, or half as many: these stand twice as far apart, and no row bends."""
    layout = lay_out(subject_from(rows(FIRST, PLAIN, line, PLAIN)))
    assert isinstance(layout.ground, Straight)
    for one in layout.lines:
        highs = [high for _, high in one.heads.values()]
        assert max(highs) - min(highs) < 2.0
    wides = [one.xs[-1] - one.xs[0] for one in layout.lines]
    assert min(wides) > 0.85 * max(wides)


def test_a_cloth_that_grows_row_by_row_is_an_arc() -> None:
    """Near miss: ten stitches more in each of four rows."""
    tens = [f"ch 1, (2 sc in next st, sc in next {by} sts) x 10, turn" for by in range(1, 4)]
    piece = subject_from(rows(FIRST, TWICE, *tens))
    assert not isinstance(lay_out(piece).ground, Straight)
