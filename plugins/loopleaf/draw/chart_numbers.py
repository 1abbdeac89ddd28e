"""Where the number of a round stands whose stitches leave no gap for it: in the nearest clear spot."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import cos, dist, hypot, sin, tau

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .chart_beside import BESIDE, at_an_end, beside, first_chains, join_spot
from .chart_ground import outward
from .chart_lines import Layout, Line
from .chart_things import place_key
from .signs import CHAIN_THICK, UNIT, height_of, is_cross

Inked = tuple[Point, Point, float]
"""A stroke from one point to another, and how far its ink reaches to both sides."""

BAR, DOT, STROKE, BELLY = 3.6, 1.6, 0.6, 3.0
"""Half the width of a bar at a head, of a dot, of a stroke, and of stitches gathered in one place."""

DIGIT, AIR = 2.1, 2.2
"""Half of a digit's width, in letters as charts usually have them, and the room about it, in units."""

PICOT_HIGH, PICOT_WIDE = 9.0, 4.0
"""A picot above its stitch, and how far to both sides."""

OUTSIDE, ARROW = 5.0, 3.6
"""An arrow begins so far outside of its round, and needs so much room to all sides."""

ARROW_UPS = (0.95, 0.8, 0.65, 0.5, 0.35)
"""How far up the round's height an arrow stands that has no room outside."""

RIM_PARTS = 120
"""The rim of a far side is looked at in so many straight parts."""

NUMBER_HIGH = 3.0
"""Half the height of another number."""

FURTHEST, STEP, FAR = 30.0, 1.5, 50.0
"""A number is looked for so far before its round's start, so far at a time; ink so much further away is no
matter.
"""

UPS, FURTHER_UP = (0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95), (1.15, 1.35)
"""How far up the round's height, the middle first; outside of it only at the end of a chain."""


def clear_spot(line: Line, label: str, inked: Sequence[Inked]) -> Point:
    """The spot for a number that is nearest to the start of its round among those clear of all ink, or
    the clearest one.
    """
    ups = (*UPS, *FURTHER_UP) if at_an_end(line) else UPS
    return _clearest(line, DIGIT * len(label) + AIR, ups, 2 * STEP, inked)


def spot_for_arrow(line: Line, inked: Sequence[Inked], last: bool = False) -> Point:
    """The same for an arrow: outside of its round's start, or as near to that as can be. last: nothing is
    worked on it.
    """
    outside = 1 + OUTSIDE / max(line.high - line.low, 1.0)
    return _clearest(line, ARROW, (outside,) if last else (outside, *ARROW_UPS), 0.0, inked)


def _clearest(line: Line, need: float, ups: Sequence[float], first: float, inked: Sequence[Inked]) -> Point:
    best, most = line.before(BESIDE, 0.5), -1.0
    near = [one for one in inked if dist(one[0], best) < FURTHEST + FAR]
    for step in range(round(FURTHEST / STEP)):
        for up in ups:
            at = line.before(first + STEP * step, up)
            clear = min((off_ink(at, *one) for one in near), default=need)
            if clear >= need:
                return at
            if clear > most:
                best, most = at, clear
    return best


def ink_of(layout: Layout, worked: Sequence[WorkedRound]) -> list[Inked]:
    """All that a chart has drawn but for its words, as strokes."""
    ring = layout.begin.ring
    found: list[Inked] = [((0.0, 0.0), (0.0, 0.0), ring)] if ring else []
    found += [(start, end, STROKE) for start, end in layout.outline]
    for (x, y), radius, _ in layout.rims:
        turns = [tau * at / RIM_PARTS for at in range(RIM_PARTS + 1)]
        around = [(x + radius * cos(turn), y + radius * sin(turn)) for turn in turns]
        found += [(start, end, STROKE) for start, end in pairwise(around)]
    for line, one in zip(layout.lines, worked, strict=True):
        for thing in line.things:
            if isinstance(thing, Made):
                found += _stitch(line, thing)
            else:
                found += [_bead(bead.middle, bead.along) for bead in line.arches[id(thing)].beads]
        if at_an_end(line):
            found.append(_bead(*beside(line, 0.0)))
        for made in one.made:
            if isinstance(made, Made) and not made.number:
                found += _beside(layout, line, made)
    return found


def _stitch(line: Line, made: Made) -> Iterator[Inked]:
    head, feet = line.heads[id(made)], line.feet[id(made)]
    across, up = outward(line.ground, head)
    if is_cross(made.kind) and not (made.form and len(feet) > 1):
        tall = height_of(made.kind)
        yield ((head[0] - across * tall, head[1] - up * tall), head, UNIT / 2)
        return
    wide = CHAIN_THICK / 2 if made.role == "turning" else BELLY if made.legs > 1 else STROKE
    for foot in feet:
        yield (foot, head, wide)
    x, y = head[0] - feet[0][0], head[1] - feet[0][1]
    long = hypot(x, y) or 1.0
    bar = (-y / long * BAR, x / long * BAR)
    yield ((head[0] - bar[0], head[1] - bar[1]), (head[0] + bar[0], head[1] + bar[1]), STROKE)


def _bead(middle: Point, along: Point) -> Inked:
    long = hypot(*along) or 1.0
    x, y = along[0] / long * CHAIN_THICK, along[1] / long * CHAIN_THICK
    return ((middle[0] - x, middle[1] - y), (middle[0] + x, middle[1] + y), CHAIN_THICK / 2)


def _beside(layout: Layout, line: Line, made: Made) -> Iterator[Inked]:
    """A first chain that counts as nothing, a join, a slip stitch that travels, a picot."""
    if made.role == "chain":
        yield from (_bead(middle, along) for middle, along in first_chains(line, made.chains))
    elif made.role == "picot":
        foot = next((line.heads[id(one)] for one in _before(made) if id(one) in line.heads), None)
        if foot is not None:
            across, up = outward(line.ground, foot)
            yield (foot, (foot[0] + across * PICOT_HIGH, foot[1] + up * PICOT_HIGH), PICOT_WIDE)
    elif made.role == "join":
        dot = join_spot(line)
        yield (dot, dot, DOT)
    elif made.into and (at := layout.top(place_key(made.into[0]))) is not None:
        yield (at, at, DOT)


def _before(made: Made) -> Iterator[Made | Space]:
    """What was made before a stitch, the last first."""
    before = made.previous
    while isinstance(before, Made | Space):
        yield before
        before = before.previous


def off_ink(at: Point, start: Point, end: Point, wide: float) -> float:
    """How far a point lies from the ink of a stroke."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    share = ((at[0] - start[0]) * dx + (at[1] - start[1]) * dy) / ((dx * dx + dy * dy) or 1.0)
    share = max(min(share, 1.0), 0.0)
    return dist(at, (start[0] + dx * share, start[1] + dy * share)) - wide
