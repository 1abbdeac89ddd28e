"""What goes on from some stitches of a round as rows of its own, in the picture: a sock's heel, the flaps of
a hat.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from ..measure import Measured
from .begun_on import begun_on
from .canvas import Canvas, Point
from .flat import draw_on
from .items import Item
from .profile import Ring
from .stand import Stand
from .subject import Subject

NARROWEST = 0.2
"""Rows that draw in over the end of a piece come no nearer to its middle line than such a share of it."""


@dataclass(frozen=True, slots=True)
class OnRound:
    """The upper edge of a round, and what goes on from it. ring: the round's own; on: the direction that rows
    go on in, as a round would. along: the middle of what begins there, as a share of the way. long: the
    way, in mm, as its stitches make it.
    """

    stand: Stand
    ring: Ring
    on: Ring
    along: float
    long: float

    def point(self, x: float, y: float) -> Point:
        """Where it comes to lie in the drawing."""
        out, high = self._level(y)
        return self.stand.point(out, high, self._at(x, out))

    def light(self, x: float, y: float) -> float:
        """Light on it, from the outside or the inside."""
        along = self._at(x, self._level(y)[0])
        if self.is_near(x, y):
            return self.stand.light(self.on, along)
        return self.stand.light_inside(self.on)

    def is_near(self, x: float, y: float) -> bool:
        """Whether it is seen from the outside."""
        return self.stand.facing(self.on, self._at(x, self._level(y)[0])) >= 0

    def _level(self, y: float) -> tuple[float, float]:
        """How far out and how high it is there."""
        share = y / (self.on.rise or 1.0)
        out = self.ring.out1 + (self.on.out1 - self.on.out0) * share
        return (
            max(out, NARROWEST * self.ring.out1),
            self.ring.high1 + (self.on.high1 - self.on.high0) * share,
        )

    def _at(self, x: float, out: float) -> float:
        """Where on the way around. Rounds go on to the left, as the right side shows them."""
        section, below = self.stand.section, self.ring.out1
        eased = section.way(below) / (self.long or 1.0)
        return section.carried(self.along, below, out) - x * eased / (section.way(out) or 1.0)


def draw_flaps(
    canvas: Canvas, subject: Subject, stand: Stand, rounds: Sequence[Sequence[Item]], measured: Measured,
    shown: set[str],
) -> None:  # fmt: skip
    """The pieces in rows that begin on stitches of a piece in rounds. shown: their names are added."""
    for begun in begun_on(subject, rounds, measured, around=True):
        if begun.part.piece.name not in shown:
            ring, long = stand.rings[begun.at], subject.sizes[begun.at].length_mm
            surface = OnRound(stand, ring, _on(stand, begun.at), begun.along, long)
            draw_on(canvas, begun.part, surface, measured, shown)


def _on(stand: Stand, at: int) -> Ring:
    """The direction that rows go on in above a round: straight on from the last one; they stand out from one
    within, halfway between upwards and outwards.
    """
    ring = stand.rings[at]
    if at == len(stand.rings) - 1 or stand.from_above:
        return ring
    aside = sqrt(0.5)
    return Ring(ring.out1, ring.high1, ring.out1 + aside, ring.high1 + aside)
