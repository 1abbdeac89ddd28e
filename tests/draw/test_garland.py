"""A garland hangs: its band as long as it was, what is sewn to it straight below its stitches."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.garland import band_of, hung
from tests.measure.worked_patterns import worked

from .pieces import MAT, SVG, demo, rows, subject, tree

BAND = rows("sc in 2nd ch from hook and in each ch across", chain=61)
SEWN = "finishing:\n  - sew: {{piece: mat, to: cloth, row: 1, stitches: '{}', text: Sew them on.}}\n"


def test_a_band_keeps_its_length_and_hangs_even() -> None:
    swag = hung(1000.0)
    way = [swag.point(0.0, at / 200, 0.0) for at in range(201)]
    assert sum(dist(a, b) for a, b in pairwise(way)) == pytest.approx(1000.0, rel=1e-3)
    assert way[0][1] == pytest.approx(way[-1][1])
    assert way[-1][0] - way[0][0] == pytest.approx(820.0, rel=1e-3)
    assert min(way, key=lambda point: point[1]) == way[100] == (0.0, 0.0)
    above = swag.point(0.0, 0.8, 5.0)
    assert dist(above, swag.point(0.0, 0.8, 0.0)) == pytest.approx(5.0)


def test_the_garland_shows_all_its_leaves() -> None:
    work, measured = demo("purslane-garland")
    assert band_of(subject(work, "leaf"), measured) is not None
    drawn = tree(first_picture(work, measured))
    uses = [str(use.get("href")) for use in drawn.iter(f"{SVG}use")]
    assert sorted(uses.count(name) for name in set(uses)) == [11, 12]
    left, _, wide, high = (float(n) for n in str(drawn.get("viewBox")).split())
    assert left < -500.0
    assert wide > 1.5 * high
    assert first_picture(work, measured) == first_picture(work, measured)
    assert "<use" not in piece_picture(work, "leaf", measured)


@pytest.mark.parametrize(("stitches", "hangs"), [("5-6, 25-26, 45-46", True), ("5-6, 25-26", False)])
def test_a_few_parts_make_no_garland(stitches: str, hangs: bool) -> None:
    work = worked(MAT + BAND, SEWN.format(stitches))
    picture = tree(first_picture(work))
    assert len(list(picture.iter(f"{SVG}use"))) == (3 if hangs else 0)
