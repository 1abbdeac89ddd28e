"""Measures drawn beside a form: a line between two marks, with words."""

from collections.abc import Sequence
from math import hypot

from .canvas import Point
from .letters import width_of
from .sketch import WORDS, Sketch

DRAWN = 46.0
"""The longer side of a form, in units, with room for words beside it."""

GAP = 3.0
"""A measure stands so far from what it measures."""

_TICK = 1.2
_HEAD = 1.6


def measured_across(sketch: Sketch, left: float, right: float, at: float, words: str, edge: float) -> None:
    """A measure of a width, its words above the line or below, whichever is further from the form;
    without words only the line.

    at: where the line lies; edge: the form's own edge, from which thin lines lead to it.
    """
    below = at > edge
    for x in (left, right):
        sketch.line([(x, edge + (0.8 if below else -0.8)), (x, at + (_TICK if below else -_TICK))], "fine")
    arrow(sketch, (left, at), (right, at))
    if words:
        _lines(sketch, (left + right) / 2, at + (1.2 + WORDS * 0.8 if below else -1.4), words, below)


def measured_up(sketch: Sketch, at: float, low: float, high: float, words: str, edge: float) -> None:
    """A measure of a height, left or right of the form; its words turn at the brackets.

    at: where the line stands; edge: the form's own edge there.
    """
    side = 1 if at > edge else -1
    for y in (low, high):
        sketch.line([(edge + 0.8 * side, y), (at + _TICK * side, y)], "fine")
    arrow(sketch, (at, low), (at, high))
    parts = split(words)
    middle = (low + high) / 2 - (len(parts) - 1) * WORDS * 0.6
    for index, part in enumerate(parts):
        sketch.words(
            (at + 1.6 * side, middle + index * WORDS * 1.2 + WORDS * 0.35),
            part,
            "start" if side > 0 else "end",
        )


def _beside(sketch: Sketch, start: Point, end: Point, side: int) -> Point:
    """The arrow beside an edge that slants, and the direction away from it. side: 1 below, -1 above."""
    (x0, y0), (x1, y1) = start, end
    length = hypot(x1 - x0, y1 - y0) or 1.0
    nx, ny = side * (y0 - y1) / length, side * (x1 - x0) / length
    for x, y in (start, end):
        near, far = 0.8, GAP + _TICK
        sketch.line([(x + nx * near, y + ny * near), (x + nx * far, y + ny * far)], "fine")
    arrow(sketch, (x0 + nx * GAP, y0 + ny * GAP), (x1 + nx * GAP, y1 + ny * GAP))
    return nx, ny


def measured_along(sketch: Sketch, start: Point, end: Point, words: str) -> None:
    """A measure along an edge that slants, below it where it rises, before it where it falls.

    start, end: of the edge, from left to right. Its words stand beside its end.
    """
    nx, ny = _beside(sketch, start, end, 1)
    x1, y1 = end
    x, y = x1 + max(nx, 0.0) * GAP + 2.0, y1 + ny * GAP
    for index, part in enumerate(split(words)):
        sketch.words((x, y + WORDS * (0.8 + 1.2 * index)), part, "start")


def measured_over(sketch: Sketch, start: Point, end: Point, words: str) -> None:
    """A measure above an edge that slants, its words where it leaves room for them.

    start, end: of the edge, from left to right.
    """
    (x0, y0), (x1, y1) = start, end
    nx, ny = _beside(sketch, start, end, -1)
    x, y = (x0 + x1) / 2 + nx * (GAP + 1.4), (y0 + y1) / 2 + ny * (GAP + 1.4)
    for index, part in enumerate(reversed(split(words))):
        sketch.words((x, y - index * WORDS * 1.2), part, "start" if nx > 0 else "end")


def split(words: str) -> list[str]:
    """A measure's words in two lines: `about 34.5 cm`, `(13½ in)`; by size `37 (40.5) cm,`, `14½ (16) in`."""
    for mark, keep in (("cm, ", "cm,"), (" (", "")):
        if mark in words:
            head, tail = words.split(mark, 1)
            return [head + keep, tail if keep else f"({tail}"]
    return [words]


def arrow(sketch: Sketch, start: Point, end: Point, both: bool = True) -> None:
    """A thin line with a head at its end, or at both."""
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    dx, dy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    sketch.line([start, end], "thin")
    for (x, y), way in ((end, 1), (start, -1)) if both else ((end, 1),):
        back = _HEAD * way
        sketch.area(
            [
                (x, y),
                (x - dx * back - dy * _HEAD * 0.3, y - dy * back + dx * _HEAD * 0.3),
                (x - dx * back + dy * _HEAD * 0.3, y - dy * back - dx * _HEAD * 0.3),
            ],
            "ink",
            None,
        )


def _lines(sketch: Sketch, middle: float, at: float, words: str, below: bool) -> None:
    parts = split(words) if width_of(words, WORDS) > 60 else [words]
    for index, part in enumerate(parts):
        line = index if below else index - len(parts) + 1
        sketch.words((middle, at + line * WORDS * 1.2), part)


def broken(sketch: Sketch, way: Sequence[Point]) -> None:
    """A break: two waved lines across what is drawn shorter than it is."""
    (x0, y0), (x1, y1) = way
    upright = x0 == x1
    for side in (-1.2, 1.2):
        wave = []
        for at in range(13):
            share = -0.1 + 1.2 * at / 12
            x, y = x0 + (x1 - x0) * share, y0 + (y1 - y0) * share
            swing = side + (0.7 if at % 4 == 1 else -0.7 if at % 4 == 3 else 0.0)
            wave.append((x + swing, y) if upright else (x, y + swing))
        if side < 0:
            first = wave
            continue
        sketch.area([*first, *reversed(wave)], "paper", None)
        sketch.line(first, "thin")
        sketch.line(wave, "thin")
