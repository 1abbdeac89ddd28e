"""A yoke in the round lies as wide and high as the stitches of its sides make it, in picture and schematic.

A rectangle has two pairs of sides (textbook geometry). Yokes with narrow
sleeves and four corners, and the increases at these: common practice, no source.
"""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw.form import form_of
from loopleaf.draw.section import Oblong, Polygon
from loopleaf.draw.stand import stand_of
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Space
from loopleaf.fabric.long_sides import rectangle_of
from loopleaf.measure import measure

from .pieces import rounds, subject_from

MORE = (
    "ch 1, *sc in each st to next ch-1 sp, (sc, ch 1, sc) in ch-1 sp; rep from * 3 more times, "
    "sc in each remaining st, join"
)


def yoke(*sides: int, many: int = 7) -> Subject:
    """A yoke on chains: so many stitches a side of its first round, and so many rounds more."""
    first = ", ".join(f"sc in next {side} ch, (sc, ch 1, sc) in next ch" for side in sides)
    text = rounds(f"ch 1, {first}, join", *[MORE] * many, start=f"chain {sum(sides) + len(sides)}, joined")
    found = subject_from(text)
    assert not [trouble for one in found.piece.rounds for trouble in one.troubles]
    return found


@pytest.mark.parametrize("sides", [(20, 8, 20, 8), (8, 20, 8, 20)])
def test_a_yoke_with_narrow_sleeves_is_a_rectangle(sides: tuple[int, ...]) -> None:
    found = yoke(*sides)
    stand, items = stand_of(found)
    assert isinstance(stand.section, Oblong)
    way = stand.section.way(stand.rings[-1].out1)
    assert way == pytest.approx(found.sizes[-1].length_mm)
    assert stand.section.way(0.0) == pytest.approx(60 * found.scale.width_mm)
    corners = [stand.point(stand.rings[-1].out1, 0.0, at / 4) for at in range(4)]
    lengths = [dist(a, b) for a, b in pairwise([*corners, corners[0]])]
    stitches = [sum(at / 4 < one.middle % 1.0 < (at + 1) / 4 for one in items[-1]) for at in range(4)]
    for long, many in zip(lengths, stitches, strict=True):
        assert long / way == pytest.approx((many + 1) / (sum(stitches) + 4), abs=0.01)
    spaces = [one.middle * 4 for one in items[-1] if isinstance(one.thing, Space)]
    assert spaces == pytest.approx([round(at) for at in spaces], abs=0.01)


def test_its_outline_has_its_neck_and_the_sizes_its_measures_say() -> None:
    found = yoke(20, 8, 20, 8)
    form = form_of(found)
    across, down = (max(point[axis] for point in form.edge) * 2 for axis in (0, 1))
    own = measure(found.work).pieces[0].size[0]
    assert own["length"].middle == pytest.approx(across)
    assert own["width"].middle == pytest.approx(down)
    assert "across" not in own
    assert 2 * (own["length"].middle + own["width"].middle) == pytest.approx(own["around"].middle)
    assert form.beginning_mm == pytest.approx(60 * found.scale.width_mm)


@pytest.mark.parametrize("sides", [(12, 12, 12, 12), (13, 12, 13, 12), (20, 8, 12, 8)])
def test_sides_about_alike_or_of_no_pairs_stay_a_square(sides: tuple[int, ...]) -> None:
    found = yoke(*sides)
    assert rectangle_of(found.worked) is None
    section = stand_of(found)[0].section
    assert isinstance(section, Polygon)
    assert not isinstance(section, Oblong)
    assert "across" in measure(found.work).pieces[0].size[0]


def test_three_sides_and_a_start_in_one_place_are_no_rectangle() -> None:
    assert rectangle_of(yoke(20, 8, 20, many=0).worked) is None
    square = ("ch 1, (sc in ring, ch 1, 2 sc in ring, ch 1, sc in ring) x 2, join",)
    assert rectangle_of(subject_from(rounds(*square)).worked) is None
