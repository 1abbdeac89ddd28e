"""How far out the heads of one round of a chart come to rest."""

from collections.abc import Sequence, Set
from itertools import pairwise
from math import sqrt

from ..fabric import Made, Space
from .chart_crowded import Fit
from .chart_ground import Bends, Ground, Inward, Sector, Straight, is_closed
from .chart_level import levelled
from .chart_lines import Top
from .chart_mitred import Mitred
from .chart_things import ROOM, Thing, tall_of
from .relax import settle
from .section import Half, Oval, Polygon
from .signs import UNIT, is_cross

LEVEL, LEVEL_SIDE = 0.3, 3.0
"""How strongly a head is held level with its neighbours, where its own height holds with 1; and on the
straight side of a polygon.
"""

SHORTEST = 0.45
"""A leaning stitch still rises so much of its height."""

UPRIGHT = 0.8
"""The same in a crowded round, whose fans stand in each other's way."""

STEEPEST = 0.8
"""A row slopes with its leaning stitches, at most so steeply. Rounds stay round."""

LOWEST_CROSS = 0.7
"""In a row that waves a cross lies so far above its place, at least, of its height: it is no less tall."""

AS_TALL_AS_WIDE = 0.54
"""On the far side of a ball stitches drawn together are as tall as this share of their places' distance, at
least: flatter legs would look like a part of its rim.
"""

AFLOAT = 1.5
"""About a middle a cross, which has no stem, stands at most so far above where it would stand by itself."""

FREE, SPIKE = 0.02, 0.1
"""How strongly chains hold their height, and stitches worked lower down."""


def level_for(
    ground: Ground, things: Sequence[Thing], below: Sequence[Sequence[Top]], need: float, low: float
) -> float:
    """How far out a round lies: above what it stands on, and far enough to hold its stitches.

    need: the length of its way. low: where the round below has its heads, in the mean.
    """
    rises = [
        _floor(tops, low) + ROOM + tall_of(thing)
        for thing, tops in zip(things, below, strict=True)
        if isinstance(thing, Made)
    ]
    wanted = sum(rises) / len(rises) if rises else low + UNIT
    crosses = all(is_cross(thing.kind) for thing in things if isinstance(thing, Made))
    return max(wanted, ground.out_for(need) + (UNIT / 2 if crosses and is_closed(ground) else 0.0))


def heads(
    ground: Ground, things: Sequence[Thing], xs: Sequence[float], footing: Sequence[float | None],
    below: Sequence[Sequence[Top]], level: float, low: float, deep: Set[int] = frozenset(),
    fit: Fit | None = None, waves: bool = False, straight: bool = False,
) -> list[float]:  # fmt: skip
    """How far out each head lies. xs, footing: where along the way heads and the middles of feet lie, None
    for stitches that cross, which are as high as their neighbours. deep: the ids of spikes. fit: of a crowded
    round. waves: it slopes with its leaning stitches, but no cross comes to lie on its place.
    straight: it stands straight above the row below.
    """
    stretch, lift = (fit.stretch, fit.lift) if fit else (1.0, 0.0)
    closed = is_closed(ground)
    about_a_chain = isinstance(ground, Oval) and ground.spine > 0
    wanted: list[float] = []
    pulls: list[float] = []
    leans: list[float] = []
    lowest: list[float] = []
    for thing, x, foot, tops in zip(things, xs, footing, below, strict=True):
        cross = isinstance(thing, Made) and is_cross(thing.kind)
        tall, floor = tall_of(thing) * (1.0 if cross else stretch), _floor(tops, low) + lift
        lean = x - foot if foot is not None and not isinstance(thing, Space) else 0.0
        if about_a_chain and cross:
            lean = 0.0
        if isinstance(ground, Half | Mitred | Sector):
            lean = 0.0  # its sides are straight: what leans at their ends is drawn longer
        shortest = UPRIGHT * tall_of(thing) if fit else SHORTEST * tall
        rise = sqrt(max(tall * tall - lean * lean, shortest**2))
        if len(tops) > 1 and isinstance(ground, Inward):
            shares = [top.carried(level) for top in tops]
            shares = [share - round(share - shares[0]) for share in shares]
            spread = (max(shares) - min(shares)) * ground.way(floor)
            rise = max(rise, AS_TALL_AS_WIDE * spread)
        if id(thing) in deep and cross:
            floor = max(floor, low)  # it is drawn out as high as its neighbours
        wanted.append(floor + ROOM + rise)
        lowest.append(floor + ROOM + LOWEST_CROSS * tall if cross and tops else 0.0)
        follows = isinstance(thing, Space) or (foot is None and bool(tops))
        pulls.append(FREE if follows else 1.0 if floor + 2 * tall > low else SPIKE)
        upright = closed or isinstance(ground, Polygon)
        leans.append(0.0 if upright else max(min(lean / rise, STEEPEST), -STEEPEST))
    steps = [after - x for x, after in pairwise(xs)]
    if closed:
        steps.append(xs[0] + ground.way(level) - xs[-1])
    pairs = zip(leans, [*leans[1:], leans[0]], steps, strict=False)
    rests = [-(a + b) / 2 * min(step, 2 * UNIT) for a, b, step in pairs]
    springs = [LEVEL_SIDE if isinstance(ground, Polygon) else LEVEL] * len(rests)
    outs = settle(wanted, pulls, rests, springs)
    if type(ground) is Straight:
        outs = levelled(things, below, deep, wanted, outs, straight)
    if waves and not closed:
        outs = [max(out, floor) for out, floor in zip(outs, lowest, strict=True)]
    if not fit and not isinstance(ground, Straight | Bends | Mitred):
        more = max(level - sum(outs) / len(outs), 0.0)
        outs = [out + more for out in outs]
    if isinstance(ground, Oval) and not about_a_chain:
        for at, (thing, tops) in enumerate(zip(things, below, strict=True)):
            if tops and isinstance(thing, Made) and is_cross(thing.kind):
                outs[at] = min(outs[at], wanted[at] + AFLOAT)
    return outs


def corners_alike(outs: Sequence[float], corners: Sequence[int]) -> list[float]:
    """The same heads, those in a polygon's corners and beside them as far out in one corner as in another."""
    found, many = list(outs), len(outs)
    for beside in ((0,), (-1, 1)) if corners and many > 2 * len(corners) else ():
        places = [(at + step) % many for at in corners for step in beside]
        mean = sum(outs[at] for at in places) / len(places)
        for at in places:
            found[at] = mean
    return found


def _floor(tops: Sequence[Top], low: float) -> float:
    return sum(top.out for top in tops) / len(tops) if tops else low
