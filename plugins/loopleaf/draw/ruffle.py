"""Rows far too full for the cloth below them: they spread as far as they can, and stand in folds."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, pi, sin, tau

from ..measure.size import RoundSize
from .canvas import Point
from .sheet import Sheet
from .subject import Subject

FULL, TOO_WIDE = 1.6, 4.0
"""A row is gathered that is so many times as long as the one below it, and wider by so much of its height."""

SPREADS = 1.0
"""At either end a gathered row spreads by so much of its height."""

FOLD_WIDE, FOLD_DEEP, FOLD_ASIDE = 1.6, 0.16, 0.12
"""A fold is about so wide, its edge dips and swings aside by so much, of the height of what is gathered."""


@dataclass(frozen=True, slots=True)
class Ruffle:
    """A straight sheet in folds from a height on. begins, deep: that height, and how far the folds reach
    above it, in mm. folds: how many lie side by side.
    """

    sheet: Sheet
    begins: float
    deep: float
    folds: int

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""
        x, y = self.sheet.point(width, along, high)
        share = min(max((high - self.begins) / self.deep, 0.0), 1.0)
        turn = tau * self.folds * along
        return (
            x + sin(turn) * FOLD_ASIDE * self.deep * share,
            y - (1 + cos(turn + pi)) / 2 * FOLD_DEEP * self.deep * share,
        )


def ruffled(subject: Subject, sheet: Sheet) -> tuple[Subject, Ruffle] | None:
    """The piece as far as its gathered rows spread, and what they lie on; None where none are gathered."""
    if sheet.arc or sheet.wave.knots:
        return None
    sizes = [*_spread(subject.sizes)]
    gathered = [at for at, (own, one) in enumerate(zip(subject.sizes, sizes, strict=True)) if own is not one]
    if not gathered:
        return None
    begins = sizes[gathered[0] - 1].height_mm
    deep = sizes[-1].height_mm - begins
    folds = max(round(sizes[-1].length_mm / (FOLD_WIDE * deep)), 2)
    return replace(subject, sizes=sizes), Ruffle(sheet, begins, deep, folds)


def _spread(sizes: list[RoundSize]) -> Iterator[RoundSize]:
    """Each row as wide as it can lie: once gathered, further rows spread no faster."""
    wide, gathered = sizes[0].length_mm, False
    for one in sizes:
        more = one.length_mm - wide
        too_full = more > TOO_WIDE * one.rise_mm and one.length_mm > FULL * wide
        gathered = more > 0 and (gathered or too_full)
        wide = min(one.length_mm, wide + 2 * SPREADS * one.rise_mm) if gathered else one.length_mm
        yield replace(one, length_mm=wide) if gathered else one
