"""No stroke of a printed booklet is thinner than a quarter of a point, whatever it is drawn in."""

from collections.abc import Iterator
from math import sqrt
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from loopleaf.publish.booklet import Assets, print_booklet
from loopleaf.publish.booklet_html import booklet_html
from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.pdf.reading import opened

DOCS = Path(__file__).resolve().parents[2] / "patterns"
SLUGS = sorted(path.stem for path in DOCS.glob("*.yml"))
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


@pytest.mark.parametrize("slug", SLUGS)
def test_no_stroke_is_thinner_than_a_hairline(slug: str) -> None:
    file = DOCS / f"{slug}.yml"
    set_out = leaflet(check(file.read_bytes(), file.name), "US", Settings(contact="ask@example.org"))
    pdf = print_booklet(booklet_html(set_out, "a4"), Assets(DOCS)).pdf
    with opened(pdf) as book:
        found = [width for page in book.pages for width in strokes(page, page.get("/Resources"))]
    assert len(found) > 30
    assert min(found) >= THINNEST
