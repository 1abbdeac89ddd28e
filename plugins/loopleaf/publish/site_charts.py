"""The charts as files of their own: a page shows them as pictures, and a maker can keep one."""

from collections.abc import Iterable

from .kept import Worked


def chart_files(patterns: Iterable[Worked]) -> dict[str, str]:
    """SVG text by its path in the site, for right and left hands."""
    found: dict[str, str] = {}
    for worked in (page for pattern in patterns for page in pattern.pages):
        for leaflet in worked.leaflets.values():
            for piece in leaflet.pieces:
                for drawing in piece.drawings:
                    found |= {drawing.file: drawing.svg} if drawing.file else {}
                    found |= {drawing.left_file: drawing.left} if drawing.left_file else {}
    return found
