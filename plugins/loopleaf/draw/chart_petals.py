"""Petals of a chart: the chains at their sides stand beside their stitches, slip stitches at their feet.

Along its round a petal is laid as one thing, no wider than its stitches with a chain on either side: so a
ring of few stitches holds as many petals, and their stitches are no taller than elsewhere.
"""

from collections.abc import Collection, Iterator, Sequence
from itertools import accumulate
from math import sqrt

from ..fabric import Made, Space, WorkedRound
from .arch import arch
from .canvas import Point
from .chart_ground import outward
from .chart_lines import Line, Top
from .chart_things import ROOM, STACKED, Thing, Whole, shared, tall_of, wide_of
from .petals import LOW, petals_of
from .section import Oval
from .signs import CHAIN_LONG, CHAIN_THICK, HEAD, is_cross

SIDE, BELLY, MORE_BY_A_CROSS = 6.5, 1.2, 2.5
"""A side is so wide, and so many times as far further as its chains bow out; so much more above a cross."""

LINK = STACKED * CHAIN_LONG
"""How long a chain of a side is, as in a stack that stands for a stitch."""

LOWER = 6.0
"""A side begins so far above the foot of its petal."""

CROSS_ASIDE, HALF_A_CROSS = 6.8, 3.6
DOT_ASIDE, HALF_A_DOT = 5.5, 2.0
"""A slip stitch lies so far beside its petal's foot where there is room, and takes so much to either side."""

DOT_UP, MOST_LEANING = 0.25, 2.5
"""It lies so far up the petal, of its stitches' height, and leans with them, so far at most."""

CLEAR_OF_HEAD, ABOVE_A_DOT, BESIDE_A_DOT = 1.2, 1.8, 2.4
"""A side ends so far beside the bar at a head, and begins so far above a slip stitch; so far beside its
middle where two begin.
"""

CLOSEST = 0.84
"""Where a round is crowded its petals are drawn so much narrower, at most, before their stitches are drawn
longer.
"""


FEWEST = 3
"""Fewer petals than this on a round are an edge's points, not a flower's."""


def worked_into(rounds: Sequence[WorkedRound]) -> set[int]:
    """All places that stitches go into, by their ids; a space where only one of its chains is gone into."""
    places = (place for one in rounds for made in one.made if isinstance(made, Made) for place in made.into)
    return {
        id(place.into[0] if isinstance(place, Made) and place.role == "loop" else place) for place in places
    }


def petals_on(line: Line, worked: WorkedRound, used: Collection[int]) -> tuple[Whole, ...]:
    """The petals of a round about a middle, along its way, each with the slip stitches in its own place.
    used: of `worked_into`: chains that are worked into stay arches.
    """
    if not isinstance(line.ground, Oval) or line.corners or line.ground.spine:
        return ()
    order = {id(thing): at for at, thing in enumerate(line.things)}
    found: list[tuple[int, Whole]] = []
    taken: set[int] = set()
    for petal in petals_of(worked, LOW):
        ats = sorted(order[id(thing)] for thing in petal.things)
        if any(isinstance(one, Space) and id(one) in used for one in petal.things):
            continue
        place = shared(line.things[ats[1]])
        for end, step in ((ats[0], -1), (ats[-1], 1)):
            at = end + step
            slip = line.things[at] if 0 <= at < len(line.things) else None
            if isinstance(slip, Made) and place is not None and shared(slip) == place and at not in taken:
                ats.append(at)
        beside = (line.things[(at + step) % len(line.things)] for at, step in ((min(ats), -1), (max(ats), 1)))
        sides = sum(isinstance(line.things[at], Space) for at in (min(ats), max(ats)))
        if sides and any(isinstance(one, Made) and one.kind == "single" for one in beside):
            continue  # a stitch of its own between two petals
        taken.update(ats)
        things = [line.things[at] for at in sorted(ats)]
        found.append((min(ats), Whole(things, sum(wide for _, wide in _widths(things)))))
    return tuple(whole for _, whole in sorted(found, key=lambda one: one[0])) if len(found) >= FEWEST else ()


def _at_the_foot(things: Sequence[Thing]) -> list[Made]:
    """The low stitches that a petal with chains for sides begins and ends with; none of a fan."""
    if not any(isinstance(thing, Space) for thing in things):
        return []
    ends = (things[0], things[-1])
    return [thing for thing in ends if isinstance(thing, Made) and thing.kind in LOW]


def _tall(whole: Whole) -> list[Made]:
    """The stitches that make the petal."""
    low = _at_the_foot(whole.things)
    return [thing for thing in whole.things if isinstance(thing, Made) and thing not in low]


def _widths(things: Sequence[Thing]) -> Iterator[tuple[Thing, float]]:
    """How wide each part of a petal stands; a low stitch at its end lies below its side."""
    tall = max(tall_of(thing) for thing in things if isinstance(thing, Made))
    crosses = isinstance(things[0], Made) and is_cross(things[0].kind)
    side = SIDE + MORE_BY_A_CROSS * crosses
    low = _at_the_foot(things)
    for thing in things:
        if isinstance(thing, Space):
            way, long = tall - LOWER, thing.chains * LINK
            yield thing, side + BELLY * way * sqrt(max(long / way - 1, 0.0) * 3 / 8)  # a flat arc's rise
        else:
            yield thing, 0.0 if thing in low else wide_of(thing)


def squeeze(line: Line, way: float) -> None:
    """Draws a round's petals narrower where they don't fit into a way so long."""
    wides = sum(whole.wide for whole in line.petals)
    inside = {id(thing) for whole in line.petals for thing in whole.things}
    others = sum(wide_of(thing) for thing in line.things if id(thing) not in inside)
    if line.petals and wides + others + line.gap > way:
        share = max((way - others - line.gap) / wides, CLOSEST)
        for whole in line.petals:
            whole.wide *= share


def folded(line: Line, below: Sequence[Sequence[Top]]) -> tuple[list[Thing], list[list[Top]]]:
    """A round's things with each petal as one, and the places that each stands on."""
    of = {id(thing): whole for whole in line.petals for thing in whole.things}
    things: list[Thing] = []
    tops: list[list[Top]] = []
    for thing, under in zip(line.things, below, strict=True):
        whole = of.get(id(thing))
        if whole is None:
            things.append(thing)
            tops.append([*under])
            continue
        if not things or things[-1] is not whole:
            things.append(whole)
            tops.append([])
        tops[-1] += [top for top in under if top not in tops[-1]]
    return things, tops


def unfolded(
    line: Line, things: Sequence[Thing], xs: Sequence[float], footing: Sequence[float | None]
) -> tuple[list[float], list[float | None]]:
    """Where along its way each thing of a round lies, and the middle of its feet, from where each of `folded`
    does.
    """
    found: list[float] = []
    feet: list[float | None] = []
    for thing, x, foot in zip(things, xs, footing, strict=True):
        if not isinstance(thing, Whole):
            found.append(x)
            feet.append(foot)
            continue
        wides = [wide for _, wide in _widths(thing.things)]
        wides = [wide * thing.wide / sum(wides) for wide in wides]
        for part, wide, end in zip(thing.things, wides, accumulate(wides), strict=True):
            found.append(x - thing.wide / 2 + end - wide / 2)
            feet.append(None if isinstance(part, Space) else foot)
    return found, feet


def upright(line: Line, xs: Sequence[float], below: Sequence[Sequence[Top]]) -> dict[int, float]:
    """How far along its way, as a share, the stitches of a petal are drawn from where they came to rest, by
    their ids: above their feet, where the gap at the round's start would have them lean and there is room.
    """
    way, at = line.ground.way(line.level), {id(thing): number for number, thing in enumerate(line.things)}
    taken = sum(whole.wide for whole in line.petals) + line.gap
    room = max(way - taken, 0.0) / max(len(line.petals), 1) / 2 / way
    found: dict[int, float] = {}
    for whole in line.petals:
        stitches = [at[id(thing)] for thing in _tall(whole)]
        off = [top.drawn - line.opened(xs[number] / way) for number in stitches for top in below[number][:1]]
        if off:
            mean = sum((share + 0.5) % 1.0 - 0.5 for share in off) / len(off)
            found.update((id(line.things[number]), max(min(mean, room), -room)) for number in stitches)
    return found


def low_on(line: Line) -> set[int]:
    """The things, by their numbers, that a round's petals have at their sides and feet; and the slip stitches
    between them.
    """
    if not line.petals:
        return set()
    low = {id(thing) for whole in line.petals for thing in whole.things if isinstance(thing, Space)}
    low |= {id(thing) for whole in line.petals for thing in _at_the_foot(whole.things)}
    return {
        at
        for at, thing in enumerate(line.things)
        if id(thing) in low or (isinstance(thing, Made) and thing.kind == "slip")
    }


def with_low(line: Line, outs: Sequence[float], below: Sequence[Sequence[Top]], low: float) -> list[float]:
    """How far out all things of a round lie, those of `low_on` by what they stand on. outs: of the others."""
    skipped, rest = low_on(line), iter(outs)
    found: list[float] = []
    for at, (thing, tops) in enumerate(zip(line.things, below, strict=True)):
        floor = sum(top.out for top in tops) / len(tops) if tops else low
        found.append(floor + ROOM + tall_of(thing) if at in skipped else next(rest))
    return found


def beside_the_foot(line: Line, thing: Made, top: Top) -> float | None:
    """How far beside its place a low stitch at a petal's foot lies; None for all others."""
    for whole in line.petals:
        if thing in _at_the_foot(whole.things):
            way = -1 if thing is whole.things[0] else 1
            aside, half = (DOT_ASIDE, HALF_A_DOT) if thing.kind == "slip" else (CROSS_ASIDE, HALF_A_CROSS)
            room = line.ground.way(top.out + ROOM) / len(line.petals)
            return way * min(aside, room / 2 - half) + _lean(line, whole, top)
    return None


def _lean(line: Line, whole: Whole, top: Top) -> float:
    """How far aside of its place a leaning petal is where its slip stitches lie."""
    heads = [line.heads[id(thing)] for thing in _tall(whole)]
    x, y = (sum(head[axis] for head in heads) / len(heads) for axis in (0, 1))
    across, up = outward(line.ground, top.point(top.out))
    return max(min(DOT_UP * (y * across - x * up), MOST_LEANING), -MOST_LEANING)


def hang_sides(line: Line, outs: Sequence[float]) -> Iterator[tuple[Space, Top]]:
    """Draws the chains at the petals' sides from the slip stitch up to the head, and gives them as places."""
    order = {id(thing): at for at, thing in enumerate(line.things)}
    for whole in line.petals:
        sides = [thing for thing in whole.things if isinstance(thing, Space)]
        for side, step in ((sides[0], 1), (sides[-1], -1)) if sides else ():
            at = order[id(side)]
            beside = line.things[at + step]
            start, head = _foot(line, whole, at - step, step), line.heads[id(beside)]
            across, up = outward(line.ground, head)
            away = (up * step, -across * step)  # from the petal's middle
            end = (head[0] + away[0] * (HEAD + CLEAR_OF_HEAD), head[1] + away[1] * (HEAD + CLEAR_OF_HEAD))
            start, end = (start, end) if step > 0 else (end, start)
            bent = arch(start, end, away, side.chains, LINK)
            line.arches[id(side)] = bent
            x = line.xs[at]
            share = x / line.ground.way(line.level)
            yield (
                side,
                Top(
                    line.ground, share, line.opened(share), line.level, outs[at + step], CHAIN_THICK, at, bent
                ),
            )


def _foot(line: Line, whole: Whole, at: int, step: int) -> Point:
    """Where a side begins: above the low stitch that has that number, which lies at its end; beside the
    middle of a slip stitch that is no part of the petal, where the next petal's side begins too.
    """
    slip = line.things[at % len(line.things)]
    foot, head = line.feet[id(slip)][0], line.heads[id(slip)]
    low = isinstance(slip, Made) and slip.kind == "slip"
    x, y = ((foot[axis] + head[axis]) / 2 if low else head[axis] for axis in (0, 1))
    across, up = outward(line.ground, (x, y))
    aside = 0.0 if slip in whole.things else BESIDE_A_DOT * step
    return (x + across * ABOVE_A_DOT - up * aside, y + up * ABOVE_A_DOT + across * aside)
