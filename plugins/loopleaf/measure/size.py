"""How big the work is, round by round.

The way around or across from the counts, the height from the stitches.

A stitch is as wide and as tall as its gauge says (`gauge`). A chain is as wide as a stitch (common
practice: a foundation chain of 40 makes a row of about 40). A chain space is as wide as its chains; where
it bridges fewer places than it has chains it hangs in an arch, between the places' width and its chains'.
A layer's height goes on from the round that it stands on.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from .aside import Aside
from .gauge import Scale
from .made import Contents, SpaceSort
from .standing import PLAINLY, Standing, points
from .units import NOTHING, Band

_LOOSE_OFF = 0.1
"""Ribs and lace draw in and stretch: a tenth more either way (chosen here, no source)."""

_POINTED = 0.7
"""A point that draws in is so much of its chains long at the least (chosen here, no source)."""
_ARCH = 3
_LOOP = 0.5
"""An arch of three chains and more may hang in a loop half as wide as it is long (chosen here, no source)."""
_CORNER_CHAINS = 2
_STANDS_OUT = 0.25
"""Of its length: an arch that is half open (chosen here, no source)."""


@dataclass(frozen=True, slots=True)
class RoundSize:
    """One round or row of one size.

    length_mm: the way around, or across a row, at its top. rise_mm: its own height. height_mm: along the
    fabric from the start, this round included. stitches: counted. corners: of a polygon's round. on: the
    label of the round that a layer stands on, "" on the one before it. petals: nothing
    stands on its petals. arched: it has chain spaces. blocks: of a row worked corner to corner, how many
    blocks the work is wide and high. stacked: corners that pairs of increases stack up to (`stacked`).
    aside: where a row along its own piece's sides stands. eased: as long as the edge that it is worked on.
    points_mm: how much of its own height are points worked back on chains. hangs_mm: by how much its long
    arches make it shorter still where they hang in loops.
    """

    label: str
    length_mm: float
    length: Band
    rise_mm: float
    height_mm: float
    height: Band
    stitches: int
    corners: int
    on: str = ""
    petals: bool = False
    arched: bool = False
    blocks: tuple[int, int] | None = None
    stacked: int = 0
    aside: Aside | None = None
    eased: bool = False
    points_mm: float = 0.0
    hangs_mm: float = 0.0


def round_sizes(
    labels: Sequence[str],
    rounds: Sequence[Contents | None],
    scale: Scale,
    standings: Sequence[Standing] = (),
    along: Sequence[Aside | None] = (),
) -> tuple[RoundSize | None, ...]:
    """The rounds of a piece in one size, in their order; None where the size has no such round.

    standings: how each stands, () where each stands plainly on the one before it. along: which of them go
    along their own piece's sides; these make it higher only where they stand on its top.
    """
    height = NOTHING
    sizes: list[RoundSize | None] = []
    for at, (label, made) in enumerate(zip(labels, rounds, strict=True)):
        if made is None:
            sizes.append(None)
            continue
        stands, on = standings[at] if standings else PLAINLY, ""
        if stands.root is not None:
            root = sizes[stands.root]
            assert root is not None
            height, on = root.height, root.label
            if stands.behind:
                height += _between_petals(rounds[at - 1], scale)
        length = length_band(made, scale)
        rise = _rise_of_petals(made, scale) if stands.petals else rise_band(made, scale)
        if on:
            rise += Band(0.0, _hanging(made) * scale.width_mm)
        aside = along[at] if along else None
        if aside is None or aside.top:
            height += rise
        corners = _corners(made, first=not any(sizes)) or stands.corners
        sizes.append(
            RoundSize(
                label,
                length.middle,
                length,
                rise.middle,
                height.middle,
                height,
                made.counted,
                corners,
                on,
                stands.petals,
                bool(made.gaps),
                stacked=stands.stacked,
                aside=aside,
                points_mm=_of_points(made, scale).middle if stands.petals else 0.0,
                hangs_mm=_hangs(made) * scale.width_mm,
            )
        )
    return tuple(sizes)


def enclosed(rows: Sequence[RoundSize]) -> list[RoundSize]:
    """Rows of a piece without those along its own sides (`aside`), as wide and as high as these make it."""
    body = [one for one in rows if one.aside is None]
    wider = top = foot = NOTHING
    for one in rows:
        if one.aside is not None:
            rise = Band.about(one.rise_mm, one.height.off)
            wider += rise * one.aside.sides
            top += rise * int(one.aside.top)
            foot += rise * int(one.aside.foot)
    found = [_larger(one, wider, foot) for one in body]
    return [*found[:-1], _larger(found[-1], NOTHING, top)] if found else []


def _larger(one: RoundSize, wider: Band, higher: Band) -> RoundSize:
    length, height = one.length + wider, one.height + higher
    return replace(
        one,
        length=length,
        length_mm=one.length_mm + wider.middle,
        height=height,
        height_mm=one.height_mm + higher.middle,
    )


def _rise_of_petals(made: Contents, scale: Scale) -> Band:
    """From the mean of its stitches to the tips of its petals, or of its points."""
    if points(made):
        return rise_band(made, scale) + _of_points(made, scale)
    tips = [scale.height_band(sort.kind, sort.post).high for sort in made.standing]
    return Band(rise_band(made, scale).low, max(tips))


def _of_points(made: Contents, scale: Scale) -> Band:
    """Points worked back on chains are nearly as long as those, without the one that turns."""
    long = max(points(made) - 1, 0) * scale.width_mm
    return Band(_POINTED * long, long)


def _between_petals(made: Contents | None, scale: Scale) -> Band:
    """The height of the lowest stitches of a round of petals."""
    heights = [scale.height_band(one.kind, one.post) for one in made.stitches if one.counted] if made else []
    return min(heights, key=lambda one: one.middle, default=NOTHING)


def _hanging(made: Contents) -> float:
    """How many widths the longest arches of a layer may stand out, hanging between their two ends."""
    return _STANDS_OUT * max((sort.chains for sort in made.gaps), default=0)


def _hangs(made: Contents) -> float:
    """How many widths narrower its arches are as loops than as wide as the places that they bridge."""
    loops = (
        max(space_widths(sort)[0] - _LOOP * sort.chains, 0.0) * number
        for sort, number in made.gaps.items()
        if sort.chains >= _ARCH
    )
    return sum(loops)


def _corners(made: Contents, first: bool) -> int:
    """Corners of a round.

    The longest spaces in the middle of a group, and in the first round those of two chains and more.
    """
    longest = max((sort.chains for sort in made.gaps if sort.corner), default=0)
    found = sum(number for sort, number in made.gaps.items() if sort.corner and sort.chains == longest)
    if first and not found:
        found = sum(number for sort, number in made.gaps.items() if sort.chains >= _CORNER_CHAINS)
    return found


def length_band(made: Contents, scale: Scale) -> Band:
    """Length of a round's top in mm.

    Counted stitches one width each, however many legs they gather, and spaces (`space_widths`). The gauge's
    uncertainty lies around the middle of what the spaces leave open.
    """
    off = scale.width_off
    if made.gaps or any(sort.post for sort in made.stitches):
        off += _LOOSE_OFF
    stitches = sum(
        scale.width_of(sort.kind, sort.post) * number
        for sort, number in made.stitches.items()
        if sort.counted
    )
    low = high = stitches
    for sort, number in made.gaps.items():
        shortest, longest = space_widths(sort)
        low += shortest * number * scale.width_mm
        high += longest * number * scale.width_mm
    give = off * (low + high) / 2
    return Band(low - give, high + give)


def space_widths(sort: SpaceSort) -> tuple[float, float]:
    """A space's least and most width in stitches: of the places that it bridges, and of its chains."""
    return min(sort.chains, sort.passed or sort.chains), sort.chains


def rise_band(made: Contents, scale: Scale) -> Band:
    """Height of a round in mm: the mean of its counted stitches but for spikes; without any, one chain."""
    total, low, high = 0, 0.0, 0.0
    for sort, number in made.standing.items():
        band = scale.height_band(sort.kind, sort.post)
        total += number
        low += band.low * number
        high += band.high * number
    if not total:
        return Band.about(scale.width_mm, 0.15)
    return Band(low / total, high / total)
