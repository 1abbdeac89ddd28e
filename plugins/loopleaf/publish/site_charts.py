"""The charts as files of their own: a page shows them as pictures, and a maker can keep one.

At every height on offer they are files too, with the picture of the whole: a page asks for them only when
a reader chooses that height.
"""

from collections.abc import Iterable, Iterator

from .drawing import Drawing
from .kept import Worked
from .leaflet_parts import Leaflet


def chart_files(patterns: Iterable[Worked]) -> dict[str, str]:
    """SVG text by its path in the site, for right and left hands."""
    found: dict[str, str] = {}
    for worked in (page for pattern in patterns for page in pattern.pages):
        for leaflet in worked.leaflets.values():
            for drawing in _drawings(leaflet):
                found |= {drawing.file: drawing.svg} if drawing.file else {}
                found |= {drawing.left_file: drawing.left} if drawing.left_file else {}
    return found


def _drawings(leaflet: Leaflet) -> Iterator[Drawing]:
    """Of the pattern as written, then of every other height."""
    changed = [one.changed for one in leaflet.heights.settings if one.changed] if leaflet.heights else []
    pieces = [*leaflet.pieces, *(piece for then in changed for piece in then.pieces)]
    yield from (drawing for piece in pieces for drawing in piece.drawings)
    yield from (then.picture for then in changed if then.picture is not None)
