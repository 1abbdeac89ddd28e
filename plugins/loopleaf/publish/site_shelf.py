"""The shelf: the collection's pieces side by side, larger ones larger."""

from collections.abc import Callable, Sequence
from math import sqrt

from .ink import INK
from .leaflet_parts import Leaflet
from .site_pages import Second, Shelved, second

SMALLEST = 0.5
"""The share of its place that the smallest piece still takes: a ball beside a blanket must not be a dot."""


def shelved(leaflets: Sequence[Leaflet], href: Callable[[str], str]) -> list[Shelved]:
    """The pieces in the order of their titles. href: a pattern's slug -> its page's address.

    The scale is a gentle one: the square root of the drawn piece's size beside the largest one's.
    """
    largest = max((one.picture.across_mm for one in leaflets), default=0.0)
    return [
        Shelved(
            one,
            href(one.slug),
            _facts(one),
            second(one.ink) or Second(INK, INK),
            max(SMALLEST, sqrt(one.picture.across_mm / largest))
            if largest and one.picture.across_mm
            else 1.0,
        )
        for one in sorted(leaflets, key=lambda one: one.title.lower())
    ]


def _facts(leaflet: Leaflet) -> tuple[str, ...]:
    """Level, size and yarn, as far as the leaflet has them."""
    return tuple(fact.value for fact in leaflet.facts if fact.key in ("level", "size", "yarn"))
