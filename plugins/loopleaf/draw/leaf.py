"""A leaf: a few rounds about a chain, drawn as their stitches come to rest in the chart.

Low stitches at its ends and tall ones in its middle give it its shape, which rounds that all rise alike
wouldn't show.
"""

from collections.abc import Iterator, Sequence

from ..fabric import Made, Space
from .canvas import Canvas, Point
from .chain_line import THICK, draw_chain
from .chart_ground import outward
from .chart_layout import lay_out
from .chart_lines import Layout, Line
from .chart_things import Thing, place_key
from .colour import shaded
from .items import Item
from .signs import CHAIN_LONG, UNIT
from .stitchwork import Patch, Placed, between, draw_row, straight
from .subject import Subject

ROUND_LAYERS = 4
VEIN = 0.55
"""What shows between the rounds, in the dark."""

STEPS = 4
"""The outline has so many points for each stitch."""


def draw_leaf(canvas: Canvas, subject: Subject) -> list[Point]:
    """The rounds from the first, seen from above; stems under them. Gives where the stems end."""
    ends: list[Point] = []
    layout = lay_out(subject, signs=False)
    mm = subject.scale.width_mm / UNIT
    for at, (line, one) in enumerate(zip(layout.lines, subject.worked, strict=True)):
        placed = [
            Placed(Item(thing, number, number + 1.0, foot=(number, number + 1.0)), patch, 1.0, False, True)
            for number, (thing, patch) in enumerate(_patches(line, mm))
        ]
        draw_row(canvas, ROUND_LAYERS * at, placed, subject.colours)
        for made in one.made:
            if isinstance(made, Space) and made.back:
                ends += _stem(canvas, layout, line, made, mm, subject.colours[made.yarn])
    canvas.outline(_rim(layout.lines[-1], mm))
    main = subject.colours[subject.worked[0].made[0].yarn]
    canvas.fill(-1, shaded(main, VEIN), _rim(layout.lines[-1], mm))
    return ends


def leaf_edge(subject: Subject, long: float, wide: float) -> list[Point]:
    """The outline over the heads of the last round, without stems, fitted to a length and a width about the
    middle (any unit, y upwards): tapered where low stitches end it.
    """
    rim = _rounded(_evened(_evened(_rim(lay_out(subject, signs=False).lines[-1], 1.0))))
    xs, ys = [x for x, _ in rim], [y for _, y in rim]
    left, right, low, high = min(xs), max(xs), min(ys), max(ys)
    return [
        ((x - (left + right) / 2) * long / (right - left), (y - (low + high) / 2) * wide / (high - low))
        for x, y in rim
    ]


def _evened(rim: Sequence[Point]) -> list[Point]:
    """Each point half-way to the middle of its neighbours: the edge as one draws it, not stitch by stitch."""
    around = zip([rim[-1], *rim[:-1]], rim, [*rim[1:], rim[0]], strict=True)
    return [((ax + 2 * x + bx) / 4, (ay + 2 * y + by) / 4) for (ax, ay), (x, y), (bx, by) in around]


def _rounded(rim: Sequence[Point]) -> list[Point]:
    """A closed line through the same points without corners: a cubic from each to the next, level with the
    way from the one before to the one after.
    """
    many, points = len(rim), []
    for at in range(many):
        before, start, end, after = (rim[(at + by) % many] for by in (-1, 0, 1, 2))
        for step in range(STEPS):
            t = step / STEPS
            x, y = (_cubic(*four, t) for four in zip(before, start, end, after, strict=True))
            points.append((x, y))
    return points


def _cubic(before: float, start: float, end: float, after: float, t: float) -> float:
    """One coordinate at a share of the way from start to end."""
    bend = 2 * before - 5 * start + 4 * end - after
    return start + t / 2 * (end - before + t * (bend + t * (3 * (start - end) + after - before)))


def _patches(line: Line, mm: float) -> list[tuple[Thing, Patch]]:
    """Each thing with its patch of cloth: from between its neighbours' feet to between their heads."""
    heads = [_head(line, thing) for thing in line.things]
    feet = [_foot(line, thing, head) for thing, head in zip(line.things, heads, strict=True)]
    many = len(heads)

    def halfway(points: list[Point], at: int) -> Point:
        (ax, ay), (bx, by) = points[at % many], points[(at + 1) % many]
        return _in_mm(((ax + bx) / 2, (ay + by) / 2), mm)

    return [
        (
            thing,
            between(
                straight(halfway(feet, at - 1), halfway(feet, at)),
                straight(halfway(heads, at - 1), halfway(heads, at)),
            ),
        )
        for at, thing in enumerate(line.things)
    ]


def _head(line: Line, thing: Thing) -> Point:
    if isinstance(thing, Space):
        return line.arches[id(thing)].at(0.0)
    return line.heads[id(thing)]


def _foot(line: Line, thing: Thing, head: Point) -> Point:
    if isinstance(thing, Made):
        return line.feet[id(thing)][0]
    out = outward(line.ground, head)
    return (head[0] - out[0] * UNIT, head[1] - out[1] * UNIT)


def _stem(
    canvas: Canvas, layout: Layout, line: Line, chain: Space, mm: float, colour: str
) -> Iterator[Point]:
    """A chain that is worked back on, from the stitch before it straight outwards; where it ends."""
    before = chain.previous
    while isinstance(before, Made | Space) and layout.top(place_key(before)) is None:
        before = before.previous
    start = layout.top(place_key(before)) if before is not None else None
    if start is None:
        return
    out = outward(line.ground, start)
    long = CHAIN_LONG * chain.chains
    way = [_in_mm((start[0] + out[0] * by, start[1] + out[1] * by), mm) for by in _links(long, chain.chains)]
    draw_chain(canvas, -3, way, colour, THICK * UNIT * mm)
    yield way[-1]


def _links(long: float, chains: int) -> list[float]:
    """Where the links of a chain part; the first begins half a stitch below the top that it rises from."""
    steps = max(chains, 1)
    return [-UNIT / 2 + (long + UNIT / 2) * at / steps for at in range(steps + 1)]


def _rim(line: Line, mm: float) -> list[Point]:
    return [_in_mm(_head(line, thing), mm) for thing in line.things]


def _in_mm(point: Point, mm: float) -> Point:
    return (point[0] * mm, point[1] * mm)
