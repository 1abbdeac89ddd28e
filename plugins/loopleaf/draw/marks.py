"""What is put on a piece or embroidered on it: eyes, a nose, buttons."""

from collections.abc import Iterator, Sequence
from math import cos, sin, tau

from ..fabric import Made
from ..pattern import Mark
from .canvas import Canvas, Point
from .in_the_round import hull
from .items import Item
from .stand import Stand
from .subject import Subject

UNSAID = "#2b2b2b"
"""A mark whose colour isn't told is drawn as in black thread."""

ABOVE = 3_900
"""The layer of marks: above all rounds of their piece, below the pieces that lie over it."""

STEPS = 24
"""Points around a mark."""


def draw_marks(canvas: Canvas, stand: Stand, subject: Subject, rounds: Sequence[Sequence[Item]]) -> None:
    """All marks of a piece that are turned to the viewer, each where its stitches are."""
    for step in subject.work.pattern.finishing:
        if step.mark is not None and step.mark.to == subject.piece.name:
            for shape in _shapes(stand, subject, rounds, step.mark):
                canvas.fill(ABOVE, step.mark.colour or UNSAID, shape)


def _shapes(
    stand: Stand, subject: Subject, rounds: Sequence[Sequence[Item]], mark: Mark
) -> Iterator[Sequence[Point]]:
    number = mark.number
    at = next((i for i, one in enumerate(subject.piece.rounds) if one.plan.number == number), None)
    if at is None:
        return
    if not mark.stitches:
        yield from _all_over(stand, at)
    for run in mark.stitches:
        over = [item for item in rounds[at] if isinstance(item.thing, Made) and item.thing.number in run]
        if over:
            wide = mark.across.mm if mark.across is not None else len(over) * subject.scale.width_mm
            start, end = min(item.start for item in over), max(item.end for item in over)
            yield from _spot(stand, at, (start + end) / 2, 1.0 if mark.between else 0.5, wide)


def _spot(stand: Stand, at: int, along: float, up: float, wide: float) -> Iterator[Sequence[Point]]:
    """A round spot on the fabric, so far along and up a round, `wide` mm across."""
    ring = stand.rings[at]
    if stand.facing(ring, along) <= 0:
        return
    out, high, rise = ring.out1 - ring.out0, ring.high1 - ring.high0, ring.rise or 1.0
    way = stand.section.way(ring.out0 + out * up) or 1.0
    shape = []
    for step in range(STEPS):
        aside, share = wide / 2 * cos(tau * step / STEPS), up + wide / 2 * sin(tau * step / STEPS) / rise
        shape.append(stand.point(ring.out0 + out * share, ring.high0 + high * share, along + aside / way))
    yield shape


def _all_over(stand: Stand, at: int) -> Iterator[Sequence[Point]]:
    """All that lies within a round, as the tip of a nose."""
    ring = stand.rings[at]
    turns = [step / STEPS for step in range(STEPS)]
    if sum(stand.facing(ring, along) for along in turns) > 0:
        yield hull([stand.point(ring.out1, ring.high1, along) for along in turns])
