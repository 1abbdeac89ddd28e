"""Leaves are drawn in the shape that their tall and low stitches give them."""

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.form import form_of
from loopleaf.draw.leaf import leaf_edge
from loopleaf.draw.stand import is_leaf
from tests.measure.worked_patterns import worked

from .pieces import MAT, SVG, demo, subject, tree


def test_a_leaf_is_pointed_and_has_its_stem() -> None:
    work, measured = demo("purslane-garland")
    assert is_leaf(subject(work, "leaf"))
    drawn = tree(first_picture(work, measured))
    wide, high = (float(n) for n in str(drawn.get("viewBox")).split()[2:])
    assert 1.5 < wide / high < 3.5
    ticks = [p for p in drawn.iter(f"{SVG}path") if p.get("stroke") and str(p.get("d")).count("M") == 5]
    assert ticks, "a line between each two of the stem's six chains"
    assert tree(piece_picture(work, "small leaf", measured)) is not None


def test_vessels_and_mats_are_no_leaves() -> None:
    assert not is_leaf(subject(demo("reed-tray")[0]))
    assert not is_leaf(subject(worked(MAT)))
    assert not is_leaf(subject(demo("tide-cloth")[0]))


def test_a_leaf_is_measured_in_its_own_outline() -> None:
    """It fills the length and the width that it is given, and at a tenth of its length it is narrower by a
    quarter or more than an oval with half-round ends.
    """
    leaf = subject(demo("purslane-garland")[0], "leaf")
    edge = leaf_edge(leaf, 80.0, 30.0)
    for at, reach in ((0, 40.0), (1, 15.0)):
        assert max(point[at] for point in edge) == pytest.approx(reach)
        assert min(point[at] for point in edge) == pytest.approx(-reach)
    for end in (-1, 1):
        near = [abs(y) for x, y in edge if end * x >= 32.0]
        assert near
        assert max(near) < 0.75 * (15.0**2 - 7.0**2) ** 0.5
    form = form_of(leaf)
    assert form.edge == leaf_edge(leaf, 2 * form.widest + form.spine, 2 * form.widest)
