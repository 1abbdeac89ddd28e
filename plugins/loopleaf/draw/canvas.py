"""Collecting shapes by colour, and writing them as one SVG."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from html import escape

Point = tuple[float, float]
Box = tuple[float, float, float, float]

CLOSE_LAYERS = 1000
"""Layers of one drawing that is pasted into another stay within so many."""


class Canvas:
    """Shapes in mm, y upwards, in layers drawn in order; shapes of a layer and colour share one path."""

    def __init__(self) -> None:
        self._fills: dict[tuple[int, str], list[Sequence[Point]]] = defaultdict(list)
        self._lines: dict[tuple[int, str, float], list[Sequence[Point]]] = defaultdict(list)
        self._outlines: list[Sequence[Point]] = []

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

    @property
    def box(self) -> Box:
        """Left, top, right, bottom in mm, y downwards; all 0 where nothing is drawn."""
        xs: list[float] = []
        ys: list[float] = []
        for shape, by in self._all():
            xs += [x - by for x, _ in shape] + [x + by for x, _ in shape]
            ys += [-y - by for _, y in shape] + [-y + by for _, y in shape]
        return (min(xs), min(ys), max(xs), max(ys)) if xs else (0.0, 0.0, 0.0, 0.0)

    def _all(self) -> Iterable[tuple[Sequence[Point], float]]:
        for filled in self._fills.values():
            for shape in filled:
                yield shape, 0.0
        for (_, _, width), lines in self._lines.items():
            for shape in lines:
                yield shape, width / 2

    def body(self, outline: str, width: float) -> str:
        """The shapes as SVG paths, without the frame.

        outline, width: colour and width (mm) of the outlines.
        """
        parts: list[str] = []
        if self._outlines:
            parts.append(_stroke(outline, width, (_path(shape) + "z" for shape in self._outlines)))
        layers: dict[int, list[str]] = defaultdict(list)
        for (layer, colour), shapes in self._fills.items():
            way = "".join(_path(points) + "z" for points in shapes)
            layers[layer].append(f'<path fill="{colour}" d="{way}"/>')
        for (layer, colour, wide), shapes in self._lines.items():
            layers[layer].append(_stroke(colour, wide, (_path(points) for points in shapes)))
        return "".join([*parts, *("".join(layers[layer]) for layer in sorted(layers))])


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


def _stroke(colour: str, width: float, ways: Iterable[str]) -> str:
    return (
        f'<path fill="none" stroke="{colour}" stroke-width="{number(width)}" stroke-linecap="round" '
        f'stroke-linejoin="round" d="{"".join(ways)}"/>'
    )


def _path(points: Sequence[Point]) -> str:
    """Each point from the one before it: shorter, and no rounding adds up."""
    at_x, at_y = 0, 0
    parts: list[str] = []
    for index, (x, y) in enumerate(points):
        new_x, new_y = round(x * 100), round(-y * 100)
        across, down = _hundredths(new_x - at_x), _hundredths(new_y - at_y)
        letter = "M" if not index else "l" if index == 1 else " " if across[0] != "-" else ""
        parts.append(f"{letter}{across}{down}" if down[0] == "-" else f"{letter}{across} {down}")
        at_x, at_y = new_x, new_y
    return "".join(parts)


def _hundredths(value: int) -> str:
    whole, part = divmod(abs(value), 100)
    text = str(whole) if not part else f"{whole or ''}.{part:02d}".rstrip("0")
    return f"-{text}" if value < 0 else text
