"""Yarn as it is drawn in line: a tube with two edges, which passes over what lies deeper and under what lies
nearer.

Each point of a strand says how near to the viewer the yarn is there. The strand is cut halfway between points
of different depth, and all the parts of a drawing are laid down from the deepest to the nearest, each with
its dark edges first: so every crossing shows which yarn is above.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from typing import NamedTuple

from .canvas import Point, number
from .sketch import Fill, Sketch

EDGE = 0.42
"""Width of a strand's dark edge, in units: more than a quarter point even where it is printed smaller."""

_LAP = 0.12
"""The inside of a part reaches so far beyond its cut ends, so that no seam shows."""


class Knot(NamedTuple):
    """A point on the way of a strand; near: greater is nearer to the viewer."""

    x: float
    y: float
    near: float = 0.0


Cubic = tuple[Point, Point, Point, Point]


@dataclass(frozen=True, slots=True)
class Strand:
    """Yarn along knots. width: in units, its edges included. fill: its colour. joined: whether its two ends
    grow together, or out of something: they are round, and parts of one depth melt into each other.
    """

    knots: Sequence[Knot]
    width: float = 2.6
    fill: Fill = "paper"
    joined: bool = False


@dataclass(frozen=True, slots=True)
class Solid:
    """Anything else in the drawing at one depth: a closed shape."""

    way: str
    reach: Sequence[Point]
    near: float
    fill: Fill = "steel"


def draw_strands(sketch: Sketch, things: Iterable[Strand | Solid]) -> None:
    """Draws all from the deepest to the nearest; as deep as another, in the order given."""
    parts: list[tuple[float, Strand | Solid, list[list[Cubic]]]] = []
    for thing in things:
        if isinstance(thing, Solid):
            parts.append((thing.near, thing, []))
            continue
        levels: dict[float, list[list[Cubic]]] = {}
        for near, run in _runs(thing.knots):
            levels.setdefault(near, []).append(run)
        parts += [(near, thing, runs) for near, runs in levels.items()]
    for near, thing, runs in sorted(parts, key=lambda part: part[0]):
        if isinstance(thing, Solid):
            sketch.shape(thing.way, thing.reach, thing.fill, "edge")
            continue
        reach = [point for run in runs for cubic in run for point in (cubic[0], cubic[3])]
        ends = [k for k in (thing.knots[0], thing.knots[-1]) if thing.joined and k.near == near]
        for width, fill in ((thing.width, "ink"), (thing.width - 2 * EDGE, thing.fill)):
            for end in ends:
                sketch.dot((end.x, end.y), width / 2, fill)
        way = "".join(_way(run) for run in runs)
        inner = way if len(ends) == 2 else "".join(_way(_lapped(run)) for run in runs)
        sketch.tube(way, inner, reach, thing.width, EDGE, thing.fill)


def curve(knots: Sequence[Knot]) -> list[Cubic]:
    """A smooth way through knots: its direction at each is that of the circle-like way through its
    neighbours, the nearer one counting more.
    """
    if len(knots) < 2:
        return []
    steps = [hypot(b.x - a.x, b.y - a.y) or 1e-6 for a, b in pairwise(knots)]
    speeds: list[Point] = []
    for at, knot in enumerate(knots):
        if at in (0, len(knots) - 1):
            speeds.append((0.0, 0.0))
            continue
        before, after = steps[at - 1], steps[at]
        back, on = knots[at - 1], knots[at + 1]
        share = (before + after) or 1.0
        speeds.append(
            (
                ((knot.x - back.x) / before * after + (on.x - knot.x) / after * before) / share,
                ((knot.y - back.y) / before * after + (on.y - knot.y) / after * before) / share,
            )
        )
    found: list[Cubic] = []
    for at, step in enumerate(steps):
        a, b = knots[at], knots[at + 1]
        start = (a.x + speeds[at][0] * step / 3, a.y + speeds[at][1] * step / 3)
        end = (b.x - speeds[at + 1][0] * step / 3, b.y - speeds[at + 1][1] * step / 3)
        if at == 0:
            start = ((a.x + end[0]) / 2, (a.y + end[1]) / 2)
        if at == len(steps) - 1:
            end = ((b.x + start[0]) / 2, (b.y + start[1]) / 2)
        found.append(((a.x, a.y), start, end, (b.x, b.y)))
    return found


def _runs(knots: Sequence[Knot]) -> Iterator[tuple[float, list[Cubic]]]:
    """The way in parts of one depth, cut halfway between knots of different depth."""
    run: list[Cubic] = []
    for at, cubic in enumerate(curve(knots)):
        a, b = knots[at].near, knots[at + 1].near
        if a == b:
            run.append(cubic)
            continue
        first, second = _halves(cubic)
        yield a, [*run, first]
        run = [second]
    if run:
        yield knots[-1].near, run


def _halves(cubic: Cubic) -> tuple[Cubic, Cubic]:
    a, b, c, d = cubic
    ab, bc, cd = _middle(a, b), _middle(b, c), _middle(c, d)
    abc, bcd = _middle(ab, bc), _middle(bc, cd)
    half = _middle(abc, bcd)
    return (a, ab, abc, half), (half, bcd, cd, d)


def _middle(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def _lapped(run: Sequence[Cubic]) -> list[Cubic]:
    """The same way, a little longer at both ends."""
    first, last = run[0], run[-1]
    start, end = _beyond(first[1], first[0]), _beyond(last[2], last[3])
    longer = [*run]
    longer[0] = (start, *longer[0][1:])
    longer[-1] = (*longer[-1][:3], end)
    return longer


def _beyond(before: Point, at: Point) -> Point:
    dx, dy = at[0] - before[0], at[1] - before[1]
    length = hypot(dx, dy) or 1.0
    return (at[0] + dx / length * _LAP, at[1] + dy / length * _LAP)


def _way(run: Sequence[Cubic]) -> str:
    x, y = run[0][0]
    parts = [f"M{number(x)} {number(y)}"]
    for _, b, c, d in run:
        placed = (f"{number(px - x)} {number(py - y)}" for px, py in (b, c, d))
        parts.append("c" + " ".join(placed))
        x, y = d
    return "".join(parts)
