"""Where the stitches of a row that goes around its piece stand: on their places, spread along the way."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..fabric import Made
from ..fabric.worked import Place
from .canvas import Point
from .chart_across import CLOSEST
from .chart_feet import CLOSE_FEET, FOOT_ROOM
from .chart_frame import Framed
from .chart_lines import Layout, Line
from .chart_sides import CLEAR, at_left
from .chart_things import FIRST_ROOM, ROOM, wide_of
from .relax import kept_apart
from .signs import UNIT

MIDDLE = ROOM + UNIT / 2
"""So far outside of the piece's edge the way is measured: there crosses have their middles."""

NEAR_CORNER = MIDDLE + UNIT / 2 + CLEAR + FIRST_ROOM + 0.1
"""The foundation's last chain lies at most so far from a corner of the way."""

TOP, NEAR, BOTTOM, FAR, AGAIN = range(5)
"""The stretches of the way around, by their indexes: the piece's top, the side where the hook is, the
foundation, the other side, and the top once more, outside of the row itself.
"""

CORNERED = (BOTTOM, AGAIN)
"""What several stitches in one place of these, near their ends, make a corner of."""


@dataclass(frozen=True, slots=True)
class Foot:
    """Where a place lies: on which stretch, and the spot on the piece's edge, or on what is worked into."""

    stretch: int
    spot: Point


def first_feet(layout: Layout, line: Line, ground: Framed, chains: Mapping[int, Point]) -> list[list[Foot]]:
    """Where the places of the first row around lie. Ends of rows lie on the far side once it has been along
    the foundation.
    """
    lines = {id(thing): one for one in layout.lines if one is not line for thing in one.things}
    passed = False
    found: list[list[Foot]] = []
    for thing in line.things:
        under: list[Foot] = []
        for place in thing.into if isinstance(thing, Made) else ():
            if isinstance(place, Made) and place.role == "row-end":
                below = place.into[0]
                row = lines.get(id(below))
                far = passed
                if row is not None and len(row.things) > 1:
                    far = at_left(row, below) != ground.left
                stretch = ground.stretches[FAR if far else NEAR]
                if row is not None and isinstance(below, Made):
                    foot, head = middle_of(row.feet[id(below)]), row.heads[id(below)]
                    high = (foot[1] + head[1]) / 2
                else:  # the end of this row itself
                    high = (ground.stretches[TOP].start[1] + ground.stretches[AGAIN].start[1]) / 2
                under.append(Foot(FAR if far else NEAR, stretch.at_height(high)))
            elif isinstance(place, Made) and place.role == "foundation":
                passed = True
                under += [Foot(BOTTOM, chains[place.number])] if place.number in chains else []
            elif any(place is thing for thing in line.things):
                under.append(Foot(AGAIN, ground.stretches[AGAIN].start))
            elif (at := layout.top(id(_whole(place)))) is not None:
                under.append(Foot(TOP, at))
        found.append(under)
    return found


def _whole(place: Place) -> Place:
    """The space that a chain belongs to; else the place itself."""
    return place.into[0] if isinstance(place, Made) and place.role == "loop" else place


def feet_outside(layout: Layout, line: Line, ground: Framed) -> list[list[Foot]]:
    """Where the places of a further row lie, on the row within."""
    found: list[list[Foot]] = []
    least = 0
    for thing in line.things:
        under: list[Foot] = []
        for place in thing.into if isinstance(thing, Made) else ():
            at = layout.top(id(_whole(place)))
            if at is not None:
                under.append(Foot(ground.nearest(at, least), at))
        least = max([least, *(foot.stretch for foot in under)])
        found.append(under)
    return found


def crowding(line: Line, ground: Framed, feet: Sequence[Sequence[Foot]]) -> tuple[float, float, float]:
    """How close together things stand, of their widths, where much is worked along a stretch; and how much
    further out the way goes past the two sides and past the foundation where even so it can't hold them.
    """
    need = [0.0] * len(ground.stretches)
    for thing, under in zip(line.things, feet, strict=True):
        for foot in under[:1]:
            need[foot.stretch] += wide_of(thing)
    longs = ground.longs()
    close = max(min(1.0, *(longs[at] / (need[at] or 1.0) for at in (NEAR, BOTTOM, FAR))), CLOSEST)
    near, bottom, far = (need[at] * close - longs[at] for at in (NEAR, BOTTOM, FAR))
    return close, max(bottom / 2, 0.0), max(near, far, 0.0)


def settled(
    line: Line, ground: Framed, feet: Sequence[Sequence[Foot]], first: bool, close: float
) -> list[float]:
    """How far along the way each thing stands: above its place, those of one place side by side, none closer
    than that share of their widths. In a corner the middle one of several stands on its diagonal.
    """
    wides = [wide_of(thing) for thing in line.things]
    wanted: list[float | None] = []
    for under in feet:
        spots = [ground.beside(foot.stretch, foot.spot) for foot in under]
        wanted.append(sum(spots) / len(spots) if spots else None)
    at = 0
    while at < len(wanted):
        end = at + 1
        while end < len(wanted) and feet[at] and feet[end] == feet[at]:
            end += 1
        here = wanted[at]
        if here is not None and (end - at > 1 or feet[at][0].stretch == AGAIN):
            if not first:
                here = _in_corner(ground, here, UNIT / 2)
            elif feet[at][0].stretch in CORNERED:
                here = _in_corner(ground, here, NEAR_CORNER)
            reached = -sum(wides[at:end]) / 2
            for one in range(at, end):
                wanted[one] = here + reached + wides[one] / 2
                reached += wides[one]
        at = end
    placed = _between(wanted, wides)
    return kept_apart(placed, [close * (a + b) / 2 for a, b in pairwise(wides)])


def _in_corner(ground: Framed, along: float, near: float) -> float:
    """The corner of the way that lies so near; else the same spot."""
    corner = min(ground.corners(), key=lambda other: abs(other - along))
    return corner if abs(corner - along) < near else along


def _between(wanted: Sequence[float | None], wides: Sequence[float]) -> list[float]:
    """The same, with what has no place of its own in the middle between its neighbours."""
    found: list[float] = []
    for at, here in enumerate(wanted):
        if here is not None:
            found.append(here)
            continue
        after = next((other for other in wanted[at + 1 :] if other is not None), None)
        if found and after is not None:
            left = next(n for n, other in enumerate(wanted[at:]) if other is not None)
            found.append(found[-1] + (after - found[-1]) / (left + 1))
        elif found:
            found.append(found[-1] + wides[at])
        else:
            ahead = next((n for n, other in enumerate(wanted) if other is not None), len(wanted))
            found.append((after or 0.0) - sum(wides[at:ahead]))
    return found


def foot_at(ground: Framed, foot: Foot, spot: Point, sharers: Sequence[int], at: int) -> Point:
    """A foot a little off its place's spot; those that share one stand close together on it."""
    many = len(sharers)
    step = min(CLOSE_FEET, 0.5 * UNIT / (many - 1)) if many > 1 else 0.0
    stretch = ground.stretches[foot.stretch]
    (dx, dy), (out_x, out_y) = stretch.way, stretch.outward(ground.left)
    aside, out = (sharers.index(at) - (many - 1) / 2) * step, ROOM * FOOT_ROOM
    return (spot[0] + dx * aside + out_x * out, spot[1] + dy * aside + out_y * out)


def middle_of(points: Sequence[Point]) -> Point:
    """The middle of some points."""
    return (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
