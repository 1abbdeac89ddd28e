"""How a chart runs, for who can't see it: which of its rounds lie where, and which way they go on."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Literal

from .chart_blocks import Diagonal
from .chart_frame import Framed
from .chart_ground import Bends, Edge, Fan, Hung, Inward, Sided, Sideways, is_closed
from .chart_lines import Layout, Line
from .chart_unrolled import Unrolled
from .section import Half, Rectangle
from .subject import Subject

Way = Literal[
    "outwards", "inwards", "unrolled", "upwards", "downwards", "beside", "corner", "bends", "along", "around"
]
"""From the middle; to the middle of the far side; straight, cut open; from the bottom; from the top; one
beside the other; from corner to corner; in bends; along a side; around an edge.
"""


@dataclass(frozen=True, slots=True)
class Passage:
    """Rounds one after the other that go on in one way. word: `round` or `row`. first, last: their labels."""

    word: str
    first: str
    last: str
    way: Way


def ways(subject: Subject, layout: Layout) -> list[Passage]:
    """The whole chart, in the order of the work."""
    found: list[tuple[str, str, Way]] = []
    for one, line in zip(subject.piece.rounds, layout.lines, strict=True):
        found.append((one.plan.word, one.plan.label, _way(line, layout, bool(found))))
    passages: list[Passage] = []
    for (word, way), alike in groupby(found, key=lambda one: (one[0], one[2])):
        labels = [label for _, label, _ in alike]
        passages.append(Passage(word, labels[0], labels[-1], way))
    return passages


def _way(line: Line, layout: Layout, later: bool) -> Way:
    """later: it isn't the first."""
    ground = line.ground
    if isinstance(ground, Rectangle | Framed) or (
        is_closed(ground) and later and not is_closed(layout.lines[0].ground)
    ):
        return "around"
    if isinstance(line, Diagonal):
        return "corner"
    known: Sequence[tuple[type, Way]] = (
        (Inward, "inwards"),
        (Fan, "outwards"),
        (Half, "outwards"),
        (Unrolled, "unrolled"),
        (Hung, "downwards"),
        (Sideways, "beside"),
        (Sided, "along"),
        (Edge, "along"),
        (Bends, "bends"),
    )
    found = next((way for kind, way in known if isinstance(ground, kind)), None)
    return found or ("outwards" if is_closed(ground) else "upwards")
