"""How large one stitch is here: from the author's gauge, and for other stitches from the table of heights.

A gauge of 14 stitches and 10 rows over 10 cm gives w = over ÷ stitches and h = over ÷ rows, each known to
half a stitch or row over that length. A stitch that the author gives no gauge for is as wide as the gauge
stitch (± 5 %, from memory) and as tall as the two table heights compare (their common ranges are the
uncertainty).
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache

from .. import trade
from ..fabric.worked import PieceWork, Ring
from ..pattern import Pattern
from .units import Band

Kind = tuple[str, str]
"""A stitch's neutral key and its post ("" for a plain one)."""

_A_YARN_OVER_ADDS = 0.8
"""In widths.

What one more yarn over adds to a tall stitch's height, between the table's steps of 0.7 and 0.9.
"""


@dataclass(frozen=True, slots=True)
class Sample:
    """What one of the author's gauges says of its stitch.

    Size in mm, and the share by which each may be off.
    """

    width_mm: float
    height_mm: float
    width_off: float
    height_off: float


@dataclass(frozen=True, slots=True)
class Scale:
    """Sizes of stitches in a piece. samples: what the author measured, the first one the reference.

    specials: yarn overs of the author's own tall stitches.
    """

    samples: Mapping[Kind, Sample]
    specials: Mapping[str, int] = field(default_factory=dict)

    @property
    def reference(self) -> tuple[Kind, Sample]:
        return next(iter(self.samples.items()))

    @property
    def width_mm(self) -> float:
        """One stitch's width, of the reference."""
        return self.reference[1].width_mm

    @property
    def width_off(self) -> float:
        """The share by which a width may be off."""
        return self.reference[1].width_off

    def width_of(self, kind: str, post: str = "") -> float:
        """Width of one stitch in mm."""
        sample = self._sample(kind, post)
        return sample.width_mm if sample else self.width_mm

    def height_of(self, kind: str, post: str = "") -> float:
        """Height of one stitch in mm."""
        return self.height_band(kind, post).middle

    def height_band(self, kind: str, post: str = "") -> Band:
        """Height of one stitch in mm, between what its gauge or the table's ranges leave open."""
        sample = self._sample(kind, post)
        if sample:
            return Band.about(sample.height_mm, sample.height_off)
        wanted = height_ratio(kind, self.specials)
        (near_kind, _), near = min(
            self.samples.items(),
            key=lambda item: abs(height_ratio(item[0][0], self.specials).middle - wanted.middle),
        )
        ratio = wanted.middle / height_ratio(near_kind, self.specials).middle
        off = near.height_off + (wanted.high - wanted.low) / (wanted.high + wanted.low)
        return Band.about(near.height_mm * ratio, off)

    def _sample(self, kind: str, post: str) -> Sample | None:
        found = self.samples.get((kind, post))
        if found is None and post:
            found = next((s for (k, p), s in self.samples.items() if k == kind and p), None)
            found = found or self.samples.get((kind, ""))
        return found


def height_ratio(kind: str, specials: Mapping[str, int]) -> Band:
    """Height over width of a stitch.

    The table's common range; for a stitch it lacks, that of the nearest yarn overs.

    specials: yarn overs by the names of the author's own stitches. A stitch of which nothing is known
    counts as single.
    """
    known = _heights()
    if kind in known:
        return known[kind]
    overs = specials.get(kind, 0)
    if overs < len(_BY_YARN_OVERS):
        return known[_BY_YARN_OVERS[overs]]
    tallest = known[_BY_YARN_OVERS[-1]]
    return tallest + Band.about(_A_YARN_OVER_ADDS, 0.125) * (overs - len(_BY_YARN_OVERS) + 1)


@cache
def _heights() -> dict[str, Band]:
    return {row.key: Band(*row.height) for row in trade.stitches() if row.height}


_BY_YARN_OVERS = ("single", "double", "treble", "double-treble", "triple-treble", "quadruple-treble")


def specials_of(pattern: Pattern) -> dict[str, int]:
    """Yarn overs of the pattern's own tall stitches, by their names."""
    return {
        name: own.yarn_overs for name, own in pattern.special_stitches.items() if own.yarn_overs is not None
    }


def ring_radius(piece: PieceWork, size: int, width_mm: float) -> float:
    """Radius in mm of the hole that a chain ring leaves.

    Its chains around, one stitch wide each; 0 for other starts.
    """
    start = piece.starts[size] if size < len(piece.starts) else []
    ring = next((p for p in start if isinstance(p, Ring)), None)
    return ring.chains * width_mm / math.tau if ring is not None and ring.chains else 0.0


def start_mm(piece: PieceWork, size: int, scale: Scale) -> float | None:
    """Length of the edge before round 1.

    Of a ring its circumference (0 drawn closed); None on a chain or another edge.
    """
    start = piece.starts[size] if size < len(piece.starts) else []
    if len(start) == 1:
        return math.tau * ring_radius(piece, size, scale.width_mm)
    return None
