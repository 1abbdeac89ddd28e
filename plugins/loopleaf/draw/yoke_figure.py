"""The schematic of a yoke worked in rows: its neck, its outer edge and its depth, and its four corners."""

from .lettered import Lettered
from .letters import width_of
from .measuring import DRAWN, GAP, measured_up, split
from .sketch import WORDS, Sketch
from .yoke import CORNERS, Yoke

TOLD = 2.4
"""The edge whose length is told above has a dashed line so far beside it, in units."""


def yoked(
    sketch: Sketch, letters: Lettered, yoke: Yoke, deep_mm: float, edges: tuple[str, str], deep: str
) -> list[str]:
    """Draws it and says what it measures. deep_mm, deep: from edge to edge. edges: how long the neck and the
    outer edge are.
    """
    outer = yoke.edge(deep_mm)
    scale = DRAWN / (max(x for x, _ in outer) - min(x for x, _ in outer))
    neck, outer, beside = (
        [(x * scale, -y * scale) for x, y in yoke.edge(out)] for out in (0.0, deep_mm, deep_mm + TOLD / scale)
    )
    sketch.line([*neck, *reversed(outer)], closed=True)
    for number in range(1, CORNERS + 1):
        sketch.line([neck[number], outer[number]], "fine")
    sketch.line(beside, "dashed")
    inside, outside = edges
    named = letters.short(outside, "along the outer edge")
    sketch.words((0.0, sketch.box[1] - 2.0), named if named != outside else f"{outside} along this edge")
    right = max(x for x, _ in beside)
    measured_up(
        sketch, right + GAP, outer[-1][1], neck[-1][1], letters.short(deep, "from edge to edge"), right
    )
    told = letters.short(inside, "along the neck")
    lines = split(told)
    wide, high = neck[3][0] - neck[2][0], neck[-1][1] - neck[2][1]
    first = neck[2][1] + WORDS * 1.2
    if high < WORDS * (1.2 * len(lines) + 0.6) or wide < max(width_of(part, WORDS) for part in lines) + WORDS:
        lines = split(f"{inside} along the neck") if told == inside else lines
        at, low = (neck[0][0] + neck[-1][0]) / 2, sketch.box[3] + 2.0
        sketch.line([(at, low), (at, neck[2][1] + 1.2)], "fine")
        first = low + WORDS
    for index, part in enumerate(lines):
        sketch.words((0.0, first + WORDS * 1.2 * index), part)
    return [
        f"{inside} along the neck",
        f"{outside} along the outer edge",
        f"{deep} from the one to the other",
    ]
