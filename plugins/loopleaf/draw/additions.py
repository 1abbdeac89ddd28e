"""What the finishing adds to a piece in the round: parts sewn on and cords threaded through."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import cos

from ..fabric import Made, Space
from ..measure import Measured
from ..pattern import Sew, Thread
from .canvas import Canvas, Point
from .colour import UNDYED, shaded
from .in_the_round import draw_rounds
from .items import Item
from .profile import Ring
from .section import Oval
from .stand import Stand, lies, lying_flat, middle_of
from .subject import Subject, main_colour, subject_of

CORD_MM = 4.0
"""A chain cord in a medium yarn is about so thick."""

_SEWN = 5000
_CORDS = 8000


def draw_additions(
    canvas: Canvas, subject: Subject, stand: Stand, rounds: Sequence[Sequence[Item]], measured: Measured
) -> None:
    """Sewn parts at their stitches, then cords over the posts that they pass and hanging from their sides.

    A piece that is seen from above is drawn without its cords, which gather it as it stands.
    """
    parts = _parts(subject, measured)
    for step in subject.work.pattern.finishing:
        if step.sew is not None and step.sew.to == subject.piece.name and step.sew.piece in parts:
            _sew_on(canvas, stand, rounds, subject, parts[step.sew.piece], step.sew)
        cord = step.thread if not stand.from_above else None
        if cord is not None and cord.through == subject.piece.name:
            _thread(canvas, stand, rounds, subject, cord)


def _parts(onto: Subject, measured: Measured) -> Mapping[str, Subject]:
    """The round pieces sewn onto this one that lie flat on it; filled and standing ones aren't drawn yet."""
    found: dict[str, Subject] = {}
    for step in onto.work.pattern.finishing:
        if step.sew is not None and step.sew.to == onto.piece.name:
            piece = onto.work.piece(step.sew.piece)
            part = subject_of(onto.work, piece, measured) if piece is not None else None
            if part is not None and not part.in_rows and not part.stuffed and lies(part):
                found[step.sew.piece] = part
    return found


def _round_at(subject: Subject, number: int | None) -> int | None:
    return next((at for at, r in enumerate(subject.piece.rounds) if r.plan.number == number), None)


def _sew_on(
    canvas: Canvas,
    stand: Stand,
    rounds: Sequence[Sequence[Item]],
    subject: Subject,
    part: Subject,
    sew: Sew,
) -> None:
    place = middle_of(subject, rounds, sew)
    if place is None:
        return
    at, along = place
    ring = stand.rings[at]
    far = (ring.out0 + ring.out1) / 2 if stand.from_above else ring.out1
    x, y = stand.point(far, (ring.high0 + ring.high1) / 2, along)
    lies, items = lying_flat(part)
    out, flattened = lies.rings[-1].out1 + 0.5, 1.0 if stand.from_above else cos(stand.slant)
    shadow = [
        (x + 0.6 + p[0], y - 0.9 + p[1] * flattened) for p in (Oval().at(out, i / 32) for i in range(32))
    ]
    canvas.fill(_SEWN - 1, shaded(main_colour(subject), 0.4), shadow)
    own = Canvas()
    draw_rounds(own, lies, part, items)
    canvas.paste(own, _SEWN, x, y, flattened)


def _thread(
    canvas: Canvas, stand: Stand, rounds: Sequence[Sequence[Item]], subject: Subject, thread: Thread
) -> None:
    at = _round_at(subject, thread.round if thread.round is not None else thread.row)
    if at is None:
        return
    ring = stand.rings[at]
    cord = subject.work.pattern.pieces.get(thread.piece)
    colour = subject.colours.get(cord.yarn if cord is not None else "", UNDYED)
    high = (ring.high0 + ring.high1) / 2
    posts = [item for item in rounds[at] if isinstance(item.thing, Made)]
    reach = 0.95 if any(isinstance(item.thing, Space) for item in rounds[at]) else 0.5
    for place, item in enumerate(posts):
        if place % (thread.under + thread.over) < thread.under or stand.facing(ring, item.middle) < 0.05:
            continue
        half = (item.end - item.start) * reach * 1.5
        points = [stand.point(ring.out1 + 1.0, high, item.middle + half * (i / 4 - 0.5)) for i in range(5)]
        _cord(canvas, _CORDS + 100, colour, points)
    for side in (-1, 1):
        _ends(canvas, stand, ring, high, side, colour)


def _ends(canvas: Canvas, stand: Stand, ring: Ring, high: float, side: int, colour: str) -> None:
    """Both ends of a cord, hanging at one side and knotted."""
    x, y = max((stand.point(ring.out1, high, i / 60) for i in range(60)), key=lambda p: side * p[0])
    drop = max(high * 0.55, 20.0)
    for bend in (3.0, 9.0):
        points: list[Point] = [
            (x - side * 1.0, y),
            (x + side * (bend + 2), y - drop * 0.12),
            (x + side * (bend + 3), y - drop * 0.45),
            (x + side * 6.0, y - drop * 0.8),
        ]
        _cord(canvas, _CORDS, colour, _smooth(points))
    knot = (x + side * 6.0, y - drop * 0.8)
    canvas.line(_CORDS + 200, shaded(colour, 0.55), CORD_MM * 2.0, [knot, (knot[0], knot[1] - 0.5)])
    canvas.line(_CORDS + 201, shaded(colour, 0.95), CORD_MM * 1.5, [knot, (knot[0], knot[1] - 0.5)])
    for spread in (-2.5, 2.5):
        tail = [
            knot,
            (knot[0] + spread, knot[1] - drop * 0.12),
            (knot[0] + spread * 1.4, knot[1] - drop * 0.2),
        ]
        _cord(canvas, _CORDS, colour, tail)


def _cord(canvas: Canvas, layer: int, colour: str, points: list[Point]) -> None:
    canvas.line(layer, shaded(colour, 0.5), CORD_MM * 1.25, points)
    canvas.line(layer + 1, shaded(colour, 1.06), CORD_MM * 0.85, points)


def _smooth(points: list[Point]) -> list[Point]:
    """The same way in softer bends (corner cutting, twice)."""
    for _ in range(2):
        cut: list[Point] = [points[0]]
        for (ax, ay), (bx, by) in pairwise(points):
            cut += [
                (ax * 0.75 + bx * 0.25, ay * 0.75 + by * 0.25),
                (ax * 0.25 + bx * 0.75, ay * 0.25 + by * 0.75),
            ]
        points = [*cut, points[-1]]
    return points
