"""The numbers of rows and rounds once more where a parted chart is cut: a pencil finds its row there."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from xml.etree import ElementTree

from fontTools.misc.transform import Transform  # type: ignore[import-untyped]
from fontTools.pens.boundsPen import ControlBoundsPen  # type: ignore[import-untyped]
from fontTools.pens.transformPen import TransformPen  # type: ignore[import-untyped]
from fontTools.svgLib.path import parse_path  # type: ignore[import-untyped]
from markupsafe import escape

from ..draw.chart_labels import DIGIT_HIGH
from ..draw.chart_print import EDGE_MM, WORDS_MM

Box = tuple[float, float, float, float]

STRIP = 15.0
"""The signs of a round that lie so near to an edge, in units, say where the round meets it."""

APART = 20.0
"""Signs of one round that are so far from each other up the edge, in units, are where it meets it twice."""

LIGHT = 0.65
"""How much of the ink such a number has."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A sign: the round that it belongs to, its form, and what puts it in its place."""

    round: str
    form: ElementTree.Element
    matrix: Transform


def edges(box: Box, before: bool, after: bool, scale: float) -> tuple[Box, list[float]]:
    """A part's box (x, y, width, height) with room for numbers where it is cut, and the middle of each such
    stretch. scale: millimetres a unit.
    """
    x, y, wide, high = box
    room = EDGE_MM / scale
    middles = [x - room / 2] * before + [x + wide + room / 2] * after
    return (x - room * before, y, wide + room * (before + after), high), middles


def numbers(signs: Sequence[Shown], box: Box, middles: Sequence[float], scale: float) -> Iterator[str]:
    """The strips beside a part's cut edges, white from there on, and in them the numbers of the rounds that
    meet them.

    box: of the part without them.
    """
    x, y, wide, high = box
    size, room = WORDS_MM / scale, EDGE_MM / scale
    for middle in middles:
        outer, across = (middle - room, room * 1.5) if middle < x else (x + wide, room * 1.5)
        yield f'<path fill="#fff" d="M{outer:.1f} {y:.1f}h{across:.1f}v{high:.1f}h-{across:.1f}z"/>'
        inner = (x, x + STRIP) if middle < x else (x + wide - STRIP, x + wide)
        for label, level in _apart(_met(signs, inner), size):
            if y + size / 2 < level < y + high - size / 2:
                yield (
                    f'<text x="{middle:.1f}" y="{level + size * DIGIT_HIGH / 2:.1f}" font-size="{size:.2f}" '
                    f'font-family="Leaflet Sans, sans-serif" fill="#22282b" fill-opacity="{LIGHT}" '
                    f'stroke="none" text-anchor="middle">{escape(label)}</text>'
                )


def _met(signs: Sequence[Shown], inner: tuple[float, float]) -> Iterator[tuple[str, float]]:
    """Each round that has signs between those two, with the height of their middle, wherever it does."""
    found: dict[str, list[tuple[float, float]]] = defaultdict(list)
    known: dict[tuple[int, Transform], Box] = {}
    for sign in signs:
        if sign.round in ("", "0"):
            continue
        turned = (id(sign.form), sign.matrix[:4])
        if turned not in known:
            known[turned] = _box_of(sign.form, Transform(*sign.matrix[:4], 0, 0))
        left, top, right, bottom = known[turned]
        if inner[0] <= sign.matrix.dx + (left + right) / 2 <= inner[1]:
            found[sign.round].append((sign.matrix.dy + top, sign.matrix.dy + bottom))
    for label, levels in found.items():
        levels.sort()
        run = [levels[0]]
        for one, other in pairwise(levels):
            if other[0] - one[1] > APART:
                yield label, _middle(run)
                run = []
            run.append(other)
        yield label, _middle(run)


def _middle(levels: Sequence[tuple[float, float]]) -> float:
    return (min(top for top, _ in levels) + max(bottom for _, bottom in levels)) / 2


def _apart(met: Iterator[tuple[str, float]], size: float) -> Iterator[tuple[str, float]]:
    """From below upwards, those that stand clear of the one before."""
    last: float | None = None
    for label, level in sorted(met, key=lambda one: -one[1]):
        if last is None or last - level > size:
            yield label, level
            last = level


def _box_of(form: ElementTree.Element, matrix: Transform) -> Box:
    """How far a sign's form reaches: left, top, right, bottom."""
    pen = ControlBoundsPen(None)
    for element in form.iter():
        if element.get("d"):
            parse_path(element.get("d"), TransformPen(pen, matrix))
    left, top, right, bottom = pen.bounds or (0.0, 0.0, 0.0, 0.0)
    return (left, top, right, bottom)
