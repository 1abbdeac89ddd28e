"""A row that goes all the way around its own piece: over its top, down a side, along the other side of the
foundation, up the other side; and what is worked around outside of it.
"""

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..fabric import Made, Space
from .arch import arch
from .canvas import Point
from .chart_around_feet import (
    MIDDLE,
    crowding,
    feet_outside,
    first_feet,
    foot_at,
    middle_of,
    settled,
)  # fmt: skip
from .chart_feet import FOOT_ROOM
from .chart_frame import Framed, Stretch
from .chart_lines import Layout, Line, Top
from .chart_sides import at_left, edge_of, reach_of
from .chart_things import FIRST_ROOM, ROOM, Thing, gap_of, place_key, tall_of, things_of, wide_of
from .row_ends import first_aside, row_ends
from .signs import CHAIN_LONG, UNIT
from .subject import Subject


@dataclass(slots=True)
class AroundLine(Line):
    """A row around its piece; `before` goes on straight from its first stitch."""

    def before(self, away: float, up: float) -> Point:
        """A point so far before its first stitch, so far up."""
        ground = self.ground
        assert isinstance(ground, Framed)
        return ground.straight(self.start, away if self.backward else -away, self.high * up)


def goes_around(subject: Subject) -> bool:
    """Whether the first row into row ends of its own piece goes on along the foundation."""
    at = first_aside(subject.worked)
    if at is None:
        return False
    first_side = {id(place) for place in subject.piece.starts[0]}
    return any(
        isinstance(place, Made) and place.role == "foundation" and id(place) not in first_side
        for made in subject.worked[at].made
        for place in (made.into if isinstance(made, Made) else ())
    )


def lay_rows_around(layout: Layout, subject: Subject, first: int, low: float) -> None:
    """Lays the row that goes around the piece and all that follow it. first: its index. low: where the
    last row within has its heads, in the mean.
    """
    chains = {
        place.number: layout.ground.at(layout.begin.out, layout.begin.chains[id(place)])
        for place in subject.piece.starts[0]
        if isinstance(place, Made) and id(place) in layout.begin.chains
    }
    frame: Framed | None = None
    for worked in subject.worked[first:]:
        made_first = next(iter(worked.made), None)
        things = things_of(worked, False)
        if frame is None:
            chain = isinstance(made_first, Made) and made_first.role == "chain"
            frame = _frame_of(layout, things, chain, low)
        turned = _goes_back(layout, things) if len(layout.lines) > first else False
        line = AroundLine(frame, things[::-1] if turned else things, turned, frozenset(), gap_of(worked), 0.0)
        line.made_first = made_first
        layout.lines.append(line)
        if things:
            _lay_around(layout, line, frame, chains if len(layout.lines) == first + 1 else None)
        assert isinstance(line.ground, Framed)
        frame = line.ground.moved(line.high)
    _clear_around(layout, first)


def _goes_back(layout: Layout, things: Sequence[Thing]) -> bool:
    """Whether a row around is made against the way of the one within."""
    places = [place for thing in things if isinstance(thing, Made) for place in thing.into]
    orders = [top.order for place in places if (top := layout.tops.get(place_key(place))) is not None]
    steps = [after - order for order, after in pairwise(orders)]
    return sum(step < 0 for step in steps) > sum(step > 0 for step in steps)


def _frame_of(layout: Layout, things: Sequence[Thing], chain: bool, low: float) -> Framed:
    """What the first row around a piece is laid on. things: its own, in the order made. chain: a first chain
    stands before them. low: where the last row has its heads, in the mean.
    """
    lines = {id(thing): line for line in layout.lines for thing in line.things}
    own = {id(thing) for thing in things}
    ends = [end for thing in things for end in row_ends(thing) if id(end.into[0]) not in own]
    over = _goes_over(things, lines)
    # Where it doesn't come over the top, it goes on at the end that the last row ended at.
    last = layout.lines[-1]
    near_left = last.backward
    if over:
        over_xs = [layout.tops[place_key(place)].along for place in over]
        near_left = over_xs[-1] < over_xs[0] or (len(over_xs) == 1 and last.backward)
    elif ends and (line := lines.get(id(ends[0].into[0]))) is not None and len(line.things) > 1:
        near_left = at_left(line, ends[0].into[0])
    bottom = layout.begin.out
    sides: list[Stretch] = []
    for left in (near_left, not near_left):
        beside = chain and bool(over) and left != near_left
        found = [_reach(layout, line, left, beside) for line in layout.lines if line.heads]
        (x, y), (dx, dy) = edge_of(found, left, _lean(layout, left))
        sides.append(Stretch((x, y), (x + dx * (y - bottom) / -dy, bottom)))
    high = max([low, *(layout.tops[place_key(place)].out for place in over)])
    tall = (max(map(tall_of, _standing_on(things, over))) + ROOM) if over else 0.0
    (near, near_low), (far, far_low) = ((side.at_height(high + tall), side.end) for side in sides)
    top = Stretch((far[0], high), (near[0], high))
    again = (far[0], high + tall), (near[0], high + tall)
    return Framed(
        (top, Stretch(near, near_low), Stretch(near_low, far_low), Stretch(far_low, far), Stretch(*again)),
        near_left,
        MIDDLE,
    )


def _lay_around(layout: Layout, line: AroundLine, ground: Framed, chains: Mapping[int, Point] | None) -> None:
    """Sets the stitches of a row down around its piece. chains: where those of the foundation lie, by their
    numbers; None where another row goes around within this one.
    """
    first = chains is not None
    feet = feet_outside(layout, line, ground) if chains is None else first_feet(layout, line, ground, chains)
    close = 1.0
    if first:
        close, aside, down = crowding(line, ground, feet)
        line.ground = ground = ground.widened(aside, down)
    alongs = settled(line, ground, feet, first, close)
    line.low, line.level = 0.0, MIDDLE
    line.high = max((tall_of(thing) for thing in line.things if isinstance(thing, Made)), default=UNIT) + ROOM
    line.start = alongs[-1 if line.backward else 0]
    sharing: dict[Hashable, list[int]] = {}
    for at, thing in enumerate(line.things):
        for place in thing.into if isinstance(thing, Made) else ():
            sharing.setdefault(place_key(place), []).append(at)
    for thing, along in zip(line.things, alongs, strict=True):
        if isinstance(thing, Made):
            line.heads[id(thing)] = ground.at(ROOM + tall_of(thing), along)
    for at, (thing, along, under) in enumerate(zip(line.things, alongs, feet, strict=True)):
        if isinstance(thing, Space):
            continue
        out = ROOM + tall_of(thing)
        spots = [
            foot_at(ground, foot, line.heads.get(id(place), foot.spot), sharing[place_key(place)], at)
            for place, foot in zip(thing.into, under, strict=False)
        ]
        if len(spots) > 1 and not thing.form:
            spots = [middle_of(spots)]
        line.feet[id(thing)] = spots or [ground.at(ROOM * FOOT_ROOM, along)]
        layout.tops[id(thing)] = Top(ground, along, along, MIDDLE, out, UNIT, at)
    for at, thing in enumerate(line.things):
        if isinstance(thing, Space):
            _hang(layout, line, ground, at, alongs)


def _clear_around(layout: Layout, first: int) -> None:
    """Moves the numbers of rows out of what stands beside the piece. first: the first row around, by its
    index.
    """
    heads = [head for line in layout.lines[first:] for head in line.heads.values()]
    for line in layout.lines:
        start, away = line.before(0.0, 0.5), line.before(1.0, 0.5)
        way = (away[0] - start[0], away[1] - start[1])
        start_at, reach = _along(start, way), max((_along(head, way) for head in heads), default=0.0)
        line.beyond = max(reach - start_at, 0.0)


def _along(point: Point, way: Point) -> float:
    return point[0] * way[0] + point[1] * way[1]


def _reach(layout: Layout, line: Line, left: bool, beside: bool) -> tuple[Point, Point]:
    """How far a row reaches at one side, at its foot and at its head, with the chains that row 1 passed.
    beside: a first chain of the row around stands there above the last row.
    """
    thing = next(one for one in line.things[:: 1 if left else -1] if isinstance(one, Made))
    passed = line is layout.lines[0] and bool(layout.begin.chains) and line.backward != left
    more = FIRST_ROOM * (passed or (beside and line is layout.lines[-1]))
    foot, head = reach_of(line, thing, left)
    return _aside(foot, more, left), _aside(head, more, left)


def _lean(layout: Layout, left: bool) -> float:
    """How much a side of the rows leans to the right for each unit up, by their stitches alone."""
    heads = [line.heads.get(id(line.things[0 if left else -1])) for line in layout.lines if line.things]
    found = [head for head in heads if head is not None]
    if len(found) < 2 or abs(found[-1][0] - found[0][0]) < UNIT:
        return 0.0
    return (found[-1][0] - found[0][0]) / (found[-1][1] - found[0][1])


def _aside(point: Point, by: float, left: bool) -> Point:
    return (point[0] - by if left else point[0] + by, point[1])


def _goes_over(things: Sequence[Thing], lines: dict[int, Line]) -> list[Made | Space]:
    """The places in the piece's top that a row is worked into."""
    return [
        place
        for thing in things
        if isinstance(thing, Made)
        for place in thing.into
        if isinstance(place, Made | Space) and id(place) in lines
    ]


def _standing_on(things: Sequence[Thing], places: Sequence[Made | Space]) -> Iterator[Made]:
    wanted = set(map(id, places))
    for thing in things:
        if isinstance(thing, Made) and (not thing.into or any(id(place) in wanted for place in thing.into)):
            yield thing


def _hang(layout: Layout, line: Line, ground: Framed, at: int, alongs: Sequence[float]) -> None:
    """The chains of a space, from the stitch before to the stitch after."""
    space = line.things[at]
    assert isinstance(space, Space)
    half = wide_of(space) / 2
    before = line.heads.get(id(line.things[at - 1])) if at else None
    after = line.heads.get(id(line.things[at + 1])) if at + 1 < len(alongs) else None
    start = before or ground.at(line.high, alongs[at] - half)
    end = after or ground.at(line.high, alongs[at] + half)
    hung = arch(start, end, ground.outward(ground.at(MIDDLE, alongs[at])), space.chains, CHAIN_LONG)
    line.arches[id(space)] = hung
    layout.tops[id(space)] = Top(
        ground, alongs[at], alongs[at], MIDDLE, line.high, hung.wide, at, hung
    )  # fmt: skip
