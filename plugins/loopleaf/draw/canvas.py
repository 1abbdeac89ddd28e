"""Collecting shapes by colour, and writing them as one SVG."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from html import escape

Point = tuple[float, float]
Box = tuple[float, float, float, float]

LARGE_MM = 100.0
"""A drawing larger than this is written to the next twentieth of a millimetre, others to the hundredth."""

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

    def lay(self, other: "Canvas", layer: int, outline: str, width: float) -> None:
        """Another canvas over what lies below a layer, with its outlines; its own layers stay in order."""
        for shape in other._outlines:
            self.line(layer, outline, width, [*shape, shape[0]])
        for (of, colour), shapes in other._fills.items():
            self._fills[layer + of + 2, colour] += shapes
        for (of, colour, wide), lines in other._lines.items():
            self._lines[layer + of + 2, colour, wide] += lines

    @property
    def box(self) -> Box:
        """Left, top, right, bottom in mm, y downwards; all 0 where nothing is drawn."""
        lefts, tops, rights, bottoms = [], [], [], []
        for shape, by in self._all():
            xs, ys = zip(*shape, strict=True)
            lefts.append(min(xs) - by)
            rights.append(max(xs) + by)
            tops.append(-max(ys) - by)
            bottoms.append(by - min(ys))
        return (min(lefts), min(tops), max(rights), max(bottoms)) if lefts else (0.0, 0.0, 0.0, 0.0)

    def _all(self) -> Iterable[tuple[Sequence[Point], float]]:
        for filled in self._fills.values():
            for shape in filled:
                yield shape, 0.0
        for (_, _, width), lines in self._lines.items():
            for shape in lines:
                yield shape, width / 2

    def body(self, outline: str, width: float, name: str = "") -> str:
        """The shapes as SVG paths, without the frame.

        outline, width: colour and width (mm) of the outlines. name: what is drawn several times alike, but
        for its place, is defined once under this name and a number; "" where nothing is.
        """
        left, top, right, bottom = self.box
        step = 1 if max(right - left, bottom - top) < LARGE_MM else 5
        parts: list[str] = []
        if self._outlines:
            parts.append(f'<path {_stroke(outline, width)} d="{_ways(self._outlines, "z", step)}"/>')
        painted = sorted(self._painted(), key=lambda one: one[0])
        if name:
            return "".join([*parts, *_once(painted, name, step)])
        ways = (f'<path {ink} d="{_ways(shapes, end, step)}"/>' for _, ink, shapes, end in painted)
        return "".join([*parts, *ways])

    def _painted(self) -> Iterator[tuple[int, str, list[Sequence[Point]], str]]:
        """The layer of each path, its ink, its shapes, and how each of them ends; fills before lines."""
        for (layer, colour), shapes in self._fills.items():
            yield layer, f'fill="{colour}"', shapes, "z"
        for (layer, colour, wide), shapes in self._lines.items():
            yield layer, _stroke(colour, wide), shapes, ""


def _once(
    painted: Iterable[tuple[int, str, list[Sequence[Point]], str]], name: str, step: int
) -> Iterator[str]:
    """The paths, those that are alike defined first and used in each of their places."""
    placed: list[tuple[str, int, int]] = []
    for _, ink, shapes, end in painted:
        x, y = round(shapes[0][0][0] * 100), round(-shapes[0][0][1] * 100)
        placed.append((f'{ink} d="{_ways(shapes, end, step, x, y)}"', x, y))
    times = Counter(way for way, _, _ in placed)
    names = {way: f"{name}-{at}" for at, way in enumerate((way for way in times if times[way] > 1), 1)}
    yield "<defs>"
    yield from (f'<path id="{one}" {way}/>' for way, one in names.items())
    yield "</defs>"
    for way, x, y in placed:
        if way in names:
            yield f'<use href="#{names[way]}" x="{_hundredths(x)}" y="{_hundredths(y)}"/>'
        else:
            yield f'<path transform="translate({_hundredths(x)} {_hundredths(y)})" {way}/>'


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


def _ways(shapes: Iterable[Sequence[Point]], end: str, step: int, x: int = 0, y: int = 0) -> str:
    return "".join(_path(points, step, x, y) + end for points in shapes)


def _path(points: Sequence[Point], step: int, at_x: int, at_y: int) -> str:
    """Each point from the one before it, the first from a place, in hundredths, to the next step: shorter,
    and no rounding adds up.
    """
    from_x, from_y, at_x, at_y = at_x, at_y, 0, 0
    parts: list[str] = []
    for index, (x, y) in enumerate(points):
        new_x, new_y = round((x * 100 - from_x) / step) * step, round((-y * 100 - from_y) / step) * step
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
