"""The cloth behind the strands of a row: whole where stitches stand close, parted where they leave a hole."""

import re
from itertools import pairwise

import pytest

from loopleaf.draw.canvas import Canvas
from loopleaf.draw.items import Item
from loopleaf.draw.stitchwork import Placed, between, draw_row, straight
from loopleaf.fabric import Made

CROSSED = (2, 3, 0, 1)
"""Each stitch of four in order stands on this one of four places: two pass before the other two."""


def cloth(feet: tuple[int, ...], post: str) -> float:
    """The area of the cloth behind a row of stitches one wide and one high, all its shapes together."""
    canvas = Canvas()
    row = []
    for at, foot in enumerate(feet):
        made = Made("double", (), 1, "A", number=at + 1, post=post)
        item = Item(made, float(at), at + 1.0, foot=(float(foot), foot + 1.0))
        patch = between(straight((foot, 0.0), (foot + 1.0, 0.0)), straight((at, 1.0), (at + 1.0, 1.0)))
        row.append(Placed(item, patch, 1.0, False, False))
    draw_row(canvas, 0, row, {"A": "#808080"})
    shapes = re.findall(r'fill="#[^"]+" d="([^"]+)"', canvas.body("#000000", 0.1, "", canvas.box))
    return sum(_area(shape) for way in shapes for shape in way.split("z") if shape)


def _area(way: str) -> float:
    """Of a shape written from point to point; where it runs over itself the other way counts against it."""
    steps = [float(number) for number in re.findall(r"-?\d*\.?\d+", way)]
    xs, ys, x, y = [], [], 0.0, 0.0
    for dx, dy in zip(steps[::2], steps[1::2], strict=True):
        x, y = x + dx, y + dy
        xs.append(x)
        ys.append(y)
    points = [*zip(xs, ys, strict=True)]
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*points, points[0]]))) / 2


def test_a_crossing_of_posts_has_whole_cloth_behind_it() -> None:
    """They go around stitches of the row below and leave its tops in place: common practice, no source."""
    plain = cloth((0, 1, 2, 3), "")
    assert plain == pytest.approx(4.0, rel=0.15)
    assert cloth(CROSSED, "front") == pytest.approx(plain, rel=0.05)
    assert cloth(CROSSED, "") < 0.9 * plain, "stitches crossed over tops leave holes"
