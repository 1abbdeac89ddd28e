"""What the finishing adds to a piece: parts sewn on and cords threaded through."""

from collections.abc import Mapping
from itertools import pairwise
from math import cos, pi
from typing import TYPE_CHECKING

from ..fabric import Made, Space
from .canvas import Canvas, Point
from .colour import UNDYED, shaded
from .in_the_round import Stand, draw_rounds
from .items import items_of
from .profile import lying
from .section import Oval

if TYPE_CHECKING:
    from .picture import Subject

CORD_MM = 4.0
"""A chain cord in a medium yarn is about so thick."""


def draw_additions(canvas: Canvas, subject: "Subject", stand: Stand, discs: Mapping[str, "Subject"]) -> None:
    """Sewn parts at their stitches, then cords over the posts that they pass and hanging from where they
    begin.
    """
    if stand.slant >= pi / 2:
        return
    for step in subject.work.pattern.finishing:
        if step.sew is not None and step.sew.to == subject.piece.name and step.sew.piece in discs:
            number = step.sew.round if step.sew.round is not None else step.sew.row
            run = step.sew.stitches[0] if step.sew.stitches else None
            if number is not None and run is not None:
                _sew_on(
                    canvas, subject, stand, discs[step.sew.piece], number, (run.first, run.last or run.first)
                )
        if step.thread is not None and step.thread.through == subject.piece.name:
            number = step.thread.round if step.thread.round is not None else step.thread.row
            if number is not None:
                _thread(
                    canvas, subject, stand, number, step.thread.under, step.thread.over, step.thread.piece
                )


def _at_round(subject: "Subject", number: int) -> int | None:
    return next((at for at, r in enumerate(subject.piece.rounds) if r.plan.number == number), None)


def _sew_on(
    canvas: Canvas, subject: "Subject", stand: Stand, part: "Subject", number: int, run: tuple[int, int]
) -> None:
    at = _at_round(subject, number)
    if at is None or at >= len(stand.rings) or not subject.worked[at].count:
        return
    ring = stand.rings[at]
    along = ((run[0] + run[1]) / 2 - 0.5) / subject.worked[at].count
    x, y = stand.point(ring.out1, (ring.high0 + ring.high1) / 2, along)
    flat = Stand(Oval(), lying(part.sizes, 0.0), pi / 2)
    own = Canvas()
    draw_rounds(own, flat, part.worked, part.scale, part.colours)
    canvas.paste(own, 5000, x, y, 1.0, cos(stand.slant))


def _thread(
    canvas: Canvas, subject: "Subject", stand: Stand, number: int, under: int, over: int, cord: str
) -> None:
    at = _at_round(subject, number)
    if at is None or at >= len(stand.rings):
        return
    ring = stand.rings[at]
    yarn = subject.work.pattern.pieces[cord].yarn if cord in subject.work.pattern.pieces else ""
    colour = subject.colours.get(yarn, UNDYED)
    posts = [m for m in subject.worked[at].made if isinstance(m, Made) and m.number]
    gaps = any(isinstance(m, Space) for m in subject.worked[at].made)
    items = [item for item in items_of(subject.worked[at], subject.scale) if item.form == "stitch"]
    high = (ring.high0 + ring.high1) / 2
    for place, item in enumerate(items[: len(posts)]):
        middle = (item.start + item.end) / 2
        if place % (under + over) < under or stand.facing(ring, middle) < 0.05:
            continue
        reach = (item.end - item.start) * (0.95 if gaps else 0.5)
        points = [stand.point(ring.out1 + 1.0, high, middle + reach * (i / 4 - 0.5) * 1.5) for i in range(5)]
        _cord(canvas, 5200, colour, points)
    for side in (-1, 1):
        _ends(canvas, stand, ring.out1, high, side, colour)


def _ends(canvas: Canvas, stand: Stand, out: float, high: float, side: int, colour: str) -> None:
    """Both ends of a cord, hanging at one side and knotted."""
    edge = max((stand.point(out, high, i / 60) for i in range(60)), key=lambda p: side * p[0])
    x, y = edge
    drop = max(high * 0.55, 20.0)
    for bend in (3.0, 9.0):
        points: list[Point] = [
            (x - side * 1.0, y),
            (x + side * (bend + 2), y - drop * 0.12),
            (x + side * (bend + 3), y - drop * 0.45),
            (x + side * 6.0, y - drop * 0.8),
        ]
        _cord(canvas, 5100, colour, _smooth(points))
    knot = (x + side * 6.0, y - drop * 0.8)
    canvas.line(5300, shaded(colour, 0.55), CORD_MM * 2.0, [knot, (knot[0], knot[1] - 0.5)])
    canvas.line(5301, shaded(colour, 0.95), CORD_MM * 1.5, [knot, (knot[0], knot[1] - 0.5)])
    for spread in (-2.5, 2.5):
        tail = [
            knot,
            (knot[0] + spread, knot[1] - drop * 0.12),
            (knot[0] + spread * 1.4, knot[1] - drop * 0.2),
        ]
        _cord(canvas, 5100, colour, tail)


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
