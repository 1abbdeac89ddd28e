"""The schematic of a piece and its picture show one form in one size.

The geometry is that of a regular polygon, and of rows that keep their distance (textbook geometry).
"""

import re

import pytest

from loopleaf.draw import Figure, piece_picture, schematic
from loopleaf.draw.measuring import GAP
from loopleaf.fabric import PatternWork
from loopleaf.measure import measure
from loopleaf.measure.finished import What
from tests.measure.worked_patterns import HEAD, worked

from .pieces import rounds, rows, tree

YOKE = rounds(
    "ch 3 (counts as dc), dc in next 8 sts, (dc, ch 2, dc) in next st, *dc in next 9 sts, "
    "(dc, ch 2, dc) in next st; rep from * 2 more times, join",
    *[
        "ch 3 (counts as dc), dc in each st to next ch-2 sp, (dc, ch 2, dc) in ch-2 sp, "
        "*dc in each st to next ch-2 sp, (dc, ch 2, dc) in ch-2 sp; rep from * 2 more times, "
        "dc in each st to end, join"
    ]
    * 4,
    start="chain 40, joined",
)
SHAWL = rows(
    "ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn",
    *[
        "ch 3 (counts as dc), dc in first st, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, "
        "dc in each st to last st, 2 dc in last st, turn"
    ]
    * 6,
    chain=4,
).replace("chain 4", "chain 4, joined")
HEXAGON = rounds(
    "ch 3 (counts as dc), dc in ring, ch 1, *2 dc in ring, ch 1; rep from * 4 more times, join",
    "ch 3 (counts as dc), dc in next st, (dc, ch 1, dc) in next ch-1 sp, "
    "*dc in next 2 sts, (dc, ch 1, dc) in next ch-1 sp; rep from * around, join",
    start="chain 5, joined",
)
GROUPS = rounds(
    "ch 1, 16 sc in ring, join",
    "ch 1, sc in same st, ch 3, sk next st, *sc in next st, ch 3, sk next st; rep from * around, join",
    "ch 1, *(sc, hdc, 3 dc, hdc, sc) in next ch-3 sp; rep from * around, join",
    "ch 1, *sc in sp between next 2 groups, ch 7; rep from * around, join",
    start="chain 8, joined",
)
IN_DOUBLES = "gauge: {stitch: dc, stitches: 14, rows: 8, over: 10 cm, blocked: no}"


def in_doubles(piece: str) -> PatternWork:
    """A piece in a usual gauge for double crochet, which flat rounds and shawls are worked in."""
    return worked(piece, head=re.sub(r"gauge: \{.*\}", IN_DOUBLES, HEAD))


def outline(figure: Figure | None) -> list[tuple[float, float]]:
    """The corners of the first shape of a drawing, y down."""
    assert figure is not None
    found = re.search(r'<path [^>]*d="M([^"]*)Z"', figure.svg)
    assert found is not None
    return [(float(x), float(y)) for x, y in (part.split(" ") for part in found[1].split("L"))]


@pytest.mark.parametrize(
    ("piece", "what", "side"),
    [
        (SHAWL, "width", 2),
        (SHAWL, "length", 3),
        (YOKE, "across", 2),
        (HEXAGON, "across", 3),
        (GROUPS, "across", 2),
    ],
    ids=["shawl's tips", "shawl's depth", "yoke", "hexagon from side to side", "what stands between groups"],
)
def test_the_picture_is_as_large_as_the_schematic_says(piece: str, what: What, side: int) -> None:
    work = in_doubles(piece)
    measured = measure(work)
    drawn = piece_picture(work, work.pieces[0].name, measured)
    box = [float(n) for n in tree(drawn).get("viewBox", "").split()]
    assert box[side] - 4.0 == pytest.approx(measured.pieces[0].size[0][what].middle, rel=0.06)


def test_rows_from_a_point_lie_in_schematic_and_picture_alike() -> None:
    """The edges of this shawl lean out by 30° each, too little for a straight neck edge."""
    points = outline(schematic(in_doubles(SHAWL), "cloth"))
    point, left, tip, right = points
    assert point == (0.0, 0.0)
    assert left[1] == right[1] < 0.0, "the tips above the point that the rows begin in"
    assert tip[1] < 3 * left[1]


def test_a_hexagon_is_measured_between_two_sides_and_a_yoke_around_its_neck() -> None:
    figure = schematic(in_doubles(HEXAGON), "piece")
    points = outline(figure)
    wide, high = (max(part) - min(part) for part in zip(*points, strict=True))
    assert high / wide == pytest.approx(3**0.5 / 2, rel=0.01)
    assert figure is not None
    assert f"L{wide / 2 + GAP:.2f} {-high / 2:.0f}" in figure.svg, "from the lower side to the upper"
    yoke = schematic(in_doubles(YOKE), "piece")
    assert yoke is not None
    assert "about 28.5 cm (11¼ in) around the opening" in yoke.alt
    assert "opening" not in figure.alt
    groups = schematic(in_doubles(GROUPS), "piece")
    assert groups is not None
    assert "opening" not in groups.alt, "a ring filled with its first round"
