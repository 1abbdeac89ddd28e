"""A piece worked in the round, drawn as it stands or lies."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import pairwise

from ..fabric import Space
from .canvas import Canvas, Point
from .chain_line import EDGE, draw_chain
from .colour import level, shaded
from .items import Item
from .layers import layers_of
from .profile import Ring
from .ring_chains import link_ends, real_ring
from .stand import Stand
from .stitchwork import BENDS, GROUND, Patch, Placed, between, draw_row, lies_over, placed_on, straight
from .subject import Subject, main_colour
from .worked_back import draw_leaf_on, leaves_of

OUTSIDE = 1000
"""Layers of the outside lie so far above those of the inside."""

ROUND_LAYERS = 4
SEEN = 0.12
"""Strands are drawn where the cloth faces the viewer at least so squarely; cloth up to the edge."""

EDGE_ON = 0.001
"""What faces the viewer less than this is behind the piece's edge."""

WIRE, RING_STEPS = "#c2bba8", 72
"""A real ring is drawn as of wire, over so many points."""

FEW = 16
"""Fewer stitches around than this part at the sides of a piece."""

DIM = 0.86
"""Each layer lies so much more in the shade than the one in front of it."""

PETAL_FOOT = 0.2
"""Petals stand side by side on so much of their height."""

HOLE = 0.26
"""What shows through a hole of a standing piece: its inside, in the dark."""


def draw_rounds(canvas: Canvas, stand: Stand, subject: Subject, rounds: Sequence[Sequence[Item]]) -> None:
    """All rounds of a piece: first what is seen of the inside, over the rim, then the outside."""
    behind = layers_of(subject.worked) if stand.from_above else [0] * len(rounds)
    brim = _brim(stand)
    for inside in (True, False) if stand.is_open else (False,):
        for at, items in enumerate(rounds):
            dim = DIM ** behind[at]
            placed = [one._replace(light=one.light * dim) for one in _placed(stand, at, items, inside)]
            layer = ROUND_LAYERS * (at - behind[at] * len(rounds)) + (0 if inside else OUTSIDE)
            if not inside and not stand.from_above:
                _holes(canvas, layer, placed, subject)
            if at in brim:
                far = [one for one in placed if _is_far(stand, at, one.item)]
                draw_row(canvas, OUTSIDE - ROUND_LAYERS * (at + 1), far, subject.colours)
                placed = [one for one in placed if not _is_far(stand, at, one.item)]
            draw_row(canvas, layer, placed, subject.colours)
        if stand.from_above:
            _closed(canvas, stand, subject, behind)
            _neck(canvas, stand, subject)
    for at, items in enumerate(rounds):
        _leaves(canvas, stand, at, items, subject)
    _outline(canvas, stand, rounds[-1], shaded(main_colour(subject), HOLE))


def _closed(canvas: Canvas, stand: Stand, subject: Subject, behind: Sequence[int]) -> None:
    """The ground of each layer, as far out as petals stand on it: between them no light shows."""
    for at, (before, layer) in enumerate(pairwise(behind), 1):
        if layer == before:
            continue
        ring = stand.rings[at]
        out = ring.out1
        if at + 1 < len(behind) and behind[at + 1] == layer:
            petals = stand.rings[at + 1]
            out += PETAL_FOOT * (petals.out1 - petals.out0)
        colour = subject.colours[subject.worked[at].made[0].yarn]
        disc = [stand.point(out, ring.high1, i / 48) for i in range(48)]
        lowest = OUTSIDE + ROUND_LAYERS * (at - layer * len(behind)) - 1
        canvas.fill(lowest, shaded(colour, GROUND * DIM**layer), disc)


def _brim(stand: Stand) -> range:
    """The rounds that stand out below the sides of a closed piece and are seen all around: a hat's brim. What
    of them lies behind the crown is drawn beneath it.
    """
    many = len(stand.rings)
    if stand.is_open or stand.from_above:
        return range(0)
    shown = [min(stand.facing(ring, at / 24) for at in range(24)) > SEEN for ring in stand.rings]
    sides = next((at for at, all_around in enumerate(shown) if not all_around), many)
    return range(next((at for at in range(sides, many) if shown[at]), many), many)


def _is_far(stand: Stand, at: int, item: Item) -> bool:
    """Whether an item of a round lies beyond the middle of the piece, as the viewer sees it."""
    ring = stand.rings[at]
    across = [stand.point(ring.out1, ring.high1, along)[1] for along in (item.middle, item.middle + 0.5)]
    return across[0] > across[1]


def _neck(canvas: Canvas, stand: Stand, subject: Subject) -> None:
    """What the first round is worked on, along the opening: a ring of wire or cord, or single chains."""
    out = stand.rings[0].out0
    if real_ring(subject):
        circle = [stand.point(out, 0.0, at / RING_STEPS) for at in range(RING_STEPS + 1)]
        for layer, shade, thick in ((0, 0.55, 1.5), (1, 1.0, 1.0)):
            canvas.line(
                OUTSIDE + layer + 1, shaded(WIRE, shade), thick * subject.scale.width_mm * 0.2, circle
            )
    ends = [stand.point(out, 0.0, along) for along in link_ends(subject, stand.section)]
    if ends:
        colour = subject.colours[subject.worked[0].made[0].yarn]
        draw_chain(canvas, OUTSIDE + 1, ends, colour, EDGE * subject.scale.width_mm)


def _leaves(canvas: Canvas, stand: Stand, at: int, items: Sequence[Item], subject: Subject) -> None:
    """What a round works back on chains goes on outwards, or upwards, from it."""
    ring = stand.rings[at]
    rise = ring.rise or 1.0
    ahead, up = (ring.out1 - ring.out0) / rise, (ring.high1 - ring.high0) / rise
    for leaf in leaves_of(subject.worked[at]):
        start = next(item for item in items if item.thing is leaf.on).middle

        def surface(out: float, aside: float, start: float = start) -> Point:
            far = ring.out1 + ahead * out
            return stand.point(far, ring.high1 + up * out, start + aside / (stand.section.way(far) or 1.0))

        near = stand.facing(ring, start) > 0
        light = stand.light(ring, start) if near else stand.light_inside(ring)
        layer = (OUTSIDE if near else 0) + ROUND_LAYERS * len(stand.rings)
        draw_leaf_on(canvas, layer, leaf, surface, subject.scale, subject.colours, level(light))


def _placed(stand: Stand, at: int, items: Sequence[Item], inside: bool) -> Iterator[Placed]:
    """The items of one round that are seen from this side."""
    ring = stand.rings[at]
    below = stand.rings[at - 1] if at else None
    for index, item in enumerate(items):
        facings = [stand.facing(ring, along) * (-1 if inside else 1) for along in (item.start, item.end)]
        if max(facings) < EDGE_ON or (inside and stand.hidden_by_the_rim(ring, item.middle)):
            continue
        light = stand.light_inside(ring) if inside else stand.light(ring, item.middle)
        patch = _towards(partial(_patch, stand, ring, below), facings)
        before, after = items[index - 1], items[(index + 1) % len(items)]
        feet = (
            item.start if lies_over(before) else before.foot[1],
            item.end if lies_over(after) else after.foot[0],
        )
        left, right = (foot + round(item.middle - foot) for foot in feet)
        yield placed_on(item, patch, light, inside, sum(facings) / 2 > SEEN, (left, right))


def _towards(patch: Callable[[Item], Patch], facings: Sequence[float]) -> Callable[[Item], Patch]:
    """Where an item lies, as far as it faces the viewer: what goes on behind the piece's edge would lie over
    it the other way around, and shapes of two ways are a hole. facings: of its start and its end.
    """
    start, end = facings
    if min(start, end) >= 0:
        return patch
    turns = start / (start - end)
    low, high = (turns, 1.0) if start < 0 else (0.0, turns)

    def cut(item: Item) -> Patch:
        whole = patch(item)
        return lambda across, up: whole(low + (high - low) * across, up)

    return cut


def _patch(stand: Stand, ring: Ring, below: Ring | None, item: Item) -> Patch:
    """From the item's foot to its tops: flat between its corners; what is wide bends with the round."""
    sunk = (1 - item.floor) if below is not None else 0.0
    low_out, low_high = ring.out0, ring.high0
    if below is not None:
        low_out -= (below.out1 - below.out0) * sunk
        low_high -= (below.high1 - below.high0) * sunk

    def foot(across: float) -> Point:
        return stand.point(low_out, low_high, item.foot[0] + (item.foot[1] - item.foot[0]) * across)

    def top(across: float) -> Point:
        up = item.tops[0] + (item.tops[1] - item.tops[0]) * across
        out, high = ring.out0 + (ring.out1 - ring.out0) * up, ring.high0 + (ring.high1 - ring.high0) * up
        return stand.point(out, high, item.start + (item.end - item.start) * across)

    if max(item.end - item.start, item.foot[1] - item.foot[0]) > BENDS:
        return between(foot, top)
    return between(straight(foot(0.0), foot(1.0)), straight(top(0.0), top(1.0)))


_HOLE_WAY = [(i / 4, 0.0) for i in range(-1, 6)] + [(i / 4, 1.0) for i in range(5, -2, -1)]


def _holes(canvas: Canvas, layer: int, placed: Sequence[Placed], subject: Subject) -> None:
    for item, patch, *_ in placed:
        if isinstance(item.thing, Space):
            colour = shaded(subject.colours[item.thing.yarn], HOLE)
            canvas.fill(layer, colour, [patch(across, up) for across, up in _HOLE_WAY])


def _outline(canvas: Canvas, stand: Stand, last: Sequence[Item], dark: str) -> None:
    """Around each round of a standing piece (what lies within is covered), and over the last round's tops.

    dark: what a closed or narrow piece shows where its stitches part.
    """
    for ring in [] if stand.from_above else stand.rings[:-1]:
        points = [
            stand.point(out, high, i / 24)
            for out, high in ((ring.out0, ring.high0), (ring.out1, ring.high1))
            for i in range(24)
        ]
        canvas.outline(hull(points))
        if not stand.is_open or len(last) < FEW:
            canvas.fill(-1, dark, hull(points))
    ring = stand.rings[-1]
    tops: list[Point] = []
    for item in last:
        for along, top in zip((item.start, item.end), item.tops, strict=True):
            out = ring.out0 + (ring.out1 - ring.out0) * top
            tops.append(stand.point(out, ring.high0 + (ring.high1 - ring.high0) * top, along))
    if tops:
        canvas.outline(tops)
        if not stand.is_open and not stand.from_above:
            canvas.fill(-1, dark, hull(tops))


def hull(points: Sequence[Point]) -> list[Point]:
    """The points' convex hull, counter-clockwise (the monotone chain of Andrew, 1979)."""
    ordered = sorted(set(points))
    halves: list[list[Point]] = []
    for way in (ordered, ordered[::-1]):
        half: list[Point] = []
        for x, y in way:
            while len(half) > 1 and _turns_right(half[-2], half[-1], (x, y)):
                half.pop()
            half.append((x, y))
        halves.append(half[:-1])
    return halves[0] + halves[1]


def _turns_right(a: Point, b: Point, c: Point) -> bool:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0
