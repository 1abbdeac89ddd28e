"""Rows of arches as wide as they hang: their chains are longer than what they pass over."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import isclose

from ..measure.size import RoundSize
from .subject import Subject

GIVES = (0.75, 1.25)
"""A row of stitches is drawn in by so much, or out, where the arches below it hang so."""


def as_hung(subject: Subject) -> Subject:
    """The piece with rows of arches as wide as the rows that they hang on."""
    return replace(subject, sizes=[*_widths(subject.sizes)])


def _widths(sizes: Sequence[RoundSize]) -> Iterator[RoundSize]:
    """Arches on stitches are as wide as these, as far as their chains can be, and stitches on arches as wide
    as those, as far as cloth gives; arches on arches, and stitches on stitches, are wider or narrower than
    those by what they have more or fewer of.
    """
    wide, below = 0.0, None
    for one in sizes:
        own = one.length_mm
        if below is not None and one.arched == below.arched:
            ways = [(size.length.high if size.arched else size.length_mm) for size in (one, below)]
            own = wide * ways[0] / (ways[1] or 1.0)
        elif below is not None and one.arched:
            own = min(max(wide, one.length.low), one.length.high)
        elif below is not None and GIVES[0] * own < wide < GIVES[1] * own:
            own = wide
        yield one if isclose(own, one.length_mm) else replace(one, length_mm=own)
        wide, below = own, one
