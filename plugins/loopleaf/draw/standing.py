"""Where a row of flat work begins so that its stitches stand above their places."""

from collections.abc import Mapping, Sequence
from statistics import median

from .items import Item, Spot

ALIKE = 0.25
"""What lies within so many stitch widths of another is in the same place, or as wide."""

BESIDE = 1
"""So many plain stitches may lie between an edge and what is made more or fewer there."""


def row_begins(
    items: Sequence[Item],
    feet: Mapping[int, Spot],
    long: float,
    below: tuple[float, float],
    wide: float,
    whole: bool,
    still: bool | None,
) -> tuple[float, bool | None]:
    """Where a row of a length begins, and which end of the one below it keeps where all that it grows or
    shrinks by is made at the other one: True for the left, None for neither.

    below: the ends of the row below. wide: a stitch. whole: it goes from end to end of the row below.
    still: the end that the rows before kept; it tells where the row itself can't, of a stitch or two.
    """
    offs = [
        (spot.start + spot.end) / 2 - item.middle * long
        for item in items
        if (spot := feet.get(id(item.thing))) is not None
    ]
    plain = [_stands(item, feet.get(id(item.thing)), long, wide) for item in items]
    common = median(offs) if offs else below[0]
    if not whole:
        return common, None
    if abs(long - (below[1] - below[0])) < wide / 2:
        aside = [off for off in plain if off is not None and abs(off - common) < ALIKE * wide]
        return (common if len(aside) > len(items) / 2 else below[0]), still
    begins = (below[0], below[1] - long)
    keeps = [_keeps(plain if left else plain[::-1], begins[not left], wide) for left in (True, False)]
    if keeps[0] != keeps[1]:
        return begins[keeps[1]], keeps[0]
    if still is not None and not any(off is not None for off in plain):
        return begins[not still], still
    return common, None


def _stands(item: Item, spot: Spot | None, long: float, wide: float) -> float | None:
    """Where the row begins if an item that stands alone on a place of its width stands just above it; None
    for any other.
    """
    if spot is None or abs((spot.end - spot.start) - (item.end - item.start) * long) > ALIKE * wide:
        return None
    return spot.start - item.start * long


def _keeps(plain: Sequence[float | None], begins: float, wide: float) -> bool:
    """Whether all items from one end stand above their places when the row begins there, but for those at the
    other end that share a place or take several.
    """
    run = next(
        (at for at, off in enumerate(plain) if off is None or abs(off - begins) > ALIKE * wide), len(plain)
    )
    rest = sum(off is not None for off in plain[run:])
    return run > 0 and rest <= BESIDE
