"""Reads how wide the strokes of a printed booklet are, whatever they are drawn in."""

from collections.abc import Iterator
from math import sqrt
from typing import Any

import pikepdf

THINNEST = 0.25
STROKES = {"S", "s", "B", "b", "B*", "b*"}

Matrix = tuple[float, float, float, float]


def strokes(stream: Any, resources: Any, matrix: Matrix = (1.0, 0.0, 0.0, 1.0)) -> Iterator[float]:
    """The width of every stroke of a page or of what is drawn on it, in points. matrix: without its shift."""
    kept: list[tuple[Matrix, float]] = []
    width = 1.0
    for one in pikepdf.parse_content_stream(stream):
        name, operands = str(one.operator), one.operands
        if name == "q":
            kept.append((matrix, width))
        elif name == "Q":
            matrix, width = kept.pop()
        elif name == "cm":
            matrix = _times([float(part) for part in operands], matrix)
        elif name == "w":
            width = float(operands[0])
        elif name in STROKES:
            a, b, c, d = matrix
            yield width * sqrt(abs(a * d - b * c))
        elif name == "Do":
            drawn = resources.XObject[str(operands[0])]
            if drawn.Subtype == "/Form":
                own = [float(part) for part in drawn.get("/Matrix", [1, 0, 0, 1, 0, 0])]
                yield from strokes(drawn, drawn.get("/Resources", resources), _times(own, matrix))


def _times(one: list[float], other: Matrix) -> Matrix:
    a, b, c, d = one[:4]
    e, f, g, h = other
    return (a * e + b * g, a * f + b * h, c * e + d * g, c * f + d * h)
