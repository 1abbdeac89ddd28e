"""What is done with a needle: a cord drawn through the posts of a round, a part sewn on along its edge."""

from collections.abc import Iterator, Sequence
from math import atan2, cos, sin

from .canvas import Point, number
from .loops import BEFORE, YARN, lying
from .step_fabric import EVERY, FABRIC, finished, stems, tops, x_of
from .step_moves import STITCH
from .step_scene import DEEP
from .strands import Knot, Solid, Strand

CORD = 4.6
"""Width of a cord, in units."""

UNDER = FABRIC - 18

_POSTS = 18.0
_EDGE = -11.0
_LONG = 15.0


def cord_scene(passes: Sequence[str]) -> list[Strand | Solid]:
    """A cord through posts, from right to left. passes: `under` or `over` for each post."""
    way = -_POSTS * 0.5
    begin = x_of(0) + STITCH / 2
    knots = [
        Knot(begin + 2.6, 20.0, BEFORE),
        Knot(begin + 1.6, 0.0, BEFORE),
        Knot(begin + 0.8, way + 1.5, BEFORE),
    ]
    for post, how in enumerate(passes):
        x = x_of(post) - 0.5
        near, rise = (BEFORE, -0.8) if how == "over" else (UNDER, 0.8)
        knots += [Knot(x + aside, way + rise * (1 - abs(aside) / 5), near) for aside in (4.2, 0.0, -4.2)]
    fabric = [*tops(0.0), *stems(1.0, 15.0), *finished(EVERY, _POSTS, 1)]
    end = knots[-1]
    needle = _needle((end.x - 0.5, way), (end.x - 10.0, way - 0.6), BEFORE + 1)
    return [*fabric, Strand(knots, CORD, "tint"), needle]


def seam_scene(passes: Sequence[str]) -> list[Strand | Solid]:
    """A part's edge above a piece, and the yarn that joins them. passes: `piece`, `part`, by turns."""
    knots = [Knot(x_of(0) + 12.0, 20.0, BEFORE), Knot(x_of(0) + 6.0, 8.5, BEFORE)]
    for at, where in enumerate(passes):
        x, edge = x_of(at // 2), _EDGE if where == "part" else 0.0
        lean = (2.4, 1.2, 0.5, -0.2, -1.2) if where == "piece" else (-1.2, -1.6, -2.0, -2.4, -3.0)
        rows = ((5.2, BEFORE), (2.4, DEEP), (0.0, DEEP), (-2.4, DEEP), (-5.2, BEFORE))
        knots += [Knot(x + aside, edge + y, near) for aside, (y, near) in zip(lean, rows, strict=True)]
        if where == "part" and at < len(passes) - 1:
            knots.append(Knot(x - 4.6, edge + 1.0, BEFORE))
    last, before = knots[-1], knots[-2]
    tip = (last.x + (last.x - before.x) * 3, last.y + (last.y - before.y) * 3)
    return [
        *stems(1.0, 15.0),
        *tops(0.0),
        *_part(),
        Strand(knots, YARN - 0.5, "second"),
        _needle((last.x, last.y), tip, BEFORE + 1),
    ]


def _part() -> Iterator[Strand]:
    """The edge of the part that is sewn on, its stitches above."""
    for place in EVERY:
        x = x_of(place)
        yield lying(
            (x - STITCH / 2, _EDGE - 16.0), (x - STITCH / 2, _EDGE - 1.0), FABRIC - 10 + place * 0.5, half=2.0
        )
        yield lying((x + STITCH / 2, _EDGE), (x - STITCH / 2, _EDGE), FABRIC + place * 0.5)


def _needle(eye: Point, towards: Point, near: float) -> Solid:
    """A blunt needle from its eye towards a point."""
    turn = atan2(towards[1] - eye[1], towards[0] - eye[0])

    def at(along: float, aside: float) -> Point:
        return (
            eye[0] + along * cos(turn) - aside * sin(turn),
            eye[1] + along * sin(turn) + aside * cos(turn),
        )

    outline = [
        at(-1.5, 0.0),
        at(-0.5, -1.1),
        at(4.0, -1.1),
        at(_LONG, -0.25),
        at(_LONG, 0.25),
        at(4.0, 1.1),
        at(-0.5, 1.1),
    ]
    hole = [at(0.6, -0.35), at(3.6, -0.35), at(3.6, 0.35), at(0.6, 0.35)]
    ways = (f"M{'L'.join(f'{number(x)} {number(y)}' for x, y in shape)}Z" for shape in (outline, hole))
    return Solid("".join(ways), outline, near)
