"""Rounds that are turned begin beside the seam of the round below: above that their stitches stay apart."""

from collections.abc import Sequence

from ..fabric import Made
from .chart_ground import is_closed
from .chart_lines import Line, Top
from .chart_things import Thing
from .section import Oval
from .signs import is_cross

OPEN = 0.7
"""Above a seam that a round passes over it stays open by so much of the gap there: upright stitches on both
sides of it need as much.
"""


def passed_over(line: Line, before: Line | None, below: Sequence[Sequence[Top]]) -> tuple[int, int] | None:
    """The two things of a round, by their numbers along the way, between which the seam of the round before
    lies, where it was turned and passes over that; None else.
    """
    if before is None or before.backward == line.backward or not isinstance(line.ground, Oval):
        return None
    if line.ground.spine or not is_closed(before.ground) or len(before.things) < 2:
        return None
    last = len(before.things) - 1
    orders = [sorted(top.order for top in tops if top.level == before.level) for tops in below]
    for at in range(len(orders) - 1):
        one, other = orders[at], orders[at + 1]
        if one and other and one[-1] == last and other[0] == 0:
            return at, at + 1
    return None


def open_below(line: Line, before: Line, ends: tuple[int, int], xs: Sequence[float]) -> tuple[float, float]:
    """The share of its way at which a round stays open above the seam of the round before, and how far."""
    way = line.ground.way(line.level)
    return (xs[ends[0]] + xs[ends[1]]) / 2 / way, OPEN * before.gap


def lean_of(line: Line, first: Thing, below: Sequence[Top]) -> float:
    """The share of a round's way from the head of its first stitch to the place it stands on, where one gap
    is wider than the other: what stands beside it leans as it does. 0 for a cross, which is drawn upright.
    """
    if not isinstance(line.ground, Oval) or line.ground.spine or not isinstance(first, Made) or not below:
        return 0.0
    if is_cross(first.kind) or any(top.ground is not line.ground for top in below):
        return 0.0
    head = line.opened(line.start)
    off = [(top.drawn - head + 0.5) % 1.0 - 0.5 for top in below]
    return sum(off) / len(off)
