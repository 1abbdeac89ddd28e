"""The schematic of rows that lie as part of a ring: its inner and outer edge, and the depth between them."""

from .canvas import Point
from .lettered import Lettered
from .measuring import DRAWN, GAP, measured_along, split
from .sheet import Sheet
from .sketch import WORDS, Sketch


def arc(
    sketch: Sketch, letters: Lettered, sheet: Sheet, deep_mm: float, edges: tuple[str, str], deep: str
) -> list[str]:
    """Draws it and says what it measures. deep_mm, deep: from edge to edge. edges: how long the inner and the
    outer one are.
    """
    inner_mm, outer_mm = sheet.below, sheet.below + deep_mm
    scale = DRAWN / (2 * outer_mm)

    def along(out: float) -> list[Point]:
        points = (sheet.point(0.0, i / 48, out - sheet.below) for i in range(49))
        return [(x * scale, -y * scale) for x, y in points]

    inner, outer = along(inner_mm), along(outer_mm)
    sketch.line([*inner, *reversed(outer)], closed=True)
    inside, outside = edges
    sketch.line(along(outer_mm + 2.4 / scale), "dashed")
    named = letters.short(outside, "along the outer edge")
    sketch.words((0.0, sketch.box[1] - 2.0), named if named != outside else f"{outside} along this edge")
    measured_along(sketch, inner[-1], outer[-1], letters.short(deep, "from edge to edge"))
    if not inner_mm:  # rows that begin in one place
        return [f"{outside} along the outer edge", f"{deep} from the middle to it"]
    (x, y), low = inner[24], max(inner[-1][1], outer[-1][1]) + GAP + 2.0
    sketch.line([(0.0, low), (x, y + 1.2)], "fine")
    for index, part in enumerate(split(letters.short(inside, "along the inner edge"))):
        sketch.words((1.0, low + WORDS * (1.0 + 1.2 * index)), part, "end")
    return [
        f"{inside} along the inner edge",
        f"{outside} along the outer edge",
        f"{deep} from the one to the other",
    ]
