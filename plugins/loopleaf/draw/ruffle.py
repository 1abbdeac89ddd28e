"""Rows far too full for the cloth below or above them: they spread as far as they can, and stand in folds."""

from collections.abc import Iterator, Sequence
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
    above it, or below where negative, in mm. folds: how many lie side by side.
    """

    sheet: Sheet
    begins: float
    deep: float
    folds: int

    def _share(self, high: float) -> float:
        """How deep the folds are: those of a full edge open to its end, those above a wide cloth lose
        themselves in it.
        """
        share = min(max((high - self.begins) / self.deep, 0.0), 1.0)
        return share if self.deep > 0 else 4 * share * (1 - share)

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""
        x, y = self.sheet.point(width, along, high)
        share = self._share(high) * abs(self.deep)
        turn = tau * self.folds * along
        return (
            x + sin(turn) * FOLD_ASIDE * share,
            y - (1 + cos(turn + pi)) / 2 * FOLD_DEEP * share,
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


def gathered_in(subject: Subject, sheet: Sheet) -> tuple[Subject, Ruffle] | None:
    """A cloth that one of its rows draws together, and what it lies on; None where none does."""
    if sheet.arc or sheet.wave.knots:
        return None
    sizes = [*_spread(subject.sizes[::-1])][::-1]
    eased = [at for at, (own, one) in enumerate(zip(subject.sizes, sizes, strict=True)) if own is not one]
    if not eased:
        return None
    begins = sizes[eased[-1]].height_mm
    low = next((sizes[at - 1].height_mm for at in reversed(eased) if at and at - 1 not in eased), 0.0)
    folds = max(round(sizes[eased[-1]].length_mm / (FOLD_WIDE * (begins - low))), 2)
    return replace(subject, sizes=sizes), Ruffle(sheet, begins, low - begins, folds)


def _spread(sizes: Sequence[RoundSize]) -> Iterator[RoundSize]:
    """Each row as wide as it can lie: once gathered, further rows spread no faster."""
    wide, gathered = sizes[0].length_mm, False
    for one in sizes:
        more = one.length_mm - wide
        too_full = more > TOO_WIDE * one.rise_mm and one.length_mm > FULL * wide
        gathered = more > 0 and (gathered or too_full)
        wide = min(one.length_mm, wide + 2 * SPREADS * one.rise_mm) if gathered else one.length_mm
        yield replace(one, length_mm=wide) if gathered else one
