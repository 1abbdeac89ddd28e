"""What a maker's moves do to the yarn: which loops are on the hook, where each comes from, what is finished.

A technique is written as moves (`over`, `into next`, `up`, `through 2`); here they are carried out, one by
one. All places are in units, y down, for a right-hander, who works to the left.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from .canvas import Point
from .sketch import Fill

STITCH = 9.6
"""From stitch to stitch."""

HOLE = 3.4
"""The way into a stitch lies so far below the middle of its top."""

GOING_IN = 0.62
"""How the hook leans that goes into a place, in radians."""

FIRST = 30.0
"""The turn of the first loop: earlier ones belong to the fabric below."""

TOP_HALF = 2.4
"""Half the width of a loop that lies as a stitch's top."""

_BESIDE = 3.6
"""Stitches begun in one place lean so far apart."""

Hug = tuple[float, float]

COLOURS = {"": "tint", "B": "second"}


@dataclass(frozen=True, slots=True)
class Loop:
    """A loop on the hook. root: where it comes out. made: its turn among all loops, by which it lies above
    earlier ones. hug: of a loop around a stem, the depth of the yarn across it and of the strands beside it.
    """

    root: Point
    made: float
    fill: Fill
    hug: Hug | None = None


@dataclass(frozen=True, slots=True)
class Wrap:
    """Yarn laid over the hook before it goes into a place."""

    fill: Fill


@dataclass(frozen=True, slots=True)
class Lain:
    """A finished loop: from its root to where the next one comes out of it. half: half its width. hug: as in
    Loop.
    """

    root: Point
    tip: Point
    made: float
    fill: Fill
    half: float
    hug: Hug | None = None


@dataclass(frozen=True, slots=True)
class Bar:
    """A yarn over, finished: across the stem."""

    middle: Point
    made: float
    fill: Fill


@dataclass(frozen=True, slots=True)
class Place:
    """A way in. name: as in the moves. hole: where a loop comes out of it. middle: what the hook goes under.

    lean, reach: of the hook, and how far beyond the middle its point comes. hug: as in Loop.
    """

    name: str
    hole: Point
    middle: Point
    lean: float = GOING_IN
    reach: float = 14.5
    hug: Hug | None = None


@dataclass(frozen=True, slots=True)
class State:
    """The work at one moment. on: the loops on the hook, the oldest first. over: the colour of the yarn in
    the hook's throat, "" without. inside: the place that the hook is in. made: the next loop's turn.
    yarn: the colour that one works with. dropped: where the yarn leaves the work that one worked with before.
    ended: how many stitches are finished. begin: where the yarn comes from while nothing is on the hook.
    loose: a loop that the hook was taken out of. cut: whether the yarn is cut off.
    """

    on: tuple[Loop | Wrap, ...]
    lain: tuple[Lain | Bar, ...] = ()
    over: Fill = ""
    inside: Place | None = None
    made: float = FIRST + 1
    yarn: Fill = "tint"
    dropped: Point | None = None
    ended: int = 0
    begin: Point | None = None
    loose: Loop | None = None
    cut: bool = False


@dataclass(frozen=True, slots=True)
class Ground:
    """What a technique is worked on. places: by name. height: of the stitch that is made. steps: from the end
    of one stitch to that of the next, for the first, the second …; the last one serves for all after it.
    """

    places: Mapping[str, Place]
    height: float
    steps: tuple[Point, ...] = ((-STITCH, 0.0),)


def carried_out(state: State, moves: Sequence[str], ground: Ground) -> State:
    """The state after some moves. Raises KeyError for a move or a place that isn't known."""
    for move in moves:
        word, _, what = move.partition(" ")
        state = _MOVES[word](state, what, ground)
    return state


def _over(state: State, colour: str, ground: Ground) -> State:
    """Yarn over. With another colour the one before is dropped where it is."""
    state = _laid_on(state)
    yarn = COLOURS[colour] if colour else state.yarn
    changed = yarn != state.yarn
    last = state.on[-1] if state.on else None
    dropped = last.root if changed and isinstance(last, Loop) else state.dropped
    return replace(state, over=yarn, yarn=yarn, dropped=dropped)


def _laid_on(state: State) -> State:
    """A yarn over that isn't drawn through anything stays on the hook."""
    if not state.over:
        return state
    return replace(state, on=(*state.on, Wrap(state.over)), over="")


def _into(state: State, what: str, ground: Ground) -> State:
    return replace(_laid_on(state), inside=ground.places[what])


def _up(state: State, what: str, ground: Ground) -> State:
    """A loop drawn through the place."""
    place = state.inside
    assert place is not None
    loop = Loop(place.hole, state.made, state.over, place.hug)
    return replace(state, on=(*state.on, loop), over="", inside=None, made=state.made + 1)


def _through(state: State, what: str, ground: Ground) -> State:
    """A loop drawn through the last loops on the hook: they lie down around it."""
    loops = int(what)
    kept, gone = state.on[:-loops], state.on[-loops:]
    roots = [one.root for one in gone if isinstance(one, Loop)]
    wraps = sum(isinstance(one, Wrap) for one in (*kept, *gone))
    end = _next_top(state, ground)
    if kept:
        low = max(y for _, y in roots)
        foot = low - HOLE if low > 0 else low
        x = sum(x for x, _ in roots) / len(roots)
        parts = wraps + 2 - sum(isinstance(one, Wrap) for one in gone)
        rise = min(ground.height, foot - end[1]) / parts
        beside = sum(isinstance(one, Loop) for one in kept) - 1
        lean = (end[0] - x) * min(rise / max(foot - end[1], rise), 1.0)
        neck = (x + lean - _BESIDE * beside, foot - rise)
    else:
        neck = end
    lain: list[Lain | Bar] = []
    for at, one in enumerate(gone):
        if isinstance(one, Wrap):
            lain.append(Bar((neck[0] + 0.4, neck[1] + 3.4), state.made - 0.5, one.fill))
        else:
            half = TOP_HALF if not kept and not at else 1.9
            lain.append(Lain(one.root, neck, one.made, one.fill, half, one.hug))
    return replace(
        state,
        on=(*kept, Loop(neck, state.made, state.over)),
        lain=(*state.lain, *lain),
        over="",
        made=state.made + 1,
        ended=state.ended + (not kept),
    )


def _next_top(state: State, ground: Ground) -> Point:
    """Where the stitch will end."""
    first = next(one for one in state.on if isinstance(one, Loop))
    step = ground.steps[min(state.ended, len(ground.steps) - 1)]
    return (first.root[0] + step[0], first.root[1] + step[1])


def _all(state: State, what: str, ground: Ground) -> State:
    """A loop drawn through the place and the loop on the hook at once."""
    place, (first,) = state.inside, state.on
    assert place is not None
    assert isinstance(first, Loop)
    neck = (place.middle[0] - 0.5, place.middle[1] - 1.2)
    drawn = Lain(place.hole, (neck[0], neck[1] - 0.5), state.made, state.over, 1.6)
    lain = Lain(first.root, neck, first.made, first.fill, TOP_HALF)
    loop = Loop(neck, state.made + 1, state.over)
    return replace(
        state, on=(loop,), lain=(*state.lain, lain, drawn), over="", inside=None, made=state.made + 2
    )


def _chain(state: State, what: str, ground: Ground) -> State:
    """A chain at the foot of the stitch that grows out of it: the last loop lies along the foot."""
    *kept, last = state.on
    assert isinstance(last, Loop)
    neck = (last.root[0] - STITCH, last.root[1])
    lain = Lain(last.root, neck, last.made, last.fill, TOP_HALF)
    loop = Loop(neck, state.made, state.over)
    return replace(state, on=(*kept, loop), lain=(*state.lain, lain), over="", made=state.made + 1)


def _drop(state: State, what: str, ground: Ground) -> State:
    """The hook taken out of its only loop."""
    (loop,) = state.on
    assert isinstance(loop, Loop)
    return replace(state, on=(), loose=loop)


def _catch(state: State, what: str, ground: Ground) -> State:
    """The loose loop drawn through the place that the hook is in."""
    place, loose = state.inside, state.loose
    assert place is not None
    assert loose is not None
    lain = Lain(loose.root, place.hole, state.made, loose.fill, 1.9)
    loop = Loop(place.hole, state.made + 1, loose.fill)
    return replace(state, on=(loop,), lain=(*state.lain, lain), inside=None, loose=None, made=state.made + 2)


def _tie(state: State, what: str, ground: Ground) -> State:
    """The only loop drawn tight to a place: the yarn that it came out of lies closely around it."""
    (loop,) = state.on
    assert isinstance(loop, Loop)
    x, y = ground.places[what].hole
    around = Lain((x + 4.4, y + 2.4), (x - 5.4, y + 1.2), loop.made - 1, loop.fill, 2.6)
    return replace(state, on=(replace(loop, root=(x - 0.6, y)),), lain=(*state.lain, around))


def _cut(state: State, what: str, ground: Ground) -> State:
    return replace(state, cut=True)


def _out(state: State, what: str, ground: Ground) -> State:
    """The yarn's end drawn through the last loop and out: the loop lies tight around it."""
    (loop,) = state.on
    assert isinstance(loop, Loop)
    neck = (loop.root[0] - STITCH / 2, loop.root[1] - 1.0)
    lain = Lain(loop.root, neck, loop.made, loop.fill, 1.9)
    return replace(state, on=(), lain=(*state.lain, lain), over="", begin=neck)


_MOVES: Mapping[str, Callable[[State, str, Ground], State]] = {
    "over": _over,
    "into": _into,
    "up": _up,
    "through": _through,
    "all": _all,
    "chain": _chain,
    "drop": _drop,
    "catch": _catch,
    "tie": _tie,
    "cut": _cut,
    "out": _out,
}
