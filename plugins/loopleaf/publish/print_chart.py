"""Charts for print: signs of one colour and width made one path, and large charts parted over pages.

A page's chart has a mark on every sign; in print nobody can point at one, and a thousand small parts take ten
times as long to set as one path.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from math import hypot
from xml.etree import ElementTree

from fontTools.misc.transform import Identity, Transform  # type: ignore[import-untyped]
from fontTools.pens.recordingPen import RecordingPen  # type: ignore[import-untyped]
from fontTools.pens.svgPathPen import SVGPathPen  # type: ignore[import-untyped]
from fontTools.pens.transformPen import TransformPen  # type: ignore[import-untyped]
from fontTools.svgLib.path import parse_path  # type: ignore[import-untyped]
from markupsafe import escape

from ..draw.chart_labels import ARROW_LONG
from ..draw.chart_print import OVERLAP, is_parted, parts_of, printed_scale
from .drawing import drawn_size
from .print_edges import Shown, edges, numbers

LETTER, TALL = 0.65, 0.8
"""A digit's width and height with room around it, of the size of its letters."""

REACH = 300.0
"""No sign and no line of words reaches further from where it stands, in units."""

Box = tuple[float, float, float, float]
Stretch = tuple[float, float]

_SVG = "{http://www.w3.org/2000/svg}"
_KEPT = ("stroke", "fill", "stroke-width", "stroke-dasharray", "stroke-opacity", "fill-opacity")
_OF_WORDS = ("class", "font-size", "text-anchor")


@dataclass(frozen=True, slots=True)
class Part:
    """One page's part of a chart. wide_mm, high_mm: as printed. place: `2 of 3`, "" for a whole chart."""

    svg: str
    wide_mm: float
    high_mm: float
    place: str = ""


@lru_cache(maxsize=32)
def parts(svg: str) -> tuple[Part, ...]:
    """A chart as it is printed: whole where its signs stay legible, else in parts whose overlap is marked."""
    wide, high = drawn_size(svg)
    scale, title = printed_scale(wide, high), _title(svg)
    whole = (0.0, 0.0, wide, high)
    if not is_parted(wide, high):
        return (Part(_whole(merged(svg, whole), whole, title), wide * scale, high * scale),)
    return tuple(_parted(svg, scale, title))


def _parted(svg: str, scale: float, title: str) -> Iterator[Part]:
    wide, high = drawn_size(svg)
    across, down = parts_of(wide, high, scale)
    key = float(ElementTree.fromstring(svg).get("data-key-from", high))
    step_x, step_y = (wide - OVERLAP) / across, (high - OVERLAP) / down
    number = 0
    for row in reversed(range(down)):  # rows are worked from the bottom up
        for column in range(across):
            number += 1
            box = (column * step_x, row * step_y, step_x + OVERLAP, step_y + OVERLAP)
            shown = _merged(svg, box)
            sides = (row > 0, row < down - 1, column > 0, column < across - 1)
            marks = "".join(_marks(box, sides, shown.labels, key))
            wider, middles = edges(box, sides[2], sides[3], scale)
            beside = "".join(numbers(shown.signs, box, middles, scale))
            place = f"{number} of {across * down}"
            part = _whole(
                shown.drawn() + marks + beside + "".join(shown.words), wider, f"{title}, part {place}"
            )
            yield Part(part, wider[2] * scale, wider[3] * scale, place)


def _marks(box: Box, sides: Sequence[bool], labels: Sequence[Box], key: float) -> Iterator[str]:
    """Where a neighbouring part begins: a dashed line all across, but not over numbers and arrows, nor beside
    the key. sides: whether there is one above, below, before and after. key: where that begins.
    """
    x, y, wide, high = box
    above, below, before, after = sides
    for there, level in ((above, y + OVERLAP), (below, y + high - OVERLAP)):
        if there:
            crossed = [(left, left + long) for left, top, long, tall in labels if top < level < top + tall]
            yield _dashes(f"M{at:.1f} {level:.1f}h{to - at:.1f}" for at, to in _between(x, x + wide, crossed))
    for there, level in ((before, x + OVERLAP), (after, x + wide - OVERLAP)):
        if there:
            crossed = [(top, top + tall) for left, top, long, tall in labels if left < level < left + long]
            ends = _between(y, min(y + high, max(key, y)), crossed)
            yield _dashes(f"M{level:.1f} {at:.1f}v{to - at:.1f}" for at, to in ends)


def _between(
    start: float, end: float, crossed: Sequence[tuple[float, float]]
) -> Iterator[tuple[float, float]]:
    """What is left of a line once the stretches that it must not cross are taken out."""
    for low, high in sorted(crossed):
        if start < low:
            yield start, low
        start = max(start, high)
    if start < end:
        yield start, end


def _dashes(ways: Iterable[str]) -> str:
    look = 'fill="none" stroke="#22282b" stroke-width=".9" stroke-dasharray="6 4"'
    return f'<path {look} d="{"".join(ways)}"/>'


def _whole(inside: str, box: Box, title: str) -> str:
    view = " ".join(f"{value:.1f}" for value in box)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" fill="none" stroke-linecap="round" '
        f'stroke-linejoin="round"><title>{escape(title)}</title>{inside}</svg>'
    )


def _title(svg: str) -> str:
    found = ElementTree.fromstring(svg).find(f"{_SVG}title")
    return (found.text or "") if found is not None else ""


# ---- merging --------------------------------------------------------------------------------------


@dataclass(slots=True)
class _Merging:
    """ids: what may be used again. box: what of it shows. pens: one for each look. words: the texts, each in
    its place. labels: the boxes of numbers, arrows and other short texts. signs: those that belong to rounds.
    """

    ids: Mapping[str, ElementTree.Element]
    box: Box
    pens: dict[tuple[str, ...], SVGPathPen] = field(
        default_factory=lambda: defaultdict(lambda: SVGPathPen(None, ntos=_number))
    )
    words: list[str] = field(default_factory=list)
    labels: list[Box] = field(default_factory=list)
    signs: list[Shown] = field(default_factory=list)
    known: dict[str, RecordingPen] = field(default_factory=dict)

    def walk(self, element: ElementTree.Element, matrix: Transform, look: Mapping[str, str]) -> None:
        """An element with all that is in it."""
        tag = element.tag.removeprefix(_SVG)
        if tag in ("title", "desc", "style", "defs"):
            return
        matrix = matrix.transform(_matrix(element.get("transform", "")))
        if tag == "use":
            matrix = matrix.translate(float(element.get("x", 0)), float(element.get("y", 0)))
        look = _look(element, look)
        if tag == "use":
            form = self.ids[(element.get("href") or "").removeprefix("#")]
            turned = matrix.transform(_matrix(form.get("transform", "")))
            if look.get("class") == "chart-words" and not self._label(_box_of_arrow(turned)):
                return
            if self._shows(matrix):
                if element.get("data-round"):
                    self.signs.append(Shown(element.get("data-round", ""), form, turned))
                self.walk(form, matrix, look)
        elif tag == "text":
            self._text(element, matrix, look)
        elif tag in ("path", "circle"):
            self._draw(element, matrix, look)
        for child in element if tag in ("svg", "g") else ():
            self.walk(child, matrix, look)

    def _draw(self, element: ElementTree.Element, matrix: Transform, look: Mapping[str, str]) -> None:
        way = element.get("d") or _circle(element)
        if way not in self.known:
            pen = RecordingPen()
            parse_path(way, pen)
            self.known[way] = pen
        key = tuple(look.get(name, "") for name in _KEPT)
        self.known[way].replay(TransformPen(self.pens[key], matrix))

    def _text(self, element: ElementTree.Element, matrix: Transform, look: Mapping[str, str]) -> None:
        size, anchor = float(look.get("font-size", 10)), look.get("text-anchor", "start")
        text, place = (
            element.text or "",
            matrix.translate(float(element.get("x", 0)), float(element.get("y", 0))),
        )
        if not self._shows(place) or not self._label(_box_of_text(text, size, anchor, place)):
            return
        numbers = " ".join(_number(value) for value in place)
        self.words.append(
            f'<text transform="matrix({numbers})" font-family="Leaflet Sans, sans-serif" fill="#22282b" '
            f'stroke="none" font-size="{_number(size)}" text-anchor="{anchor}">{escape(text)}</text>'
        )

    def _label(self, box: Box) -> bool:
        """Whether a text or an arrow is drawn: a short one that the part's edge would cut is whole in the
        next part.
        """
        left, top, long, tall = box
        x, y, wide, high = self.box
        if long > OVERLAP:
            return True
        self.labels.append(box)
        return x <= left and left + long <= x + wide and y <= top and top + tall <= y + high

    def _shows(self, matrix: Transform) -> bool:
        """Whether what stands there reaches into the part that shows."""
        x, y, wide, high = self.box
        left, top = float(matrix.dx), float(matrix.dy)
        return x - REACH < left < x + wide + REACH and y - REACH < top < y + high + REACH

    def drawn(self) -> str:
        """A path for each look."""
        drawn = []
        for key, pen in self.pens.items():
            looks = "".join(f' {name}="{value}"' for name, value in zip(_KEPT, key, strict=True) if value)
            drawn.append(f'<path{looks} d="{pen.getCommands()}"/>')
        return "".join(drawn)


def merged(svg: str, box: Box) -> str:
    """What a chart shows in a box (x, y, width, height), without its frame, signs of one look in one path."""
    shown = _merged(svg, box)
    return "".join([shown.drawn(), *shown.words])


def _merged(svg: str, box: Box) -> _Merging:
    root = ElementTree.fromstring(svg)
    merging = _Merging({element.get("id", ""): element for element in root.iter() if element.get("id")}, box)
    merging.walk(root, Identity, {"stroke-width": "1"})
    return merging


def _box_of_arrow(matrix: Transform) -> Box:
    half = ARROW_LONG / 2 * hypot(matrix.xx, matrix.xy)
    return (matrix.dx - half, matrix.dy - half, 2 * half, 2 * half)


def _box_of_text(text: str, size: float, anchor: str, place: Transform) -> Box:
    """The box of a text, in which its widest letters have room."""
    long = LETTER * size * len(text)
    before = {"middle": 0.5, "end": 1.0}.get(anchor, 0.0)
    return (place.dx - before * long, place.dy - TALL * size, long, (TALL + 0.1) * size)


def _look(element: ElementTree.Element, above: Mapping[str, str]) -> Mapping[str, str]:
    own = {name: value for name in (*_KEPT, *_OF_WORDS) if (value := element.get(name)) is not None}
    return {**above, **own} if own else above


def _circle(element: ElementTree.Element) -> str:
    r, x, y = (float(element.get(name, 0)) for name in ("r", "cx", "cy"))
    return f"M{x - r} {y}a{r} {r} 0 1 0 {2 * r} 0a{r} {r} 0 1 0 {-2 * r} 0z"


def _matrix(text: str) -> Transform:
    matrix = Identity
    for name, values in re.findall(r"(\w+)\(([^)]*)\)", text):
        numbers = [float(value) for value in re.findall(r"-?[\d.]+", values)]
        if name == "translate":
            matrix = matrix.translate(*numbers)
        elif name == "scale":
            matrix = matrix.scale(*numbers)
        elif name == "rotate":
            matrix = matrix.rotate(numbers[0] * 0.017453292519943295)
        elif name == "matrix":
            matrix = matrix.transform(Transform(*numbers))
    return matrix


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
