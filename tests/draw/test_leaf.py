"""Leaves are drawn in the shape that their tall and low stitches give them."""

from loopleaf.draw import first_picture, piece_picture
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
