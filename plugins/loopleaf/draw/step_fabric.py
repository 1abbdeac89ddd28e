"""The fabric in step drawings: rows of tops seen a little from above, stems, finished stitches."""

from collections.abc import Iterable, Iterator

from .canvas import Point
from .loops import BEFORE, HOOK_NEAR, bar, lying
from .sketch import Fill
from .step_moves import HOLE, STITCH, Place
from .strands import Strand

LAST = 12.0
"""x of the stitch that the last finished one stands on; the next ones lie to its left."""

FABRIC = 20.0
"""Its depth; later stitches lie a little nearer."""

COVERING = BEFORE + 4
"""The depth of what covers the hook and all that is on it."""

EVERY = range(-2, 6)
"""Stitches of the row below that show: 0 is the one with the last finished stitch on it, 1 the next."""


def x_of(number: int) -> float:
    """X of a stitch of the row below."""
    return LAST - number * STITCH


def tops(at: float, inside: Place | None = None, numbers: Iterable[int] = EVERY) -> Iterator[Strand]:
    """The tops of a row. inside: where the hook is: it goes under that top, and what lies to the left of it
    covers the hook, whose head is behind the work.
    """
    way_in = None
    if inside is not None and abs(inside.middle[1] - at) < 3.0:
        way_in = round((LAST - inside.middle[0]) / STITCH)
    for number in numbers:
        x = x_of(number)
        yield _top((x + STITCH / 2, at), (x - STITCH / 2, at), number, way_in, inside)


def _top(root: Point, tip: Point, number: int, way_in: int | None, inside: Place | None) -> Strand:
    near = FABRIC + number * 0.5
    if way_in is not None and inside is not None and inside.name == "front loops":
        both = number in (way_in - 1, way_in)
        return lying(root, tip, near, lower=HOOK_NEAR + 2 if both else None)
    if way_in is None or inside is None or number < way_in:
        return lying(root, tip, near)
    if number > way_in:
        return lying(root, tip, COVERING + number * 0.5)
    over = HOOK_NEAR + 2
    if inside.name == "front loop":
        return lying(root, tip, near, lower=over)
    if inside.name == "back loop":
        return lying(root, tip, near, upper=over)
    return lying(root, tip, over)


def stems(
    top: float, foot: float, numbers: Iterable[int] = EVERY, covering: int | None = None
) -> Iterator[Strand]:
    """The stems of the row below, which hang from its tops. covering: from that stitch on they cover the
    hook, whose head is behind the work.
    """
    for number in numbers:
        x = x_of(number) - STITCH / 2
        near = FABRIC - 10 if covering is None or number < covering else COVERING - 3
        yield lying((x, foot), (x, top), near + number * 0.5, half=2.0)


def tall_stems(foot: float, around: int, near: float | None, others_cover: bool) -> Iterator[Strand]:
    """Tall stems, their tops at 0. around: the one that the hook goes around; near: its depth.
    others_cover: the hook is behind the other ones.
    """
    for number in EVERY:
        x = x_of(number) - STITCH / 2
        low = high = COVERING if others_cover else FABRIC - 10
        if number == around:
            low = high = FABRIC - 10 if near is None else near
        elif number < around:  # the hook passes these further down
            high = FABRIC - 10
        middle = foot * 0.48
        yield lying((x, foot), (x, middle), low, half=1.9)
        yield lying((x, middle), (x, 1.0), high + 0.2, half=1.9)
        yield bar((x + 0.3, middle + 2.8), low + 0.1)


def finished(
    numbers: Iterable[int], height: float, overs: int, inside: Place | None = None, fill: Fill = "paper",
    chained: int = 0,
) -> Iterator[Strand]:  # fmt: skip
    """Finished stitches, each on its stitch of the row below, with their tops. overs: how many yarns over lie
    across their stems; chained: how many parts of a stem are like a chain, at its foot.
    """
    way_in = None
    if inside is not None and abs(inside.middle[1] + height) < 1.0:
        way_in = round((LAST + STITCH / 2 - 1.0 - inside.middle[0]) / STITCH)
    for number in numbers:
        x = x_of(number)
        near = FABRIC + 4 + number * 0.2
        necks: list[Point] = [(x, HOLE)]
        levels = overs + 1 + chained
        under_bar = inside is not None and inside.name == "bar" and number == 0
        necks += [(x - 0.5 * level / levels, -level * height / levels) for level in range(1, levels)]
        necks.append((x - 1.0, -height))
        for at in range(levels):
            yield lying(necks[at], necks[at + 1], near + at * 0.04, fill, 1.9)
            if at > chained:
                across = HOOK_NEAR + 2 if under_bar else near + at * 0.04 - 0.02
                yield bar((necks[at][0] + 0.3, necks[at][1] + 3.2), across, fill)
        top = _top((x + STITCH - 1.0, -height), (x - 1.0, -height), number, way_in, inside)
        knots = [knot._replace(near=knot.near + 6) if knot.near < HOOK_NEAR else knot for knot in top.knots]
        yield Strand(knots, top.width, fill, True)
