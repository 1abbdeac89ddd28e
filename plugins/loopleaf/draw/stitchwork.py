"""The look of stitches on patches of cloth: the cloth behind, and the strands on it.

A patch is given by a function from (across, up), both 0 to 1, to a point of the drawing.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import pairwise
from math import hypot
from typing import NamedTuple

from ..fabric import Made
from .canvas import Canvas, Point
from .colour import level, shaded
from .free_loops import draw_foot, foot_of
from .items import Item
from .picots import draw_picots
from .posts import POST_LIGHT, draw_back, draw_front

Patch = Callable[[float, float], Point]

GROUND = 0.64
"""The cloth behind the strands, darker than the yarn."""

LAP = 0.08
"""Cloth reaches so much of a stitch under its neighbours, so that no light shows between patches."""

OPEN = 0.5
"""Feet that stand at least so many stitch widths apart let the ground be seen between them."""

UNDER_SHELL = 2.6
"""Beside a shell's falling side they may stand so far apart: its outer stitches lie down on the cloth."""

SLIT = 1.3
"""A space whose chains lie so close above what they pass over, in widths of their line, shows no light."""

UPRIGHT = 0.5
"""Chains beside a stitch are so much thinner than a space's."""

BENDS = 1 / 40
"""A stitch that takes more of the way around than this is drawn bent."""

CROSSES, OVER = 0.8, 2
"""A post that leans by so many stitch widths crosses others; upper ones are drawn so many layers higher."""

SPIKE_HEAD = 0.45
"""So high in its row the yarn of a spike opens into its head."""

FEWEST_LEGS = 3
"""So many stitches drawn together in one place stand out from the cloth."""

_ALONG = (0.0, 0.25, 0.5, 0.75, 1.0)
_BLOBS = ("bobble", "puff", "popcorn", "cluster")
_HEADS = {"single": 0.95, "loop-single": 0.95, "slip": 0.95, "half": 0.62, "double": 0.42}


def straight(start: Point, end: Point) -> Callable[[float], Point]:
    """The way from one point to another, by its share."""
    (x, y), dx, dy = start, end[0] - start[0], end[1] - start[1]
    return lambda share: (x + dx * share, y + dy * share)


def between(foot: Callable[[float], Point], top: Callable[[float], Point]) -> Patch:
    """The patch between its lower and its upper edge."""

    def patch(across: float, up: float) -> Point:
        (x0, y0), (x1, y1) = foot(across), top(across)
        return (x0 + (x1 - x0) * up, y0 + (y1 - y0) * up)

    return patch


class Placed(NamedTuple):
    """An item in its place. light: how brightly it is lit, 1 as the yarn's own colour. reverse: its wrong
    side shows. seen: it faces the viewer squarely enough to show its strands. deep: of what lies
    over the cloth, from the place that it goes into; its patch is then that of a stitch beside it.
    leans: how far its foot is beside its head, in its own widths. turned: it stands in a row that the work
    was turned for.
    """

    item: Item
    patch: Patch
    light: float
    reverse: bool
    seen: bool
    deep: Patch | None = None
    leans: float = 0.0
    turned: bool = False


def lies_over(item: Item) -> bool:
    """Whether its yarn lies on the cloth and makes none of it: around a post, or down over a whole round."""
    return isinstance(item.thing, Made) and (bool(item.thing.post) or item.floor <= 0)


def placed_on(
    item: Item,
    patch: Callable[[Item], Patch],
    light: float = 1.0,
    reverse: bool = False,
    seen: bool = True,
    between_feet: tuple[float, float] | None = None,
) -> Placed:
    """An item in its place. patch: where an item lies. between_feet: where the feet of its two neighbours
    end and begin, for what lies over the cloth.
    """
    if not lies_over(item):
        return Placed(item, patch(item), light, reverse, seen)
    beside = item._replace(floor=1.0, foot=between_feet or (item.start, item.end))
    leans = ((item.foot[0] + item.foot[1]) / 2 - item.middle) / (item.end - item.start)
    return Placed(beside, patch(beside), light, reverse, seen, patch(item), leans)


def draw_row(canvas: Canvas, layer: int, row: Iterable[Placed], colours: Mapping[str, str]) -> None:
    """The stitches and spaces of a row or round, the ones beside each other in their order."""
    run: list[Placed] = []
    run_colour = ""
    row = list(row)
    over = _over(row)
    ridged = _ridged(row)
    for placed in row:
        colour = _ground(placed, colours)
        if run and (colour != run_colour or not _stand_close(run[-1], placed)):
            _cloth(canvas, layer, run_colour, run)
            run = []
        if colour:
            run.append(placed)
        run_colour = colour
        if placed.seen:
            above = OVER if id(placed.item.thing) in over else 0
            strands = colours[placed.item.thing.yarn]
            _strands(canvas, layer + 1 + above, placed, strands, id(placed.item.thing) in ridged)
            _picots(canvas, layer + 1, placed, colours[placed.item.thing.yarn])
    if run:
        _cloth(canvas, layer, run_colour, run)


def _over(row: Sequence[Placed]) -> set[int]:
    """The stitches around posts, by id, that go back to a place passed over: they cross in front of those
    made before them, which go on to places further along.
    """
    numbers = [one.item.thing.number for one in row if isinstance(one.item.thing, Made)]
    back = -1 if numbers[-1:] > numbers[:1] else 1
    return {id(one.item.thing) for one in row if _post(one) and one.leans * back > CROSSES}


def _picots(canvas: Canvas, layer: int, placed: Placed, colour: str) -> None:
    item, lights = placed.item, (GROUND * placed.light, placed.light)
    ground, strand = (shaded(colour, level(light)) for light in lights)
    draw_picots(canvas, layer, (ground, strand), placed.patch, item.picots, item.after)


def _ground(placed: Placed, colours: Mapping[str, str]) -> str:
    thing = placed.item.thing
    if not isinstance(thing, Made):
        return ""
    back = POST_LIGHT["back"] if _post(placed) == "back" else 1.0
    return shaded(colours[thing.yarn], level(GROUND * placed.light * back))


def _stand_close(left: Placed, right: Placed) -> bool:
    """Whether two stitches side by side leave no hole between their feet. Those around posts lie on the cloth
    before them or behind them, wherever they lean to, and spikes on that of the rounds below.
    """
    one, other = left.item, right.item
    if _around_posts(one, other) or left.deep or right.deep:
        return abs(other.start - one.end) < 1e-6
    apart = UNDER_SHELL if one.tops[0] > one.tops[1] or other.tops[0] < other.tops[1] else OPEN
    return abs(other.start - one.end) < 1e-6 and other.foot[0] - one.foot[1] < apart * (one.end - one.start)


def _cloth(canvas: Canvas, layer: int, colour: str, run: list[Placed]) -> None:
    lower: list[Point] = []
    upper: list[Point] = []
    for at, placed in enumerate(run):
        item, patch, deep = placed.item, placed.patch, placed.deep
        left = -LAP if not at else 0.0
        right = 1 + LAP if at == len(run) - 1 else 1.0
        wide = max(item.end - item.start, item.foot[1] - item.foot[0])
        between_them = (0.5,) if wide > BENDS or (item.corner and placed.turned) else ()
        alone = deep and 0 < at < len(run) - 1 and not (run[at - 1].deep or run[at + 1].deep)
        for edge, up in ((upper, 1.0),) if alone else ((lower, -LAP), (upper, 1.0)):
            for across in (left, *between_them, right):
                point = patch(across, up)
                if not edge or hypot(point[0] - edge[-1][0], point[1] - edge[-1][1]) > 0.1:
                    edge.append(point)
    if any(_around_posts(one, other) and other.foot < one.foot for (one, *_), (other, *_) in pairwise(run)):
        lower = _in_order(lower, upper)
    canvas.fill(layer, colour, [*lower, *reversed(upper)])


def _around_posts(one: Item, other: Item) -> bool:
    return all(isinstance(item.thing, Made) and item.thing.post for item in (one, other))


def _in_order(lower: Sequence[Point], upper: Sequence[Point]) -> list[Point]:
    """The lower edge of crossed stitches, from one end of the upper edge towards the other."""
    (x, y), (end_x, end_y) = upper[0], upper[-1]
    return sorted(lower, key=lambda at: (at[0] - x) * (end_x - x) + (at[1] - y) * (end_y - y))


def _post(placed: Placed) -> str:
    """Which way a post stitch stands as seen from this side."""
    thing = placed.item.thing
    post = thing.post if isinstance(thing, Made) else ""
    return {"front": "back", "back": "front"}.get(post, "") if placed.reverse else post


def _ridged(row: Sequence[Placed]) -> set[int]:
    """The stitches around the back of posts, by id, with others of their kind beside them; alone between ribs
    one pushes nothing forward.
    """
    beside = [(a, b) for a, b in pairwise(row) if _post(a) == _post(b) == "back"]
    return {id(one.item.thing) for pair in beside for one in pair}


def _strands(canvas: Canvas, layer: int, placed: Placed, colour: str, ridged: bool) -> None:
    thing, patch = placed.item.thing, placed.patch
    post = _post(placed)
    strand = shaded(colour, level(placed.light))
    left, right = patch(0.0, 0.75), patch(1.0, 0.75)
    thick = max(hypot(right[0] - left[0], right[1] - left[1]) * 0.27, 0.15)

    def strand_through(*points: tuple[float, float], by: float = 1.0) -> None:
        canvas.line(layer, strand, thick * by, [patch(across, up) for across, up in points])

    if placed.item.upright:
        _upright(canvas, layer, placed, colour)
    elif not isinstance(thing, Made):
        _space(canvas, layer, placed, colour)
    elif post == "front":
        foot = (placed.deep or patch)(0.5, 0.0)
        draw_front(canvas, layer, colour, placed.light, thick, foot, patch(0.5, 1.0))
    elif placed.deep is not None and not post:
        _spike(canvas, layer, placed, colour, strand, thick)
    elif post == "back":
        draw_back(canvas, layer, colour, placed.light, thick, patch, ridged)
    elif _is_blob(thing):
        bump = [patch(0.5, 0.3), patch(0.5, 0.7)]
        canvas.line(layer, shaded(colour, level(placed.light * 0.5)), thick * 4.0, bump)
        canvas.line(layer + 1, strand, thick * 3.3, bump)
    else:
        _plain(thing, placed, strand_through)
    if isinstance(thing, Made) and not post:
        foot_shows = foot_of(thing, placed.reverse, placed.turned)
        draw_foot(canvas, layer, foot_shows, colour, placed.light, thick, patch)


def _spike(canvas: Canvas, layer: int, placed: Placed, colour: str, strand: str, thick: float) -> None:
    """The long yarn of a spike over the cloth, on both faces: it goes around the edge of what it passes.
    One drawn together goes out to both of its ends.
    """
    thing, patch, deep = placed.item.thing, placed.patch, placed.deep or placed.patch
    spread = isinstance(thing, Made) and thing.form == "tog"
    for foot in (0.1, 0.9) if spread else (0.5,):
        stem = [deep(foot, 0.02), patch(0.5, SPIKE_HEAD)]
        canvas.line(layer, shaded(colour, level(placed.light * 0.5)), thick * 1.9, stem)
        canvas.line(layer + 1, strand, thick * 1.25, stem)
    bar, fork = ((0.12, 0.82), (0.88, 0.82)), ((0.14, 0.93), (0.5, SPIKE_HEAD), (0.86, 0.93))
    head = bar if placed.reverse else fork
    canvas.line(layer + 1, strand, thick, [patch(across, up) for across, up in head])


def _is_blob(thing: Made) -> bool:
    """Whether it stands out: also several tall stitches that are drawn together in one place."""
    together = thing.form == "tog" and thing.legs >= FEWEST_LEGS and len({id(one) for one in thing.into}) == 1
    return thing.form in _BLOBS or (together and thing.kind not in ("single", "slip"))


def _plain(thing: Made, placed: Placed, strand: Callable[..., None]) -> None:
    reverse = placed.reverse
    head = _HEADS.get(thing.kind if placed.deep is None else "single", 0.34)
    foot = 1 - head
    if head > 0.9 and reverse:
        strand((0.12, 0.82), (0.88, 0.82))
        strand((0.2, 0.1), (0.5, 0.5), (0.8, 0.1), by=0.8)
    else:
        strand((0.14, 0.93), (0.5, foot + 0.1), (0.86, 0.93))
        if head < 0.8 and thing.form == "tog":
            strand((0.2, 0.04), (0.5, foot), (0.8, 0.04), by=1.15)
        elif head < 0.8:
            strand((0.5, 0.04), (0.5, foot), by=1.15)


def _space(canvas: Canvas, layer: int, placed: Placed, colour: str) -> None:
    patch, light = placed.patch, placed.light
    left, right = patch(0.0, 0.9), patch(1.0, 0.9)
    thick = max(min(hypot(right[0] - left[0], right[1] - left[1]) * 0.3, 2.2), 0.15)
    points = [patch(-0.06, 0.82), patch(0.3, 0.93), patch(0.7, 0.93), patch(1.06, 0.82)]
    (fx, fy), (x, y) = patch(0.5, 0.0), patch(0.5, 0.93)
    if hypot(x - fx, y - fy) < SLIT * thick:
        hole = [patch(across, up) for up, way in ((-LAP, _ALONG), (0.9, _ALONG[::-1])) for across in way]
        canvas.fill(layer - 1, shaded(colour, level(GROUND * light)), hole)
    canvas.line(layer - 1, shaded(colour, level(GROUND * light)), thick * 1.7, points)
    canvas.line(layer, shaded(colour, level(light)), thick, points)


def _upright(canvas: Canvas, layer: int, placed: Placed, colour: str) -> None:
    """Chains beside a stitch, with the cloth between them and it."""
    patch, (left, right) = placed.patch, placed.item.tops
    outer, inner = (0.0, 1.0) if left < right else (1.0, 0.0)
    foot, low, high = patch(inner, -LAP), patch(outer, 0.9), patch(inner, 0.95)
    thick = max(min(hypot(high[0] - low[0], high[1] - low[1]) * 0.3, 2.2) * UPRIGHT, 0.15)
    ground, strand = (shaded(colour, level(light * placed.light)) for light in (GROUND, 1.0))
    # Shapes of a layer and colour are one path: one that ran the other way would cut a hole into it.
    canvas.fill(layer - 1, ground, [foot, high, low] if left < right else [foot, low, high])
    canvas.line(layer - 1, ground, thick * 1.7, [low, high])
    canvas.line(layer, strand, thick, [low, high])
