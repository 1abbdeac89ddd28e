"""Sets the stitches of a round down: their feet on their places, their chains from head to head."""

from collections.abc import Hashable, Mapping, Sequence
from math import hypot, inf

from ..fabric import Made, Space
from .arch import arch, slimmer
from .canvas import Point
from .chart_ground import Inward, is_closed, outward
from .chart_lines import Layout, Line, Top
from .chart_petals import beside_the_foot, hang_sides, low_on, upright
from .chart_things import ROOM, place_key, tall_of, wide_of
from .section import Oval, Polygon
from .signs import CHAIN_LONG, CHAIN_THICK, UNIT, is_cross

FOOT_ROOM = 0.6
"""Feet stand so much of the room above their place."""

REACH = 2.5
"""A leg of stitches drawn together reaches for its place so many times as far as it is tall, no further."""

CLOSE_FEET, CLOSE_ON_CHAINS, CROSSES_APART = 2.2, 2.8, 8.5
"""How far apart feet stand that share a stitch, and that share a chain; crosses have no feet to gather."""

BETWEEN_LOOPS = 1.0
"""Loops are so far clear of each other where they are widest."""

STRETCH, MOST_STRETCHES = 1.08, 12
"""A chain that passes over taller stitches is drawn longer, step by step, at most so often."""

BESIDE_A_HEAD, ABOVE_A_CROSS = 2.6, 1.6
"""An arch begins so far beside the middle of a head, and so far above that of a cross at a chain's end."""


def set_down(
    layout: Layout,
    line: Line,
    xs: Sequence[float],
    outs: Sequence[float],
    below: Sequence[Sequence[Top]],
    low: float,
) -> None:
    """Fills in the line's heads, feet and arches, and the layout's tops."""
    way = line.ground.way(line.level)
    sharing: dict[Hashable, dict[int, int]] = {}
    middles: dict[int, float] = {}
    aside = upright(line, xs, below)
    for at, (thing, x, out) in enumerate(zip(line.things, xs, outs, strict=True)):
        if isinstance(thing, Made):
            corner = id(thing) in line.corners
            middles[at] = _drawn(line, x, below[at]) + aside.get(id(thing), 0.0)
            line.heads[id(thing)] = (
                line.in_the_corner(x, out) if corner else line.point(x, out, drawn=middles[at])
            )
            for place in line.into(thing):
                sharers = sharing.setdefault(place_key(place), {})
                sharers.setdefault(at, len(sharers))
    found: dict[Hashable, Top] = {}
    sides = low_on(line)
    for at, (thing, x, out) in enumerate(zip(line.things, xs, outs, strict=True)):
        if isinstance(thing, Space) and at in sides:
            continue
        if isinstance(thing, Space):
            found[id(thing)] = _hang(line, thing, at, xs, outs, _passed(layout, line, thing, at, xs))
            continue
        bare = _on_nothing(line, thing, x, low + ROOM * FOOT_ROOM)
        line.feet[id(thing)] = _feet(line, thing, at, below[at], sharing) or [bare]
        if at in sides and below[at]:
            (x, y), (across, up) = line.feet[id(thing)][0], outward(line.ground, line.feet[id(thing)][0])
            line.heads[id(thing)] = (x + across * tall_of(thing), y + up * tall_of(thing))
        corner = id(thing) in line.corners
        found[id(thing)] = Top(
            line.ground,
            x / way,
            middles[at],
            line.level,
            out,
            UNIT,
            at,
            corner=corner,
        )
    found.update((id(side), top) for side, top in hang_sides(line, outs))
    layout.tops.update(found)


def _drawn(line: Line, x: float, below: Sequence[Top]) -> float:
    """The share of its way that a head is drawn at. On the far side of a ball, where places lie far apart,
    stitches drawn together stand above the middle of theirs as they are drawn, as far as there is room.
    """
    drawn = line.opened(x / line.ground.way(line.level))
    if len(below) < 2 or not isinstance(line.ground, Inward):
        return drawn
    off = sum((top.drawn - drawn + 0.5) % 1.0 - 0.5 for top in below) / len(below)
    return drawn + off * min(max(line.spare / UNIT, 0.0), 1.0)


def _on_nothing(line: Line, thing: Made, x: float, out: float) -> Point:
    """Where a stitch stands so far out whose place the chart hasn't: in a ring, towards its middle."""
    if not isinstance(line.ground, Polygon):
        return line.point(x, out)
    head = line.heads[id(thing)]
    share = out / (hypot(*head) or 1.0)
    return (head[0] * share, head[1] * share)


def _feet(
    line: Line, thing: Made, at: int, tops: Sequence[Top], sharing: Mapping[Hashable, Mapping[int, int]]
) -> list[Point]:
    """Where a stitch stands on its places; those that share one stand close together on it.

    sharing: of each place those that stand on it, with their number among them.
    """
    found: list[Point] = []
    for top, place in zip(tops, line.into(thing), strict=False):
        same = sharing[place_key(place)]
        beside = beside_the_foot(line, thing, top)
        aside = (
            (same[at] - (len(same) - 1) / 2) * _spread(thing, len(same), top) if beside is None else beside
        )
        if top.arch is not None:
            found.append(top.arch.at(aside, CHAIN_THICK / 2 + ROOM * FOOT_ROOM))
        else:
            found.append(top.point(top.out + ROOM * FOOT_ROOM, aside))
    if len(found) > 1 and thing.form:
        head = line.heads[id(thing)]
        return [_reached(foot, head, REACH * tall_of(thing)) for foot in found]
    if len(found) > 1:
        found = [(sum(x for x, _ in found) / len(found), sum(y for _, y in found) / len(found))]
    return found


def _reached(foot: Point, head: Point, most: float) -> Point:
    """The foot, or as far towards it as a leg reaches."""
    long = hypot(foot[0] - head[0], foot[1] - head[1])
    share = min(most / long, 1.0) if long else 1.0
    return (head[0] + (foot[0] - head[0]) * share, head[1] + (foot[1] - head[1]) * share)


def _spread(thing: Made, many: int, top: Top) -> float:
    """How far apart the feet of so many stitches stand in one place."""
    if many < 2:
        return 0.0
    if top.arch is None:
        return min(CLOSE_FEET, 0.5 * top.wide / (many - 1))
    wish = CROSSES_APART if is_cross(thing.kind) else CLOSE_ON_CHAINS
    return min(wish, 0.95 * top.arch.wide / (many - 1))


def _passed(layout: Layout, line: Line, space: Space, at: int, xs: Sequence[float]) -> float:
    """How far out the highest of the places lies that a chain passes over; at a round's end also those before
    its first stitch.
    """
    tops = [layout.tops.get(place_key(place)) for place in space.into]
    if not space.into and at in (0, len(xs) - 1) and is_closed(line.ground) and len(layout.lines) > 1:
        way = line.ground.way(line.level)
        start, end = (xs[(at + step) % len(xs)] / way for step in (-1, 1))
        for top in (layout.tops.get(id(thing)) for thing in layout.lines[-2].things):
            if top is not None and 0 < (top.carried(line.level) - start) % 1.0 < (end - start) % 1.0:
                tops.append(top)
    return max((top.out for top in tops if top is not None), default=0.0)


def _at_a_tip(line: Line, at: int) -> bool:
    """Whether a cross at either end of a chain that the round goes about is what chains begin beside: the way
    is short there.
    """
    thing, ground = line.things[at], line.ground
    if not isinstance(ground, Oval) or not ground.spine or not isinstance(thing, Made):
        return False
    return is_cross(thing.kind) and abs(line.heads[id(thing)][0]) > ground.spine / 2


def _room_of(line: Line, at: int, xs: Sequence[float], out: float) -> float:
    """How wide a loop can be so far out about a middle, clear of the next ones; any width elsewhere."""
    loops = [k for k, thing in enumerate(line.things) if isinstance(thing, Space)]
    if not isinstance(line.ground, Oval) or line.ground.spine or len(loops) < 2:
        return inf
    way, k = line.ground.way(line.level), loops.index(at)
    steps = (xs[at] - xs[loops[k - 1]], xs[loops[(k + 1) % len(loops)]] - xs[at])
    less = (way - line.gap) / way * line.ground.way(out) / way
    return min(step % way for step in steps) * less - CHAIN_THICK - BETWEEN_LOOPS


def _hang(
    line: Line, space: Space, at: int, xs: Sequence[float], outs: Sequence[float], passed: float
) -> Top:
    """The chains of a space, from head to head; and the space as a place.

    passed: how far out what it passes over lies. It rises above that.
    """
    way, many = line.ground.way(line.level), len(xs)

    def end(step: int) -> tuple[float, float]:
        other = at + step
        if not 0 <= other < many and not (is_closed(line.ground) and many > 1):
            return (xs[at] + step * wide_of(space) / 2, outs[at])
        around, other = way * (other // many), other % many
        x, out = xs[other] + around, outs[other]
        if isinstance(line.things[other], Space):
            return ((x + xs[at]) / 2, out)
        return (x - step * BESIDE_A_HEAD, out + ABOVE_A_CROSS * _at_a_tip(line, other))

    (left, left_out), (right, right_out) = end(-1), end(1)
    out = (left_out + right_out) / 2
    # In a corner an arch reaches as far to one side as to the other, and the gap at the round's start lies
    # beside it. Else the gap may lie within it, and its middle is that of its ends as they are drawn.
    corner = id(space) in line.corners and isinstance(line.ground, Polygon)
    if corner:
        half = (right - left) / 2
        left, right, left_out, right_out = xs[at] - half, xs[at] + half, out, out
    drawn = (line.opened(left / way, corner) + line.opened(right / way, corner)) / 2
    start, stop = line.point(left, left_out, corner), line.point(right, right_out, corner)
    base, above = (
        line.ground.at(high, line.ground.carried(drawn, line.level, max(high, 0.1)))
        for high in (out, out + 1)
    )
    # Measured along the way out, which is longer than 1 a step in a corner.
    up = (above[0] - base[0], above[1] - base[1])
    long, high = CHAIN_LONG, 0.0
    for _ in range(MOST_STRETCHES):
        hung = arch(start, stop, up, space.chains, long)
        hung = slimmer(hung, _room_of(line, at, xs, out + max(hung.rise - hung.radius, 0.0)), long)
        crown = hung.at(0.0, CHAIN_THICK / 2)
        risen = (crown[0] - base[0]) * up[0] + (crown[1] - base[1]) * up[1]
        high = out + risen / (up[0] ** 2 + up[1] ** 2)
        if high >= passed + CHAIN_THICK:
            break
        long = max(long, hung.wide / space.chains) * STRETCH
    line.arches[id(space)] = hung
    return Top(
        line.ground, (left + right) / 2 / way, drawn, line.level, high, hung.wide, at, hung,
        id(space) in line.corners,
    )  # fmt: skip
