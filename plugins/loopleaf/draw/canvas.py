"""Collecting shapes by colour, and writing them as one SVG."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from html import escape
from typing import NamedTuple

Point = tuple[float, float]
Box = tuple[float, float, float, float]

THINNEST = 0.0009
"""No line of a picture is thinner than this share of its longer side: a quarter of a point in a booklet, if
that is 98 mm long or more.
"""

LARGE_MM = 100.0
"""A drawing larger than this is written to the next twentieth of a millimetre, others to the hundredth."""

CLOSE_LAYERS = 1000
"""Layers of one drawing that is pasted into another stay within so many."""


class Shape(NamedTuple):
    """width: of a line, in mm; None for what is filled. Points are in mm, y upwards."""

    layer: int
    colour: str
    width: float | None
    points: Sequence[Point]


class Canvas:
    """Shapes in mm, y upwards, in layers drawn in order; shapes of a layer and colour share one path."""

    def __init__(self) -> None:
        self._fills: dict[tuple[int, str], list[Sequence[Point]]] = defaultdict(list)
        self._lines: dict[tuple[int, str, float], list[Sequence[Point]]] = defaultdict(list)
        self._outlines: list[Sequence[Point]] = []
        self._stamps: list[tuple[int, Canvas, float]] = []

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        """A closed shape."""
        self._fills[layer, colour].append(points)

    def line(self, layer: int, colour: str, width: float, points: Sequence[Point]) -> None:
        """A line with round ends."""
        self._lines[layer, colour, round(width, 1)].append(points)

    def outline(self, points: Sequence[Point]) -> None:
        """A closed shape whose edge is drawn beneath everything, so that only what lies outermost shows."""
        self._outlines.append(points)

    def paste(self, other: "Canvas", layer: int, x: float, y: float, high: float) -> None:
        """Another canvas at a place of this one, drawn lower where seen aslant."""

        def moved(points: Sequence[Point]) -> list[Point]:
            return [(x + px, y + py * high) for px, py in points]

        for (of, colour), shapes in other._fills.items():
            self._fills[layer + of % CLOSE_LAYERS, colour] += [moved(shape) for shape in shapes]
        for (of, colour, width), shapes in other._lines.items():
            self._lines[layer + of % CLOSE_LAYERS, colour, width] += [moved(shape) for shape in shapes]

    def lay(self, other: "Canvas", layer: int, outline: str, width: float) -> None:
        """Another canvas over what lies below a layer, with its outlines; its own layers stay in order."""
        for shape in other._outlines:
            self.line(layer, outline, width, [*shape, shape[0]])
        for (of, colour), shapes in other._fills.items():
            self._fills[layer + of + 2, colour] += shapes
        for (of, colour, wide), lines in other._lines.items():
            self._lines[layer + of + 2, colour, wide] += lines

    def stamp(self, other: "Canvas", layer: int, high: float) -> None:
        """Another canvas so far higher up; stamped several times it is written once. It has no outlines and
        no stamps of its own.
        """
        self._stamps.append((layer, other, high))

    def in_order(self) -> list[Shape]:
        """All that is drawn, the lowest first, stamps where they lie; without the outlines."""
        found = [
            Shape(layer, colour, None, points)
            for (layer, colour), shapes in self._fills.items()
            for points in shapes
        ]
        found += [
            Shape(layer, colour, width, points)
            for (layer, colour, width), lines in self._lines.items()
            for points in lines
        ]
        for layer, other, high in self._stamps:
            found += [
                shape._replace(layer=layer, points=[(x, y + high) for x, y in shape.points])
                for shape in other.in_order()
            ]
        return sorted(found, key=lambda shape: shape.layer)

    @property
    def outlines(self) -> Sequence[Sequence[Point]]:
        """The closed shapes whose edges are drawn beneath all."""
        return self._outlines

    @property
    def box(self) -> Box:
        """Left, top, right, bottom in mm, y downwards; all 0 where nothing is drawn."""
        found: list[Box] = []
        reaches = [(0.0, shapes) for shapes in self._fills.values()]
        reaches += [(width / 2, lines) for (_, _, width), lines in self._lines.items()]
        for by, shapes in reaches:
            xs = [x for shape in shapes for x, _ in shape]
            ys = [y for shape in shapes for _, y in shape]
            found.append((min(xs) - by, -max(ys) - by, max(xs) + by, by - min(ys)))
        boxes = {id(other): other.box for _, other, _ in self._stamps}
        for _, other, high in self._stamps:
            left, top, right, bottom = boxes[id(other)]
            found.append((left, top - high, right, bottom - high))
        if not found:
            return (0.0, 0.0, 0.0, 0.0)
        lefts, tops, rights, bottoms = zip(*found, strict=True)
        return (min(lefts), min(tops), max(rights), max(bottoms))

    def body(self, outline: str, width: float, name: str, box: Box, thin: float = 0.0) -> str:
        """The shapes as SVG paths, without the frame.

        outline, width: colour and width (mm) of the outlines. name: what is stamped is defined once under
        this name and a number. box: the canvas' own, which is dear to find. thin: no line is thinner (mm).
        """
        left, top, right, bottom = box
        step = 1 if max(right - left, bottom - top) < LARGE_MM else 5
        parts: list[str] = []
        if self._outlines:
            parts.append(f'<path {_stroke(outline, width)} d="{_ways(self._outlines, "z", step)}"/>')
        painted = [*self._painted(step, thin), *self._stamped(step, name, thin)]
        return "".join([*parts, *(text for _, text in sorted(painted, key=lambda one: one[0]))])

    def _painted(self, step: int, thin: float) -> Iterator[tuple[int, str]]:
        """The layer of each path, and the path; fills before lines."""
        for (layer, colour), shapes in self._fills.items():
            yield layer, f'<path fill="{colour}" d="{_ways(shapes, "z", step)}"/>'
        for (layer, colour, wide), shapes in self._lines.items():
            yield layer, f'<path {_stroke(colour, max(wide, thin))} d="{_ways(shapes, "", step)}"/>'

    def _stamped(self, step: int, name: str, thin: float) -> Iterator[tuple[int, str]]:
        """The layer of each stamp, and its use; what comes several times is defined the first time."""
        times = Counter(id(other) for _, other, _ in self._stamps)
        names: dict[int, str] = {}
        for layer, other, high in self._stamps:
            down = _hundredths(round(-high * 100))
            inside = ""
            if id(other) not in names:
                names[id(other)] = f"{name}-{len(names) + 1}"
                inside = "".join(
                    text for _, text in sorted(other._painted(step, thin), key=lambda one: one[0])
                )
            if times[id(other)] == 1:
                yield layer, f'<g transform="translate(0 {down})">{inside}</g>'
                continue
            define = f'<defs><g id="{names[id(other)]}">{inside}</g></defs>' if inside else ""
            yield layer, f'{define}<use href="#{names[id(other)]}" y="{down}"/>'


def svg(body: str, box: Box, title: str, margin: float) -> str:
    """A whole SVG; the box is in mm, so that drawings can be shown to one scale."""
    left, top, right, bottom = box
    view = " ".join(
        number(v) for v in (left - margin, top - margin, right - left + 2 * margin, bottom - top + 2 * margin)
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" role="img"><title>{escape(title)}</title>'
        f"{body}</svg>"
    )


def number(value: float) -> str:
    """A number with at most two decimals, as short as it can be written."""
    return _hundredths(round(value * 100))


def _stroke(colour: str, width: float) -> str:
    return (
        f'fill="none" stroke="{colour}" stroke-width="{number(width)}" stroke-linecap="round" '
        f'stroke-linejoin="round"'
    )


def _ways(shapes: Iterable[Sequence[Point]], end: str, step: int) -> str:
    return "".join(_path(points, step) + end for points in shapes)


def _path(points: Sequence[Point], step: int) -> str:
    """Each point from the one before it, to the next step of hundredths: short, and no rounding adds up."""
    at_x, at_y, fine = 0, 0, 100 / step
    parts: list[str] = []
    for index, (x, y) in enumerate(points):
        new_x, new_y = round(x * fine) * step, round(-y * fine) * step
        across, down = _hundredths(new_x - at_x), _hundredths(new_y - at_y)
        letter = "M" if not index else "l" if index == 1 else " " if across[0] != "-" else ""
        parts.append(f"{letter}{across}{down}" if down[0] == "-" else f"{letter}{across} {down}")
        at_x, at_y = new_x, new_y
    return "".join(parts)


@lru_cache(maxsize=1 << 14)
def _hundredths(value: int) -> str:
    whole, part = divmod(abs(value), 100)
    text = str(whole) if not part else f"{whole or ''}.{part:02d}".rstrip("0")
    return f"-{text}" if value < 0 else text
