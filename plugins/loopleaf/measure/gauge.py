"""How large one stitch is here: from the author's gauge, and for other stitches from the table of heights.

A gauge of 14 stitches and 10 rows over 10 cm gives w = over ÷ stitches and h = over ÷ rows, each known to
half a stitch or row over that length. A stitch that the author gives no gauge for is as wide as the gauge
stitch (± 5 %, from memory) and as tall as the two table heights compare (their common ranges are the
uncertainty).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

from .. import trade
from ..fabric.worked import Made, PieceWork, Ring
from ..pattern import Gauge, Pattern
from .units import Band

Kind = tuple[str, str]
"""A stitch's neutral key and its post ("" for a plain one)."""

_WIDTHS_DIFFER = 0.05
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


def scale_of(pattern: Pattern, piece: PieceWork, pieces: Sequence[PieceWork] = ()) -> Scale | None:
    """The scale of one piece, or None where the pattern's gauge doesn't give one.

    A gauge that names the piece comes before one for the whole pattern. A gauge by how far rounds or a whole
    piece measure across is worked back from the stitches of that piece (`pieces`: all of them).
    """
    specials = specials_of(pattern)
    own = [g for g in pattern.gauge if g.over is not None and g.piece == piece.name]
    general = [g for g in pattern.gauge if g.over is not None and not g.piece]
    samples: dict[Kind, Sample] = {}
    for gauge in own + general:
        kind, sample = _sample_over(gauge, pattern, specials)
        samples.setdefault(kind, sample)
    if samples:
        return Scale(samples, specials)
    for gauge in sorted(pattern.gauge, key=lambda g: g.piece != piece.name):
        measured = next((p for p in (*pieces, piece) if p.name == (gauge.piece or piece.name)), None)
        if gauge.across is not None and measured is not None:
            scale = _scale_across(gauge, pattern, measured, specials)
            if scale is not None:
                return scale
    return None


def _sample_over(gauge: Gauge, pattern: Pattern, specials: Mapping[str, int]) -> tuple[Kind, Sample]:
    named = trade.stitch_named(gauge.stitch, pattern.terms)
    kind: Kind = (named[0].key, named[1]) if named else (gauge.stitch, "")
    over_mm = gauge.over.mm if gauge.over else 0.0
    ratio = height_ratio(kind[0], specials)
    width = over_mm / gauge.stitches if gauge.stitches else None
    height = over_mm / gauge.rows if gauge.rows else None
    width_off = 0.5 / gauge.stitches if gauge.stitches else 0.15
    height_off = 0.5 / gauge.rows if gauge.rows else 0.15
    if width is None:
        width = (height or over_mm) / ratio.middle
    if height is None:
        height = width * ratio.middle
    return kind, Sample(width, height, width_off, height_off)


def _scale_across(
    gauge: Gauge, pattern: Pattern, piece: PieceWork, specials: Mapping[str, int]
) -> Scale | None:
    """A scale from a measured diameter (or, in rows, a measured width) and the stitches that made it."""
    across_mm = gauge.across.mm if gauge.across else 0.0
    rounds = [r for r in piece.rounds if gauge.rounds is None or r.plan.number in gauge.rounds]
    worked = [r.sizes[0] for r in rounds if r.sizes and r.sizes[0] is not None]
    model = pattern.pieces.get(piece.name)
    stitches = [[m for m in w.made if isinstance(m, Made) and m.number] for w in worked if w is not None]
    stitches = [made for made in stitches if made]
    if model is None or not stitches:
        return None
    first = stitches[0][0].kind
    if "rounds" in model.worked:
        ratios = [sum(height_ratio(m.kind, specials).middle for m in made) / len(made) for made in stitches]
        width = across_mm / (2 * (sum(ratios) + ring_radius(piece, 0, 1.0)))
    else:
        width = across_mm / len(stitches[-1])
    ratio = height_ratio(first, specials)
    off = (ratio.high - ratio.low) / (ratio.high + ratio.low)
    return Scale({(first, ""): Sample(width, width * ratio.middle, off + _WIDTHS_DIFFER, off)}, specials)


def ring_radius(piece: PieceWork, size: int, width_mm: float) -> float:
    """Radius in mm of the hole that a chain ring leaves.

    Its chains around, one stitch wide each; 0 for other starts.
    """
    start = piece.starts[size] if size < len(piece.starts) else []
    ring = next((p for p in start if isinstance(p, Ring)), None)
    return ring.chains * width_mm / math.tau if ring is not None and ring.chains else 0.0
