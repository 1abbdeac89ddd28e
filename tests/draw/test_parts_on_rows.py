"""Pieces in rows that begin on a flat piece's stitches or row ends stand there in its picture."""

import re

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.laid_row import LaidRow
from loopleaf.draw.parts_on_rows import with_parts
from loopleaf.draw.subject import subject_of
from loopleaf.draw.uneven_rows import laid_unevenly
from loopleaf.fabric import PatternWork
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

WIDE = 5.0
"""A stitch of the gauge that these patterns have, in mm, is as high as it is wide."""

PLAIN = "ch 1, sc in each st across, turn"

BODY = f"""\
body:
  yarn: A
  worked: rows
  start: chain 13
  rows:
    - {{row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, turn", count: 12}}
    - {{rows: 2-4, work: "{PLAIN}", count: 12}}
"""


def part(name: str, on: str, many: int, high: int = 3, yarn: str = "B", side: str = "RS") -> str:
    """A plain piece that begins there. on: the fields of its start."""
    return f"""\
{name}:
  yarn: {yarn}
  worked: rows
  start: {{{on}}}
  rows:
    - {{row: 1, side: {side}, work: "{PLAIN}", count: {many}}}
    - {{rows: 2-{high}, work: "{PLAIN}", count: {many}}}
"""


def of(*pieces: str) -> PatternWork:
    work = worked("".join(pieces))
    assert not work.problems, work.problems
    return work


def parts(work: PatternWork) -> tuple[list[int], list[LaidRow] | None]:
    """Which rows begin a part on the first piece, and where all of them lie."""
    measured = measure(work)
    body = subject_of(work, work.pieces[0], measured)
    assert body is not None
    whole = with_parts(body, body, measured)
    return [*whole.parts], laid_unevenly(whole)


def size(svg: str) -> list[float]:
    """Width and height of a picture without its margin, in mm."""
    box = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', svg)
    assert box is not None
    return [float(one) - 4 for one in box.groups()]


def ends(row: LaidRow) -> tuple[float, float]:
    return round(row.left / WIDE, 2), round(row.right / WIDE, 2)


@pytest.mark.parametrize("side", ["RS", "WS"])
def test_parts_stand_side_by_side_on_their_own_stitches(side: str) -> None:
    """Row 4 was made on the wrong side, so that its first stitch is the left one as the right side shows it.
    No stitch crosses over to another's place, whichever side the part's first row shows.
    """
    on = [("1-4", 4), ("5-7", 3), ("10-12", 3)]
    made = [
        part(f"p{at}", f"edge: body, row: 4, stitches: {where}", many, side=side)
        for at, (where, many) in enumerate(on)
    ]
    begins, rows = parts(of(BODY, *made))
    assert begins == [4, 7, 10]
    assert rows is not None
    assert [ends(row) for row in rows[4:]] == [(-6, -2)] * 3 + [(-2, 1)] * 3 + [(3, 6)] * 3
    for row in rows[4:]:
        for corner in row.corners:
            assert [x for x, _ in corner.feet] == pytest.approx([x for x, _ in corner.tops])
    assert [rows[at].corners[0].feet[0][1] for at in begins] == pytest.approx([4 * WIDE] * 3)


def test_a_part_on_a_part_stands_on_it() -> None:
    one = part("one", "edge: body, row: 4, stitches: 1-6", 6)
    begins, rows = parts(of(BODY, one, part("two", "edge: one, row: 3, stitches: 1-2", 2)))
    assert begins == [4, 7]
    assert rows is not None
    assert rows[7].corners[0].feet[0][1] == pytest.approx(7 * WIDE)
    assert rows[4].left <= rows[7].left
    assert rows[7].right <= rows[4].right


@pytest.mark.parametrize("left_handed", [False, True])
def test_the_picture_is_higher_by_the_part_and_the_piece_alone_is_not(left_handed: bool) -> None:
    work = of(BODY, part("one", "edge: body, row: 4, stitches: 1-6", 6))
    assert size(first_picture(work, None, left_handed)) == pytest.approx([12 * WIDE, 7 * WIDE], abs=1)
    assert size(piece_picture(work, "body", None, left_handed)) == pytest.approx([12 * WIDE, 4 * WIDE], abs=1)


TURNED = "end of each row, turn"


@pytest.mark.parametrize(
    "other",
    [
        part("one", "edge: body, row: 2, stitches: 1-6", 6),  # these stitches have others on them
        part("one", "edge: body, row ends: true", 4).replace("each st across, turn", TURNED, 1),
        part("one", "chain: 7", 6)
        .replace("{chain: 7}", "chain 7")
        .replace("ch 1, sc in each st", "sc in 2nd ch from hook and in each ch", 1),
    ],
)
def test_what_has_no_free_stitches_to_stand_on_does_not(other: str) -> None:
    assert parts(worked(BODY + other)) == ([], None)


def test_no_two_parts_stand_on_the_same_stitches() -> None:
    same = [part(name, "edge: body, row: 4, stitches: 1-6", 6) for name in ("one", "two")]
    assert parts(worked(BODY + "".join(same)))[0] == [4]


def test_a_band_stands_on_a_bands_row_ends() -> None:
    """The first lies to the left of the cloth, the second below the first: at the left end of its rows."""
    one = part("one", "edge: body, row ends: true", 4).replace("each st across, turn", TURNED, 1)
    two = part("two", "edge: one, row ends: true", 3, 5, "C").replace("each st across, turn", TURNED, 1)
    assert size(first_picture(of(BODY, one))) == pytest.approx([15 * WIDE, 4 * WIDE], abs=1)
    assert size(first_picture(of(BODY, one, two))) == pytest.approx([15 * WIDE, 9 * WIDE], abs=1)
