"""Loops of yarn, which all crochet is made of: each comes out of a place, its root, around something."""

from math import hypot

from .canvas import Point
from .crochet_hook import STEM, Hook
from .sketch import Fill
from .strands import Knot, Strand

YARN = 2.7
"""Width of the yarn, in units."""

HOOK_NEAR = 50.0
"""The hook's depth: loops pass behind it and in front of it."""

LEG = 1.65
"""The two strands of a loop lie so far from its middle."""

BEHIND, BEFORE = HOOK_NEAR - 8, HOOK_NEAR + 8


def lying(
    root: Point, tip: Point, near: float, fill: Fill = "paper", half: float = 2.5,
    upper: float | None = None, lower: float | None = None, hug: tuple[float, float] | None = None,
) -> Strand:  # fmt: skip
    """A loop that lies from its root to where the next one comes out of it. half: half its width.

    upper, lower: the depth of its two strands, where they differ from the rest. hug: of a loop around a stem,
    the depth of the yarn across it and of the strands beside it.
    """
    dx, dy = tip[0] - root[0], tip[1] - root[1]
    long = hypot(dx, dy) or 1.0
    dx, dy = dx / long, dy / long
    up = near if upper is None else upper
    low = near if lower is None else lower

    def at(along: float, aside: float, how: float) -> Knot:
        return Knot(root[0] + dx * along - dy * aside, root[1] + dy * along + dx * aside, how)

    side = 1 if dx < 0 else -1
    if hug is not None:
        return Strand(
            [
                *_hugging(root, hug, 1),
                at(long * 0.6, -2.2, hug[1]),
                at(long * 0.9, -1.6, near),
                at(long + 2.0, 0.0, near),
                at(long * 0.9, 1.6, near),
                at(long * 0.6, 2.2, hug[1]),
                *_hugging(root, hug, -1)[::-1],
            ],
            YARN,
            fill,
            joined=True,
        )
    return Strand(
        [
            at(0.0, 0.0, near),
            at(long * 0.45, half * side, up),
            at(long * 0.85, half * side, up),
            at(long + 2.0, 0.0, near),
            at(long * 0.85, -half * side, low),
            at(long * 0.45, -half * side, low),
            at(0.0, 0.0, near),
        ],
        YARN,
        fill,
        joined=True,
    )


def on_the_hook(
    root: Point,
    hook: Hook,
    along: float,
    near: float,
    fill: Fill = "paper",
    hug: tuple[float, float] | None = None,
) -> Strand:
    """A loop from its root around the hook: its older strand behind it, its newer one before it. It goes over
    the hook's back where its root lies below the hook, else around the other side. hug: as in `lying`.
    """
    middle = hook.at(along)
    side = 1 if root[1] > middle[1] else -1
    older, newer = hook.at(along + LEG, side * (STEM + 1.0)), hook.at(along - LEG, side * (STEM + 1.0))
    begin = _hugging(root, hug, 1) if hug else [Knot(*root, near), *_eased(root, older, LEG, near)]
    end = _hugging(root, hug, -1) if hug else [Knot(*root, near), *_eased(root, newer, -LEG, near)]
    knots = [
        *begin,
        Knot(*older, BEHIND),
        Knot(*hook.at(along + LEG), BEHIND),
        Knot(*hook.at(along + LEG * 0.6, -side * (STEM + 0.7)), BEHIND),
        Knot(*hook.at(along, -side * (STEM + 1.3)), BEFORE),
        Knot(*hook.at(along - LEG * 0.7, -side * (STEM + 0.5)), BEFORE),
        Knot(*hook.at(along - LEG), BEFORE),
        Knot(*newer, BEFORE),
        *reversed(end),
    ]
    return Strand(knots, YARN, fill, joined=True)


def _hugging(root: Point, hug: tuple[float, float], side: int) -> list[Knot]:
    """Half the way across a stem, and up beside it. side: 1 to its right, -1 to its left."""
    x, y = root
    across, beside = hug
    return [
        Knot(x, y + 1.0, across),
        Knot(x + 2.6 * side, y + 0.6, across),
        Knot(x + 4.0 * side, y - 1.6, beside),
        Knot(x + 3.4 * side, y - 6.0, beside),
    ]


def _eased(root: Point, end: Point, aside: float, near: float) -> list[Knot]:
    """A point a third of the way from the root, where the strands have parted."""
    if hypot(end[0] - root[0], end[1] - root[1]) < 7.0:
        return []
    middle = end[0] - aside
    x = root[0] + (middle - root[0]) * 0.4 + aside * 0.85
    return [Knot(x, root[1] + (end[1] - root[1]) * 0.4, near)]


def bar(middle: Point, near: float, fill: Fill = "paper", half: float = 3.0) -> Strand:
    """The yarn over of a tall stitch, where it lies across the stem: from upper right to lower left."""
    x, y = middle
    return Strand(
        [
            Knot(x + 0.8, y - 1.7, near - 3),
            Knot(x + half - 0.3, y - 1.5, near - 3),
            Knot(x + half, y - 0.8, near),
            Knot(x, y + 0.2, near),
            Knot(x - half, y + 1.2, near),
            Knot(x - half + 0.3, y + 1.9, near - 3),
            Knot(x - 0.8, y + 2.1, near - 3),
        ],
        YARN,
        fill,
    )
