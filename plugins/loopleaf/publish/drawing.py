"""A drawing of a piece as a plain value, as page and booklet show it."""

import re
from dataclasses import dataclass
from typing import Literal

from ..draw import KeyEntry

LONG = 2.5
"""A drawing so many times as high as it is wide is shown from its beginning, at its foot."""


def drawn_size(svg: str) -> tuple[float, float]:
    """Width and height of a drawing, in its own units."""
    found = re.search(r'viewBox="\S+ \S+ ([\d.]+) ([\d.]+)"', svg)
    return (float(found[1]), float(found[2])) if found else (1.0, 1.0)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing of a piece. kind: `chart`, `schematic` (its measures), `profile` (in section), `squares` (the
    author's grid), or `picture` (of the whole, at another height). title: what it is called. svg: SVG text.
    file: its path in the site, "" for one that stands in the page. left, left_file: the same as a left-hander
    works it, "" where it has no hand or stands in the page. key: of a chart or squares, for the page.
    printed: its parts in print, where they are others. rounds: those that it shows, none for all.
    """

    kind: Literal["chart", "schematic", "profile", "squares", "picture"]
    title: str
    alt: str
    svg: str
    file: str = ""
    left: str = ""
    left_file: str = ""
    key: tuple[KeyEntry, ...] = ()
    printed: tuple[str, ...] = ()
    rounds: tuple[str, ...] = ()

    @property
    def box(self) -> tuple[float, float]:
        """Its width and height, in its own units."""
        return drawn_size(self.svg)

    @property
    def signs_high(self) -> float:
        """How high it is without the key at its foot."""
        found = re.search(r' data-key-from="([\d.]+)"', self.svg)
        return float(found[1]) if found else self.box[1]

    @property
    def is_long(self) -> bool:
        """Whether it is so tall and narrow that its signs are lost where all of it is shown."""
        return self.signs_high > LONG * self.box[0]
