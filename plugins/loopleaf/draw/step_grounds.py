"""What techniques are worked on: of each ground its places, the first loop on the hook, and the fabric."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from math import cos, radians, sin

from .loops import HOOK_NEAR, YARN, lying
from .step_fabric import COVERING, EVERY, FABRIC, finished, stems, tall_stems, tops, x_of
from .step_knots import knot, slip_knot
from .step_moves import FIRST, HOLE, STITCH, Ground, Loop, Place, State
from .step_scene import DEEP
from .step_setting import Setting
from .strands import Knot, Solid, Strand

HEIGHTS: Mapping[str, float] = {
    "chain": 0.0, "single": 9.0, "half": 13.0, "double": 18.0, "treble": 24.0, "double-treble": 29.0,
    "triple-treble": 34.0, "extended-single": 13.0,
}  # fmt: skip
"""How tall stitches stand in the drawings."""

OVERS = {"half": 1, "double": 1, "treble": 2, "double-treble": 3, "triple-treble": 4}

_CHAINED = {"extended-single": 1}
"""Parts of a stem that are like a chain."""

STANDING = range(-2, 1)
"""Finished stitches of the row that is being worked, the last one on stitch 0 below."""

FOOT = 13.0
_TALL_FOOT = 24.0


def setting(ground: str, stitch: str) -> Setting:
    """The setting of a technique. Raises KeyError for a ground or a stitch that isn't known."""
    return _SETTINGS[ground](stitch)


def _after(height: float) -> State:
    """One loop on the hook, out of the top of the last stitch."""
    return State((Loop((x_of(0) - 1.0, -height), FIRST, "paper"),))


def _stitches(stitch: str) -> Setting:
    height = HEIGHTS[stitch]
    x = x_of(1)
    places = {
        "next": Place("next", (x, HOLE), (x, 0.0)),
        "same": Place("same", (x - 1.2, HOLE), (x, 0.0)),
        "next 2": Place("next 2", (x_of(2), HOLE), (x_of(2), 0.0)),
        "front loop": Place("front loop", (x, HOLE), (x, 0.0)),
        "back loop": Place("back loop", (x, 0.2), (x, 0.0)),
        "front loops": Place("front loops", (x - STITCH / 2, HOLE), (x - STITCH / 2, 2.4), 0.18, 19.0),
    }

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from stems(1.0, FOOT + 2)
        yield from tops(0.0, state.inside)
        bar = state.inside if state.inside is not None and state.inside.name == "bar" else None
        yield from finished(STANDING, height, _bars(stitch), bar, chained=_CHAINED.get(stitch, 0))

    return Setting(Ground(places, height), _after(height), fabric, FOOT)


def _linked(stitch: str) -> Setting:
    """As on stitches; and the yarn across the stem of the last one is a place."""
    plain = _stitches(stitch)
    x, y = x_of(0) - 0.2, 3.2 - HEIGHTS[stitch] / 2
    bar = Place("bar", (x - 1.6, y + 1.6), (x, y), 0.45, 12.5)
    return replace(plain, ground=replace(plain.ground, places={**plain.ground.places, "bar": bar}))


def _backwards(stitch: str) -> Setting:
    """An edge that is worked the other way: what is finished stands where one usually goes on."""
    height = HEIGHTS[stitch]
    x = x_of(1)
    places = {"behind": Place("behind", (x, HOLE), (x, 0.0), 1.15, 15.5)}

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from stems(1.0, FOOT + 2)
        yield from tops(0.0, state.inside)
        for strand in finished(STANDING, height, 0):
            turned = replace(strand, knots=[knot._replace(x=2 * x - knot.x) for knot in strand.knots])
            yield _nearer(turned, COVERING - FABRIC) if state.inside else turned

    start = State((Loop((2 * x - x_of(0) + 1.0, -height), FIRST, "paper"),))
    return Setting(Ground(places, height, ((STITCH, 0.0),)), start, fabric, FOOT)


def _bars(stitch: str) -> int:
    return OVERS.get(stitch, 0)


def _chain(stitch: str) -> Setting:
    x = 6.0

    def fabric(state: State) -> Iterator[Strand | Solid]:
        for at in range(1, 4):
            right = x + STITCH * (4 - at)
            yield lying((right, 0.0), (right - STITCH, 0.0), FABRIC + at * 0.5)

    start = State((Loop((x, 0.0), FIRST, "paper"),))
    return Setting(Ground({}, 0.0), start, fabric, 6.0)


def _first_row(stitch: str) -> Setting:
    """A chain with the hook at its end, before its first row: one chain is passed over."""
    height = HEIGHTS[stitch]
    places = {
        name: Place(name, (x_of(at), 1.6), (x_of(at), -0.6))
        for at, name in enumerate(("chain", "next chain"), start=1)
    }

    def fabric(state: State) -> Iterator[Strand | Solid]:
        way_in = [*places].index(state.inside.name) + 1 if state.inside is not None else None
        for number in reversed(range(6)):
            root, tip = ((x_of(number) + aside, 0.0) for aside in (-STITCH / 2, STITCH / 2))
            near = FABRIC - number * 0.5
            if way_in is not None and number > way_in:
                near += COVERING - FABRIC
            yield lying(root, tip, near, upper=HOOK_NEAR + 2 if number == way_in else None)

    start = State((Loop((x_of(0) + STITCH / 2, 0.0), FIRST, "paper"),))
    steps = ((x_of(1) - x_of(0) - STITCH / 2 - 1.0, -height), (-STITCH, 0.0))
    return Setting(Ground(places, height, steps), start, fabric, 9.0)


def _space(stitch: str) -> Setting:
    height = HEIGHTS[stitch]
    x = x_of(1)
    places = {"space": Place("space", (x, HOLE), (x, 0.0))}
    bare = range(1, 4)

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from (_lower(top) for top in tops(0.0))
        yield from stems(1.0, 12.0, (n for n in EVERY if n not in bare[:-1]))
        yield from tops(0.0, state.inside)
        yield from finished(STANDING, height, 0)

    return Setting(Ground(places, height, ((-STITCH, 0.0),)), _after(height), fabric, 16.5)


def _lower(strand: Strand) -> Strand:
    """The same in the row below, behind."""
    knots = [knot._replace(y=knot.y + 12.5, near=knot.near - 14) for knot in strand.knots]
    return Strand(knots, strand.width, strand.fill, strand.joined)


def _tall(stitch: str) -> Setting:
    height = HEIGHTS[stitch]
    x = x_of(1) - STITCH / 2
    middle = _TALL_FOOT * 0.55
    lean = 0.22
    behind, before = FABRIC - 14, FABRIC + 2
    hole = (x, middle + 0.4)
    places = {
        "front post": Place("front post", hole, (x, middle), lean, 13.5, (behind, before)),
        "back post": Place("back post", hole, (x, middle), lean, 13.5, (before, behind)),
    }

    def fabric(state: State) -> Iterator[Strand | Solid]:
        inside = state.inside.name if state.inside is not None else ""
        near = {"front post": COVERING, "back post": FABRIC - 10}.get(inside)
        yield from tall_stems(_TALL_FOOT + 2, 1, near, inside == "back post")
        yield from tops(0.0, numbers=range(-2, 1))
        for top in tops(0.0, numbers=range(1, 6)):
            yield _nearer(top, COVERING - FABRIC + 6) if inside else top
        yield from finished(STANDING, height, _bars(stitch))

    return Setting(Ground(places, height), _after(height), fabric, _TALL_FOOT)


def _nearer(strand: Strand, by: float) -> Strand:
    return replace(strand, knots=[knot._replace(near=knot.near + by) for knot in strand.knots])


def _first(stitch: str) -> Setting:
    height = HEIGHTS[stitch]
    x = x_of(2)
    middle = (x + STITCH / 2 - 1.0, -height)
    places = {"first": Place("first", (middle[0], middle[1] + HOLE), middle)}

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from stems(1.0, FOOT + 2)
        yield from tops(0.0)
        yield from finished([*STANDING, *range(2, 6)], height, 0, state.inside)

    return Setting(Ground(places, height), _after(height), fabric, FOOT)


_INNER, _OUTER = 8.0, 10.9
"""The two strands of a ring lie so far from its middle: the yarn, and outside it its end."""

_RING_END = (7.6, -3.4)
"""Where the yarn leaves the ring, behind it."""


def _eased(share: float) -> float:
    """From 0 to 1, slowly at both ends."""
    share = min(max(share, 0.0), 1.0)
    return share * share * (3 - 2 * share)


def _ring(stitch: str) -> Setting:
    cx, cy = 0.0, 7.0

    def at(degrees: float, out: float, near: float) -> Knot:
        return Knot(cx + out * cos(radians(degrees)), cy - out * sin(radians(degrees)), near)

    def place(name: str, degrees: float) -> Place:
        hole, middle = at(degrees, _INNER - 2.4, 0.0), at(degrees, (_INNER + _OUTER) / 2, 0.0)
        return Place(name, (hole.x, hole.y), (middle.x, middle.y), 0.78, 16.0)

    places = {"ring": place("ring", 82), "ring again": place("ring again", 112)}

    def fabric(state: State) -> Iterator[Strand | Solid]:
        over = HOOK_NEAR + 2 if state.inside is not None else FABRIC
        end = [Knot(cx - _OUTER - 2.0, cy + 17.0, FABRIC), Knot(cx - _OUTER - 0.8, cy + 6.0, FABRIC)]
        turns = [
            at(
                turn,
                _INNER + (_OUTER - _INNER) * _eased((turn + 60) / 110),
                over if 45 < turn % 360 < 155 else FABRIC,
            )
            for turn in range(170, -290, -20)
        ]
        behind = [at(60, _INNER + 0.6, FABRIC - 12), Knot(*_RING_END, FABRIC - 12)]
        x, y = places["ring"].hole
        back = [Knot(x + 4.2, y - 6.4, DEEP), Knot(x + 1.0, y - 3.0, DEEP)] if state.on or state.lain else []
        yield Strand([*end, *turns, *behind, *back], YARN, "tint")

    steps = ((-1.0, -8.5), (-7.0, 0.6))
    return Setting(Ground(places, 9.0, steps), State((), begin=_RING_END), fabric, 22.0)


def _fan(stitch: str) -> Setting:
    """As on stitches, but what is made in one of them fans out."""
    plain = _stitches(stitch)
    return replace(plain, ground=replace(plain.ground, steps=((-4.2, 0.4), (-6.4, -0.8), (-6.4, 0.4))))


def _puff(stitch: str) -> Setting:
    """As on stitches, but its long loops stand apart in their one place."""
    plain = _stitches(stitch)
    x = x_of(1)
    places = {
        name: Place(name, (x + aside, HOLE), (x, 0.0))
        for name, aside in (("next", 2.6), ("same", -0.6), ("same again", -3.8))
    }
    return replace(plain, ground=replace(plain.ground, places=places))


def _popcorn(stitch: str) -> Setting:
    """As a fan; and the top of its first stitch is a place."""
    plain = _fan(stitch)
    root = _after(HEIGHTS[stitch]).on[0]
    assert isinstance(root, Loop)
    step = plain.ground.steps[0]
    middle = (root.root[0] + step[0] * 0.5, root.root[1] + step[1] * 0.5)
    top = Place("top", (middle[0], middle[1] + 2.0), middle, 0.3, 13.0)
    return replace(plain, ground=replace(plain.ground, places={**plain.ground.places, "top": top}))


def _picot(stitch: str) -> Setting:
    """Chains that rise from the top of the last stitch and come back to it."""
    plain = _stitches(stitch)
    height = HEIGHTS[stitch]
    middle = (x_of(0) + STITCH / 2 - 1.0, -height)
    places = {"top": Place("top", (middle[0], middle[1] + HOLE), middle)}
    steps = ((3.0, -7.5), (-6.5, -6.0), (-7.0, 5.0), (0.0, 0.0))

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from stems(1.0, FOOT + 2)
        yield from tops(0.0)
        yield from finished(STANDING, height, 0, state.inside)

    return Setting(Ground(places, height, steps), plain.start, fabric, FOOT)


_ROW = 13.0
"""From row to row."""


def _spike(stitch: str) -> Setting:
    """Two rows: the lower one has the place."""
    height = HEIGHTS[stitch]
    x = x_of(1)
    places = {"lower": Place("lower", (x, _ROW + HOLE), (x, _ROW), 0.5, 13.0)}

    def fabric(state: State) -> Iterator[Strand | Solid]:
        yield from stems(_ROW + 1.0, _ROW + FOOT)
        yield from tops(_ROW, state.inside)
        yield from stems(1.0, _ROW + 3.0, covering=2 if state.inside else None)
        yield from (_nearer(top, 2.0) for top in tops(0.0, numbers=EVERY[:4]))
        rest = tops(0.0, numbers=EVERY[4:])
        yield from (_nearer(top, COVERING - FABRIC + 2 if state.inside else 2.0) for top in rest)
        yield from finished(STANDING, height, 0)

    return Setting(Ground(places, height), _after(height), fabric, _ROW + FOOT - 3)


def _foundation(stitch: str) -> Setting:
    """No row below: the foot of each stitch is a chain."""
    height = HEIGHTS[stitch]
    foot = HOLE
    places = {
        name: Place(name, (x_of(at) + 0.4, foot + 0.4), (x_of(at) + 3.4, foot))
        for at, name in enumerate(("foot", "next foot"))
    }

    def fabric(state: State) -> Iterator[Strand | Solid]:
        inside = state.inside.name if state.inside is not None else ""
        for number in STANDING:
            near = HOOK_NEAR + 2 if inside == "foot" and number == 0 else FABRIC + number * 0.5
            yield lying((x_of(number) + STITCH, foot), (x_of(number), foot), near)
        yield from finished(STANDING, height, 0)

    return Setting(Ground(places, height), _after(height), fabric, FOOT)


_CHAINS, _ROUND = 8, 11.5
"""A ring of so many chains, and how far from its middle they lie."""


def _chain_ring(stitch: str) -> Setting:
    """Chains laid in a ring, the first one to the left of the last."""
    cx, cy = 2.0, 8.0

    def at(turn: float, out: float) -> tuple[float, float]:
        return (cx + out * cos(radians(turn)), cy - out * sin(radians(turn)))

    wide = 360 / (_CHAINS + 0.5)
    begin = 90 + wide / 2
    first = at(begin + wide / 2, _ROUND)
    over = at(begin + wide * 1.1, _ROUND)
    places = {
        "first": Place("first", at(begin + wide / 2, _ROUND - HOLE + 1.0), first, 0.7, 15.0),
        "ring": Place("ring", at(begin + wide * 1.1, _ROUND - HOLE), over, 0.7, 16.0),
    }

    def fabric(state: State) -> Iterator[Strand | Solid]:
        inside = state.inside.name if state.inside is not None else ""
        for number in range(_CHAINS):
            near = FABRIC + number * 0.2
            if inside and number < 2:
                near = HOOK_NEAR + 2 + number
            yield lying(at(begin + wide * number, _ROUND), at(begin + wide * (number + 1), _ROUND), near)

    start = State((Loop(at(begin + wide * _CHAINS, _ROUND), FIRST, "paper"),))
    steps = ((0.0, 0.0), (-1.0, -8.0), (-9.0, 3.0))
    return Setting(Ground(places, 9.0, steps), start, fabric, 24.0)


_SETTINGS: Mapping[str, Callable[[str], Setting]] = {
    "stitches": _stitches,
    "knot": lambda stitch: knot(_stitches(stitch)),
    "chain": _chain,
    "first row": _first_row,
    "fan": _fan,
    "linked": _linked,
    "backwards": _backwards,
    "space": _space,
    "tall": _tall,
    "first": _first,
    "ring": _ring,
    "slip knot": lambda stitch: slip_knot(_ring(stitch)),
    "puff": _puff,
    "popcorn": _popcorn,
    "picot": _picot,
    "spike": _spike,
    "foundation": _foundation,
    "chain ring": _chain_ring,
}
