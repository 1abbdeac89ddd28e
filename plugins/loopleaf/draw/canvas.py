"""Collecting shapes by colour, and writing them as one SVG."""

from collections import defaultdict
from collections.abc import Sequence
from html import escape

Point = tuple[float, float]


class Canvas:
    """Shapes in mm, y upwards, in layers drawn in order; shapes of a layer and colour share one path."""

    def __init__(self) -> None:
        self._fills: dict[tuple[int, str], list[Sequence[Point]]] = defaultdict(list)
        self._lines: dict[tuple[int, str, float], list[Sequence[Point]]] = defaultdict(list)
        self._box: tuple[float, float, float, float] | None = None

    def fill(self, layer: int, colour: str, points: Sequence[Point]) -> None:
        """A closed shape."""
        self._grow(points, 0.0)
        self._fills[layer, colour].append(points)

    def line(self, layer: int, colour: str, width: float, points: Sequence[Point]) -> None:
        """A line with round ends."""
        self._grow(points, width / 2)
        self._lines[layer, colour, round(width, 1)].append(points)

    def paste(self, other: "Canvas", layer: int, x: float, y: float, wide: float, high: float) -> None:
        """Another canvas at a place of this one, drawn narrower or lower where seen aslant."""
        for (of, colour), shapes in other._fills.items():
            for shape in shapes:
                self.fill(layer + of % 1000, colour, [(x + px * wide, y + py * high) for px, py in shape])
        for (of, colour, width), shapes in other._lines.items():
            for shape in shapes:
                moved = [(x + px * wide, y + py * high) for px, py in shape]
                self.line(layer + of % 1000, colour, width, moved)

    def _grow(self, points: Sequence[Point], by: float) -> None:
        for x, y in points:
            y = -y
            box = self._box or (x, y, x, y)
            self._box = (
                min(box[0], x - by), min(box[1], y - by), max(box[2], x + by), max(box[3], y + by)
            )  # fmt: skip

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom in mm, y downwards."""
        return self._box or (0.0, 0.0, 1.0, 1.0)

    def body(self) -> str:
        """The shapes as SVG paths, without the frame."""
        parts: list[str] = []
        layers = sorted({key[0] for key in self._fills} | {key[0] for key in self._lines})
        for layer in layers:
            for (of, colour), shapes in self._fills.items():
                if of == layer:
                    way = "".join(_path(points) + "z" for points in shapes)
                    parts.append(f'<path fill="{colour}" d="{way}"/>')
            for (of, colour, width), shapes in self._lines.items():
                if of == layer:
                    way = "".join(_path(points) for points in shapes)
                    parts.append(
                        f'<path fill="none" stroke="{colour}" stroke-width="{_number(width)}" '
                        f'stroke-linecap="round" stroke-linejoin="round" d="{way}"/>'
                    )
        return "".join(parts)


def svg(body: str, box: tuple[float, float, float, float], title: str, margin: float = 2.0) -> str:
    """A whole SVG; the box is in mm, so that drawings can be shown to one scale."""
    left, top, right, bottom = box
    view = " ".join(
        _number(v)
        for v in (left - margin, top - margin, right - left + 2 * margin, bottom - top + 2 * margin)
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" role="img"><title>{escape(title)}</title>'
        f"{body}</svg>"
    )


def _path(points: Sequence[Point]) -> str:
    return "M" + "L".join(f"{_number(x)} {_number(-y)}" for x, y in points)


def _number(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
