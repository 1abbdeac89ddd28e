"""The cloth behind the strands of a row: whole where stitches stand close, parted where they leave a hole."""

import re
from collections.abc import Sequence
from itertools import pairwise

import pytest

from loopleaf.draw.canvas import Canvas, Point
from loopleaf.draw.items import Item
from loopleaf.draw.stitchwork import Patch, Placed, between, draw_row, placed_on, straight
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


@pytest.mark.parametrize(
    ("apart", "falls", "whole"), [(2.0, 0.6, True), (2.0, 0.0, False), (4.0, 0.6, False)]
)
def test_a_shell_lies_down_on_what_it_passes_over(apart: float, falls: float, whole: bool) -> None:
    """Its outer stitches do, over two; a level stitch beside a gap leaves a hole, and so does a wider gap."""
    canvas = Canvas()
    row = []
    for at, foot in enumerate((0.0, 1.0 + apart)):
        tops = (1.0, 1.0 - falls) if not at else (1.0, 1.0)
        item = Item(
            Made("double", (), 1, "A", number=at + 1), at, at + 1.0, foot=(foot, foot + 1.0), tops=tops
        )
        patch = between(
            straight((foot, 0.0), (foot + 1.0, 0.0)), straight((at, tops[0]), (at + 1.0, tops[1]))
        )
        row.append(Placed(item, patch, 1.0, False, False))
    draw_row(canvas, 0, row, {"A": "#808080"})
    way = re.findall(r'fill="#[^"]+" d="([^"]+)"', canvas.body("#000000", 0.1, "", canvas.box))
    assert sum(one.count("z") for one in way) == (1 if whole else 2)


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


@pytest.mark.parametrize(("form", "strands"), [("bobble", 2), ("popcorn", 2), ("", 2)])
def test_a_bobble_is_a_bump_with_a_rim(form: str, strands: int) -> None:
    """A darker line below a lighter one that is narrower, both far thicker than a plain stitch's yarn."""
    canvas = Canvas()
    made = Made("double", (), 1, "A", number=1, form=form, legs=5 if form else 0)
    patch = between(straight((0.0, 0.0), (5.0, 0.0)), straight((0.0, 10.0), (5.0, 10.0)))
    draw_row(canvas, 0, [Placed(Item(made, 0.0, 1.0), patch, 1.0, False, True)], {"A": "#808080"})
    drawn = re.findall(r'stroke="#(\w\w)\w+" stroke-width="([\d.]+)"', canvas.body("", 0.1, "", canvas.box))
    widths = [float(wide) for _, wide in drawn]
    assert len(drawn) == strands
    assert (min(widths) > 4.0) == bool(form)
    if form:
        (dark, rim), (light, bump) = drawn
        assert dark < light
        assert float(rim) > float(bump)


@pytest.mark.parametrize(
    ("kind", "legs", "places", "bump"),
    [("double", 5, 1, True), ("double", 5, 5, False), ("double", 2, 1, False), ("single", 3, 1, False)],
    ids=["bobble", "over five stitches", "a pair", "low"],
)
def test_tall_stitches_together_in_one_place_are_a_bump(
    kind: str, legs: int, places: int, bump: bool
) -> None:
    """A bobble told as dc5tog in the same stitch (common practice, no source); near misses stay flat."""
    below = [Made("single", (), 0, "A", number=at + 1) for at in range(places)]
    made = Made(kind, tuple(below), 1, "A", number=1, form="tog", legs=legs)
    canvas = Canvas()
    patch = between(straight((0.0, 0.0), (5.0, 0.0)), straight((0.0, 10.0), (5.0, 10.0)))
    draw_row(canvas, 0, [Placed(Item(made, 0.0, 1.0), patch, 1.0, False, True)], {"A": "#808080"})
    widths = re.findall(r'stroke-width="([\d.]+)"', canvas.body("", 0.1, "", canvas.box))
    assert (min(map(float, widths)) > 4.0) == bump


class Heard(Canvas):
    """A canvas that notes how high each point of its lines and fills lies."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[float] = []
        self.fills: list[float] = []

    def line(self, layer: int, colour: str, width: float, points: Sequence[Point]) -> None:
        self.lines += [y for _, y in points]

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        self.fills += [y for _, y in points]


def spike(floor: float) -> tuple[float, float]:
    """How low the strands and how low the cloth reach, of a stitch that stands on a floor in a row from 10 to
    20 above a row of 10; between two plain ones.
    """
    items = [
        Item(Made("single" if at != 1 else "treble", (), 3, "A", number=at + 1), at, at + 1.0)
        for at in range(3)
    ]
    items = [one._replace(foot=(one.start, one.end)) for one in items]
    items[1] = items[1]._replace(floor=floor)

    def patch(item: Item) -> Patch:
        low = 10.0 * item.floor
        return between(
            straight((item.start, low), (item.end, low)), straight((item.start, 20), (item.end, 20))
        )

    canvas = Heard()
    draw_row(canvas, 0, [placed_on(item, patch) for item in items], {"A": "#808080"})
    return min(canvas.lines), min(canvas.fills)


def test_a_spike_lies_over_the_rounds_it_passes_and_leaves_their_cloth_in_sight() -> None:
    """Its yarn goes down to its place; the cloth behind it is only as high as its own row."""
    yarn, cloth_low = spike(-1.0)
    assert yarn < -5
    assert cloth_low > 8
    yarn, cloth_low = spike(1.0)
    assert yarn > 9, "a stitch on the row below stays in its row"


class Layers(Canvas):
    """A canvas that notes the highest layer of the lines that end at the top of a row three high."""

    def __init__(self) -> None:
        super().__init__()
        self.tops: dict[float, int] = {}

    def line(self, layer: int, colour: str, width: float, points: Sequence[Point]) -> None:
        if points[-1][1] < 3.0:
            return
        x = round(points[-1][0], 1)
        self.tops[x] = max(layer, self.tops.get(x, layer))


@pytest.mark.parametrize(
    ("numbers", "feet", "upper"),
    [
        ((1, 2, 3, 4), CROSSED, [2.5, 3.5]),
        ((4, 3, 2, 1), CROSSED, [0.5, 1.5]),
        ((1, 2, 3, 4), (0, 1, 2, 3), []),
    ],
)
def test_posts_that_go_back_cross_over_those_made_before(
    numbers: tuple[int, ...], feet: tuple[int, ...], upper: list[float]
) -> None:
    """In rounds these go to the left as they lie here; in a row made to the left it is the other two.
    What is worked into the stitches passed over lies before what was worked past them, unless worked behind
    it: common practice, no source.
    """
    canvas = Layers()
    row = []
    for at, (number, foot) in enumerate(zip(numbers, feet, strict=True)):
        made = Made("treble", (), 1, "A", number=number, post="front")
        item = Item(made, float(at), at + 1.0, foot=(float(foot), foot + 1.0))
        row.append(
            placed_on(
                item,
                lambda one: between(
                    straight((one.foot[0], 0.0), (one.foot[1], 0.0)),
                    straight((one.start, 3.0), (one.end, 3.0)),
                ),
            )
        )
    draw_row(canvas, 0, row, {"A": "#808080"})
    low = min(canvas.tops.values())
    assert [x for x, layer in sorted(canvas.tops.items()) if layer > low] == upper
