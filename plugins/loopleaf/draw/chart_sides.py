"""Rows that go down the side of their own piece, into the ends of its rows: they stand along that side."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass

from ..fabric import Made
from ..fabric.worked import Place
from .canvas import Point
from .chart_ground import Bends, Fan, Hung, Sided, Straight
from .chart_lines import Layout, Line, Top
from .chart_things import FIRST_ROOM, ROOM, Thing, place_key, tall_of
from .row_ends import row_ends
from .section import Half
from .signs import UNIT

CLEAR = 1.0
"""Between the piece's last stitches and the row that stands beside them, in units."""


BEFORE, LEAST_DOWN = 14.0, 0.3
"""Numbers of rows around a middle begin so far before them; a unit further is so much lower, at least."""


@dataclass(frozen=True, slots=True)
class Side:
    """What such a row is laid on. tops: the ends of the rows, as places. long: how long their side is."""

    ground: Sided | Hung
    tops: dict[Hashable, Top]
    long: float

    def room(self, many: int) -> float:
        """How wide a row of so many is laid, at least: evenly along all of its side; over a corner, any."""
        over = isinstance(self.ground, Sided) and self.ground.over
        return 0.0 if over else self.long * (1 - 1 / many) + UNIT


def side_of(layout: Layout, things: Sequence[Thing], backward: bool, low: float) -> Side | None:
    """What a row goes on along, which goes into the ends of the rows laid out; None where that can't be told.

    low: where the last row has its heads, in the mean. A row that goes over the piece's top before it goes
    down has both on one ground, and an own end of which it makes use.
    """
    if not isinstance(layout.ground, Straight | Fan | Bends | Half):
        return None
    ends = {id(end): end for thing in things for end in row_ends(thing)}
    lines = {id(thing): line for line in layout.lines for thing in line.things}
    beside = [(line, end.into[0]) for end in ends.values() if (line := lines.get(id(end.into[0])))]
    over = any(isinstance(thing, Made) and thing.into and not [*row_ends(thing)] for thing in things)
    if not beside or (over and type(layout.ground) is not Straight):
        return None
    sides = [at_left(line, made) for line, made in beside]
    if not over and not all(sides) and any(sides) and isinstance(layout.ground, Fan | Half):
        return _below(layout, things, ends, lines)
    left = backward if over else sum(at_left(line, made) for line, made in beside) * 2 > len(beside)
    found = [reach_of(line, made, left) for line, made in beside]
    (start, top), high = edge_of(found, left), 0.0
    if over:
        high = max(tall_of(thing) for thing in things if isinstance(thing, Made)) + ROOM
    ground = Sided((start[0], max(low, start[1]) + high if over else start[1]), low, left, top, over)
    tops: dict[Hashable, Top] = {}
    for key, end in ends.items():
        line = lines.get(id(end.into[0]))
        if line is None:  # the end of this row itself
            middle: Point = (start[0], ground.corner[1] - high / 2)
            room = high
        else:
            foot, head = _ends(line, end.into[0])
            middle, room = ((foot[0] + head[0]) / 2, (foot[1] + head[1]) / 2), abs(head[1] - foot[1]) + ROOM
        along = ground.beside(middle)
        tops[place_key(ends[key])] = Top(ground, along, along, low, low, room, 0)
    return Side(ground, _in_order(layout, tops, left), sum(top.wide for top in tops.values()))


def _below(
    layout: Layout, things: Sequence[Thing], ends: Mapping[int, Made], lines: Mapping[int, Line]
) -> Side:
    """Along both sides of rows that go around a middle: their ends lie on one level line, and the row hangs
    from that.
    """
    middles: dict[int, tuple[float, float]] = {}
    points: list[Point] = []
    for key, end in ends.items():
        foot, head = _ends(lines[id(end.into[0])], end.into[0])
        points += [foot, head]
        middles[key] = ((foot[0] + head[0]) / 2, abs(head[0] - foot[0]) + ROOM)
    order = [key for thing in things for end in row_ends(thing) for key in (id(end),)]
    right = middles[order[0]][0] < middles[order[-1]][0]
    ground = Hung(min(y for _, y in points) - UNIT / 2 - CLEAR, 1.0 if right else -1.0)
    tops: dict[Hashable, Top] = {}
    for key, (x, wide) in middles.items():
        tops[place_key(ends[key])] = Top(ground, x * ground.way_to, x * ground.way_to, 0.0, 0.0, wide, 0)
    long = max(x for x, _ in points) - min(x for x, _ in points)
    return Side(ground, _in_order(layout, tops, not right), long)


def clear_of(layout: Layout, first: int) -> None:
    """Moves the numbers of rows that begin at that side out of what stands along it. first: the index of the
    first such row.
    """
    ground = layout.lines[first].ground
    heads = [head for line in layout.lines[first:] for head in line.heads.values()]
    if isinstance(ground, Hung):
        low = min((y for _, y in heads), default=0.0) - UNIT
        for line in layout.lines[:first]:
            (_, start), (_, further) = line.before(BEFORE, 0.5), line.before(BEFORE + 1.0, 0.5)
            line.beyond = max(start - low, 0.0) / max(start - further, LEAST_DOWN)
    if not isinstance(ground, Sided):
        return
    reach = max((ground.away(head) for head in heads), default=0.0)
    for line in layout.lines[:first]:
        if line.backward != ground.left:
            start = ground.away(line.before(0.0, 0.5))
            line.beyond = max(reach - start, 0.0)


def at_left(line: Line, made: Place) -> bool:
    """Whether a stitch of a row stands in its left half."""
    at = next(at for at, thing in enumerate(line.things) if thing is made)
    return at < (len(line.things) - 1) / 2 or (len(line.things) == 1 and line.backward)


def _ends(line: Line, made: Place) -> tuple[Point, Point]:
    """Where a stitch's foot and head lie."""
    feet, head = line.feet[id(made)], line.heads[id(made)]
    return (sum(x for x, _ in feet) / len(feet), sum(y for _, y in feet) / len(feet)), head


def reach_of(line: Line, made: Place, left: bool) -> tuple[Point, Point]:
    """How far a row reaches at that side, at its foot and at its head: a first chain stands beside it."""
    first = isinstance(line.made_first, Made) and line.made_first.role == "chain"
    aside = UNIT / 2 + CLEAR + (FIRST_ROOM if line.backward != left and first else 0.0)
    (x, low), (over, high) = _ends(line, made)
    aside = -aside if left else aside
    return (x + aside, low), (over + aside, high)


def edge_of(
    found: Sequence[tuple[Point, Point]], left: bool, leaning: float | None = None
) -> tuple[Point, Point]:
    """The straight edge beside the ends of rows: its upper end, and the direction down, of length 1. leaning:
    how far it goes to the right for each unit up, where that is known.
    """
    points = [point for pair in found for point in pair]
    low, high = min(points, key=lambda at: at[1]), max(points, key=lambda at: at[1])
    tall = high[1] - low[1] or 1.0
    lean = (high[0] - low[0]) / tall
    if abs(high[0] - low[0]) < UNIT:
        lean = 0.0
    lean = lean if leaning is None else leaning
    outermost = min if left else max
    foot = outermost(x - lean * (y - low[1]) for x, y in points)
    long = (1 + lean * lean) ** 0.5
    return (foot + lean * tall, high[1]), (-lean / long, -1 / long)


def _in_order(layout: Layout, tops: dict[Hashable, Top], left: bool) -> dict[Hashable, Top]:
    """The same, numbered on from those of the last row, from left to right."""
    last = layout.lines[-1]
    ranked = sorted(tops, key=lambda key: tops[key].along)
    first = -len(ranked) - 1 if left else len(last.things) + 1  # around the corner
    return {key: tops[key]._replace(order=first + at) for at, key in enumerate(ranked)}
