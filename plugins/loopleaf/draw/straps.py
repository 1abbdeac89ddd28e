"""Straps and handles: long bands that rise from one end to the other, both sewn to a standing piece."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot, pi, sin

from ..measure import Measured
from .canvas import Canvas, Point
from .colour import outline_of
from .in_rows import draw_rows
from .items import Item
from .stand import Stand, ends_sewn
from .subject import Subject, main_colour, subject_of

LONG = 4.0
"""A band is so many times as long as it is wide, at least."""

HIGHEST = 1.3
"""It rises so many times as high as its piece at most: a longer one would fall to the side."""

EDGEWISE = 0.4
"""A band whose ends are at the sides is seen so narrow: one looks along its width, a little from above."""

STEPS = 48
"""The bend is drawn over so many stretches."""

BEFORE, BEYOND = 9_000, -9_000
"""Layers of a band in front of its piece, and behind it."""


@dataclass(frozen=True, slots=True)
class Bend:
    """The way of a band from end to end, drawn. long, wide: its sizes in mm. lengthwise: its rows go
    along it. flat: how wide it is seen, of its width, where it is turned.
    """

    way: Sequence[Point]
    long: float
    wide: float
    lengthwise: bool
    flat: float

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""
        share, aside = (
            (along, high - self.wide / 2) if self.lengthwise else (high / self.long, (0.5 - along) * width)
        )
        aside *= self.flat
        at = min(max(share, 0.0), 1.0) * (len(self.way) - 1)
        first = min(int(at), len(self.way) - 2)
        (x, y), (next_x, next_y) = self.way[first], self.way[first + 1]
        dx, dy = next_x - x, next_y - y
        step = hypot(dx, dy) or 1.0
        part = at - first
        return (x + dx * part - dy / step * aside, y + dy * part + dx / step * aside)


def draw_straps(
    canvas: Canvas, subject: Subject, stand: Stand, rounds: Sequence[Sequence[Item]], measured: Measured,
    outline: float,
) -> None:  # fmt: skip
    """All straps of a standing piece. outline: the width of their outlines, in mm."""
    if stand.from_above:
        return
    for name, ends in ends_sewn(subject, rounds).items():
        piece = subject.work.piece(name)
        strap = subject_of(subject.work, piece, measured) if piece is not None else None
        if strap is None or not strap.in_rows:
            continue
        wide, tall = max(size.length_mm for size in strap.sizes), strap.sizes[-1].height_mm
        if max(wide, tall) < LONG * min(wide, tall):
            continue
        for number, (one, other) in enumerate(zip(ends[::2], ends[1::2], strict=False)):
            rise, long = HIGHEST * stand.rings[-1].high1, max(wide, tall)
            way = bent(_foot(stand, one), _foot(stand, other), long, rise)
            near = [stand.facing(stand.rings[at], along) for at, along in (one, other)]
            flat = max(sum(map(abs, near)) / 2, EDGEWISE)
            own = Canvas()
            draw_rows(own, strap, Bend(way, long, min(wide, tall), wide > tall, flat))
            layer = BEFORE if sum(near) > -0.1 else BEYOND
            canvas.lay(own, layer + 500 * number, outline_of(main_colour(strap)), outline)


def _foot(stand: Stand, end: tuple[int, float]) -> Point:
    at, along = end
    ring = stand.rings[at]
    return stand.point((ring.out0 + ring.out1) / 2, (ring.high0 + ring.high1) / 2, along)


def bent(start: Point, end: Point, long: float, highest: float) -> list[Point]:
    """The way of a band so long that rises from one end and comes down to the other, no higher than that."""
    low, high = 0.0, highest
    for _ in range(30):
        rise = (low + high) / 2
        way = _arch(start, end, rise)
        low, high = (rise, high) if sum(map(_length, pairwise(way))) < long else (low, rise)
    return _arch(start, end, low)


def _arch(start: Point, end: Point, rise: float) -> list[Point]:
    """From one end to the other, so much higher in the middle; steep at both ends."""
    found = []
    for step in range(STEPS + 1):
        share = step / STEPS
        across = share - sin(2 * pi * share) / (2 * pi) * 0.6
        x, y = (a + (b - a) * across for a, b in zip(start, end, strict=True))
        found.append((x, y + rise * sin(pi * share) ** 0.8))
    return found


def _length(pair: tuple[Point, Point]) -> float:
    (x, y), (other, also) = pair
    return hypot(other - x, also - y)
