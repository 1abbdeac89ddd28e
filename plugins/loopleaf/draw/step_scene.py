"""A moment of the work as strands: the stitch being made, the hook, what is on it, the yarn to the ball."""

from collections.abc import Iterator, Sequence

from .canvas import Point
from .crochet_hook import STEM, Hook
from .loops import BEFORE, HOOK_NEAR, YARN, bar, lying, on_the_hook
from .sketch import Fill
from .step_fabric import COVERING, FABRIC
from .step_moves import STITCH, TOP_HALF, Bar, Hug, Lain, Loop, Place, State
from .strands import Knot, Solid, Strand

LEFT, RIGHT = -33.0, 34.0
"""Where the drawing ends."""

THROAT = 8.2
"""Where yarn lies in the hook's throat, from its point."""

NEAREST, APART = 13.0, 5.2
"""Loops on the hook: the last one so far from its point, the others so far from each other."""

RESTING = 0.13
"""How the hook leans above the work, in radians."""

DEEP = 6.0
"""The depth of yarn behind the work."""

_LONG = 70.0


def hook_for(state: State) -> Hook:
    """Where the hook is: in a place, or above the loops that it holds."""
    place = state.inside
    if place is not None:
        dx, dy = Hook((0.0, 0.0), place.lean).at(place.reach)
        return Hook((place.middle[0] - dx, place.middle[1] - dy), place.lean, _LONG)
    roots = [one.root for one in state.on if isinstance(one, Loop)]
    dx, dy = Hook((0.0, 0.0), RESTING).at(NEAREST)
    return Hook((roots[-1][0] - dx - 0.3, min(y for _, y in roots) - 7.8), RESTING, _LONG)


def places_on(state: State, hook: Hook) -> list[float]:
    """Where each loop lies on the hook, from its point; the oldest first."""
    count = len(state.on)
    if state.inside is None:
        return [NEAREST + APART * at for at in reversed(range(count))]
    nearest = state.inside.reach + 7.0
    first = state.on[0] if state.on else None
    oldest = nearest + APART * (count - 1)
    if isinstance(first, Loop):
        oldest = max(oldest, hook.along(first.root[0] - 2.0))
    step = (oldest - nearest) / (count - 1) if count > 1 else 0.0
    return [oldest - step * at for at in range(count)]


def scene(state: State, fabric: Sequence[Strand | Solid]) -> list[Strand | Solid]:
    """Everything in the drawing of one moment."""
    if state.cut and not state.on and state.begin is not None:
        return [*fabric, *_finished(state), _end(state.begin, state.yarn)]
    hook = hook_for(state)
    return [
        *fabric,
        *_finished(state),
        *_dropped(state),
        *_loose(state),
        _to_the_ball(state, hook),
        *_on_hook(state, hook),
        hook.solid(HOOK_NEAR),
    ]


def _end(neck: Point, fill: Fill) -> Strand:
    """The end of the yarn, out of the last loop."""
    x, y = neck
    near = FABRIC + 24
    return Strand(
        [Knot(x + 1.0, y, DEEP), Knot(x - 1.2, y - 2.4, near), Knot(x - 7.0, y - 2.0, near),
         Knot(x - 12.0, y + 2.5, near)],
        YARN, fill,
    )  # fmt: skip


def _finished(state: State) -> Iterator[Strand]:
    behind = next((one for one in state.lain if isinstance(one, Lain) and _from_behind(one.hug)), None)
    for one in state.lain:
        near = _over_the_hook(state, one) or _near(one.made)
        if behind is not None and behind.hug is not None and one.made >= behind.made:
            near = behind.hug[1] + (one.made - behind.made) * 0.3
        if isinstance(one, Bar):
            yield bar(one.middle, near, one.fill)
        else:
            yield lying(one.root, one.tip, near, one.fill, one.half, hug=one.hug)


def _from_behind(hug: Hug | None) -> bool:
    """Whether a loop around a stem passes before it: such a stitch stands behind the work."""
    return hug is not None and hug[0] > hug[1]


def _over_the_hook(state: State, one: Lain | Bar) -> float | None:
    """The depth of a finished stitch's top that the hook is under, or whose hind side its head passes."""
    place = state.inside
    if place is None:
        return None
    if state.loose is None and _crossing(state, place) and (isinstance(one, Bar) or one.half < TOP_HALF):
        return COVERING + one.made * 0.1
    if state.loose is None or isinstance(one, Bar) or one.half < TOP_HALF:
        return None
    middle = (one.root[0] + one.tip[0]) / 2
    if middle > place.middle[0] + 1.0:
        return None
    return HOOK_NEAR + 2 if middle > place.middle[0] - 1.0 else COVERING + one.made * 0.1


def _crossing(state: State, place: Place) -> bool:
    """Whether a finished stitch stands further on than the place that the hook is in: its head is behind."""
    return any(
        isinstance(one, Lain) and one.root[1] > 0 and one.root[0] < place.middle[0] - STITCH / 2
        for one in state.lain
    )


def _loose(state: State) -> Iterator[Strand]:
    """A loop that waits for the hook, held open."""
    if state.loose is not None:
        x, y = state.loose.root
        near = HOOK_NEAR - 4
        yield Strand(
            [
                Knot(x, y + 1.0, near),
                Knot(x + 2.4, y - 3.5, near),
                Knot(x + 1.6, y - 7.0, near),
                Knot(x - 1.2, y - 7.4, near),
                Knot(x - 2.8, y - 4.0, near),
                Knot(x, y + 1.0, near),
            ],
            YARN,
            state.loose.fill,
            joined=True,
        )


def _near(made: float) -> float:
    """The depth of a loop by its turn: in front of the fabric, behind the hook."""
    return FABRIC + 2 + made * 0.3


def _on_hook(state: State, hook: Hook) -> Iterator[Strand]:
    """Every loop on the hook; a yarn over with the yarn that leads to it and on."""
    before: Loop | None = None
    for at, (one, along) in enumerate(zip(state.on, places_on(state, hook), strict=True)):
        if isinstance(one, Loop):
            yield on_the_hook(one.root, hook, along, _near(one.made), one.fill, one.hug)
            before = one
            continue
        root = before.root if before is not None else hook.at(along + 6.0, 6.0)
        leads = isinstance(state.on[at - 1], Loop)
        come = [Knot(root[0] - 0.6, root[1] + 0.8, DEEP), Knot(root[0] - 1.0, root[1] - 0.5, DEEP)]
        ahead = state.on[at + 1] if at + 1 < len(state.on) else None
        on = (
            [Knot(ahead.root[0] + 0.8, -2.0, DEEP), Knot(*ahead.root, DEEP)]
            if isinstance(ahead, Loop)
            else []
        )
        around = _around(hook, along, root[1] > hook.at(along)[1])
        yield Strand([*(come if leads else []), *around, *on], YARN, one.fill)


def _around(hook: Hook, along: float, below: bool) -> list[Knot]:
    """Yarn over the hook from the back to the front, and under it to the back again.

    below: it comes from below, so that it goes up behind the hook first.
    """
    rise = [Knot(*hook.at(along + 1.9, STEM + 0.8), DEEP), Knot(*hook.at(along + 1.3, -0.4), DEEP)]
    return [
        *(rise if below else []),
        Knot(*hook.at(along + 0.8, -STEM - 0.9), DEEP),
        Knot(*hook.at(along, -STEM - 1.0), BEFORE),
        Knot(*hook.at(along - 0.9, 0.0), BEFORE),
        Knot(*hook.at(along - 1.5, STEM + 0.5), BEFORE),
        Knot(*hook.at(along - 2.2, STEM + 0.9), DEEP),
    ]


def _to_the_ball(state: State, hook: Hook) -> Strand:
    """The working yarn: from the last loop behind the work, over the hook if it lies there, to the left."""
    start, below = _leaving(state, hook)
    fill = state.over or state.yarn
    if not state.over:
        x, y = start[-1][:2]
        near = start[-1].near
        away = [
            Knot(x - 5.0, y - 5.0, near),
            Knot((x + LEFT) / 2 - 2, y - 9.5, DEEP),
            Knot(LEFT - 4, y - 11.0, DEEP),
        ]
        if state.cut:
            away = [
                Knot(x - 5.0, y - 3.0, near),
                Knot(x - 11.0, y - 1.5, DEEP),
                Knot(x - 16.0, y + 3.0, DEEP),
            ]
        return Strand([*start, *away], YARN, fill)
    caught = _around(hook, THROAT, below)[:-1]
    x, y = caught[-1][:2]
    if state.inside is None:
        away = [Knot(x - 4.0, y + 1.6), Knot((x + LEFT) / 2 - 2, y + 0.5), Knot(LEFT - 4, y - 3.5)]
        if state.cut:
            away = [Knot(x - 4.0, y + 1.6), Knot(x - 8.0, y + 3.0), Knot(x - 12.0, y + 6.5)]
    else:
        away = [Knot(x - 3.5, y + 0.2), Knot((x + LEFT) / 2 - 2, y - 4.0), Knot(LEFT - 4, y - 9.0)]
    return Strand([*start, *caught, *(knot._replace(near=BEFORE) for knot in away)], YARN, fill)


def _leaving(state: State, hook: Hook) -> tuple[list[Knot], bool]:
    """Where the working yarn leaves the work, and whether that is below the hook's throat."""
    last = state.on[-1] if state.on else state.loose
    if (
        state.dropped is not None
        and state.over == state.yarn
        and isinstance(last, Loop)
        and last.fill != state.yarn
    ):
        x, y = state.dropped  # a new yarn: its end hangs behind
        return [
            Knot(x + 6.0, 17.0, DEEP - 1),
            Knot(x + 3.5, 6.0, DEEP - 1),
            Knot(x + 0.5, y - 8.0, DEEP - 1),
        ], True
    if isinstance(last, Loop):
        x, y = last.root
        return [Knot(x - 0.4, y + 1.0, DEEP), Knot(x - 1.4, y - 0.4, DEEP)], y > hook.at(THROAT)[1]
    if last is None:
        x, y = state.begin or hook.at(THROAT)
        ahead = hook.at(THROAT + 5.0, -STEM - 3.0)
        up = [Knot(x, y, DEEP), Knot(x - 0.1, y - 3.0, DEEP), Knot(x - 2.0, y - 5.2, DEEP)]
        return [*up, Knot(*ahead, DEEP)], False
    along = places_on(state, hook)[-1]
    return [Knot(*hook.at(along - 1.5, STEM + 0.5), BEFORE), Knot(*hook.at(along - 3.0, 0.0), DEEP)], True


def _dropped(state: State) -> Iterator[Strand]:
    """The yarn that one worked with before, hanging behind the work."""
    if state.dropped is not None:
        x, y = state.dropped
        yield Strand(
            [Knot(x - 0.4, y + 1.0, DEEP), Knot(x - 4.0, y + 5.0, DEEP), Knot(x - 6.0, 30.0, DEEP)],
            YARN,
            "tint",
        )


def reach(things: Sequence[Strand | Solid]) -> tuple[float, float]:
    """The highest and the lowest point of some strands."""
    points: list[Point] = [
        (knot.x, knot.y) for thing in things if isinstance(thing, Strand) for knot in thing.knots
    ]
    return min(y for _, y in points), max(y for _, y in points)
