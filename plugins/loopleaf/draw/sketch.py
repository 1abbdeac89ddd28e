"""Line drawings in ink: outlines, measures and words, in units of a millimetre where they are printed at full
size.

The inks are the page's own (`--ink`, `--paper`, `--second`) on a screen, light or dark, and black on white in
print. Lines are a quarter point (0.09 mm) at least. A left-hander's drawing is the mirror image, only the
words are not.
"""

import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from html import escape
from typing import Literal
from zlib import crc32

from .canvas import Box, Point, number
from .letters import room_for

Ink = Literal["ink", "thin", "fine", "dashed", "second", "cut", "edge"]
Fill = str
"""An ink by its name (`paper`, `ink`, `second`, `tint`, `steel`), or a colour `#rrggbb`."""

Anchor = Literal["start", "middle", "end"]

_OWN = "\x00"

_MIRRORED: dict[Anchor, Anchor] = {"start": "end", "end": "start", "middle": "middle"}

STACKED_GAP = 8.0
"""Between drawings that stand one below the other, in units."""

NAME, NAME_IN, NAME_ROOM = 4.6, 1.5, 6.4
"""Height of the name above each of these, how far it stands in, and the room that it takes, in units."""

WORDS = 3.8
"""Height of words, in units. Drawings are about 100 units wide at most: on a phone's 350 pixels their words
are still as tall as the text beside them.
"""

_WIDTHS = {"ink": 0.5, "thin": 0.25, "fine": 0.15, "dashed": 0.3, "second": 0.6, "cut": 1.1, "edge": 0.42}
_DASHES = {"dashed": "1.2 1.2"}
_PRINTED = {"ink": "#22282b", "paper": "#fff", "second": "#3d5c74", "tint": "#c6d0d8", "steel": "#dcdcda"}
_SCREEN = {"ink": ("#22282b", "#e9e4d9"), "paper": ("#fff", "#15191b"), "second": ("#3d5c74", "#8fb2cc")}
_MIXED = {"tint": ("second", 30), "steel": ("ink", 20)}


def _style() -> str:
    def rules(scheme: int) -> str:
        inks = {name: f"var(--{name},{colours[scheme]})" for name, colours in _SCREEN.items()}
        for name, (ink, share) in _MIXED.items():
            inks[name] = f"color-mix(in srgb,{inks[ink]} {share}%,{inks['paper']})"
        return "".join(
            f".draw-{name}{{stroke:{ink}}}.fill-{name}{{fill:{ink}}}" for name, ink in inks.items()
        )

    dark = f"@media screen and (prefers-color-scheme:dark){{{rules(1)}}}"
    return f"<style>@media screen{{{rules(0)}}}{dark}</style>"


STYLE = _style()
"""On a screen the drawing takes the colours of the page that it stands in; alone, those of the scheme."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing. svg: the whole of it. alt: what it shows, in words that serve who can't see it."""

    svg: str
    alt: str


@dataclass(slots=True)
class Sketch:
    """Draws in units, y down. mirrored: left and right are changed over, words stay upright."""

    mirrored: bool = False
    _parts: list[str] = field(default_factory=list)
    _tubes: int = 0
    _xs: list[float] = field(default_factory=list)
    _ys: list[float] = field(default_factory=list)

    def line(self, points: Sequence[Point], ink: Ink = "ink", closed: bool = False) -> None:
        """A line through points."""
        self._parts.append(f'<path {painted(ink)} d="{self.way(points, closed)}"/>')
        self._grow(points)

    def area(self, points: Sequence[Point], fill: str = "paper", ink: Ink | None = "ink") -> None:
        """A closed shape. fill: `paper`, `ink`, `second`, or a colour `#rrggbb`."""
        self._parts.append(f'<path {painted(ink, fill)} d="{self.way(points, closed=True)}"/>')
        self._grow(points)

    def dot(self, middle: Point, radius: float, fill: str = "ink") -> None:
        """A round dot."""
        x, y = self._at(middle)
        self._parts.append(
            f'<circle {painted(fill=fill)} cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"/>'
        )
        self._grow([(middle[0] - radius, middle[1] - radius), (middle[0] + radius, middle[1] + radius)])

    def words(
        self,
        at: Point,
        text: str,
        anchor: Anchor = "middle",
        size: float = WORDS,
        bold: bool = False,
        fill: Fill = "ink",
    ) -> None:
        """Words on a line, at their foot. The drawing has room for them in any typeface."""
        x, y = self._at(at)
        shown = _MIRRORED[anchor] if self.mirrored else anchor
        weight = ' font-weight="600"' if bold else ""
        self._parts.append(
            f'<text {painted(fill=fill)} x="{number(x)}" y="{number(y)}" text-anchor="{shown}" '
            f'font-size="{number(size)}"{weight}>{escape(text)}</text>'
        )
        wide = room_for(text, size, bold)
        left = {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
        self._grow([(at[0] - left, at[1] - size * 0.8), (at[0] - left + wide, at[1] + size * 0.25)])

    def tube(
        self, way: str, inner: str, reach: Sequence[Point], width: float, edge: float, fill: Fill
    ) -> None:
        """A line of any width with dark edges and cut ends, by its path, that of its inside, and the points
        that it reaches.
        """
        self._tubes += 1
        name = f"{_OWN}{self._tubes}"
        shared = way == inner
        if shared:
            self._parts.append(f'<defs><path id="{name}" d="{way}"/></defs>')
        for line, colour, wide in ((way, "ink", width), (inner, fill, width - 2 * edge)):
            known = f'class="draw-{colour}" ' if colour in _PRINTED else ""
            which = f'use href="#{name}"' if shared else f'path d="{line}"'
            self._parts.append(
                f'<{which} {known}stroke="{_PRINTED.get(colour, colour)}" '
                f'stroke-width="{number(wide)}" stroke-linecap="butt"{self._mirror}/>'
            )
        half = width / 2
        self._grow([(x + side, y + side) for x, y in reach for side in (-half, half)])

    def shape(self, way: str, reach: Sequence[Point], fill: Fill, ink: Ink = "ink") -> None:
        """A closed shape by its path and the points that it reaches."""
        self._parts.append(f'<path {painted(ink, fill)} d="{way}"{self._mirror}/>')
        self._grow(reach)

    def areas(self, way: str, reach: Sequence[Point], fill: Fill) -> None:
        """Several closed shapes without lines, by their paths as they stand in the drawing (`way`)."""
        self._parts.append(f'<path {painted(fill=fill)} d="{way}"/>')
        self._grow(reach)

    def strokes(self, lines: Sequence[Sequence[Point]], ink: Ink = "fine", fill: Fill = "ink") -> None:
        """Several lines as one path. ink: how thick; fill: in what, an ink by its name or a colour."""
        if lines:
            known = f'class="draw-{fill}" ' if fill in _PRINTED else ""
            self._parts.append(
                f'<path {known}stroke="{_PRINTED.get(fill, fill)}" stroke-width="{number(_WIDTHS[ink])}" '
                f'd="{"".join(self.way(line) for line in lines)}"/>'
            )
            self._grow([point for line in lines for point in line])

    @contextmanager
    def group(self, attributes: str) -> Iterator[None]:
        """What is drawn meanwhile stands in a group of its own. attributes: of the group, as SVG text."""
        self._parts.append(f"<g {attributes}>")
        yield
        self._parts.append("</g>")

    @property
    def _mirror(self) -> str:
        return ' transform="scale(-1 1)"' if self.mirrored else ""

    def way(self, points: Sequence[Point], closed: bool = False) -> str:
        """A path's data through points, as it stands in the drawing."""
        placed = [self._at(point) for point in points]
        first = f"M{number(placed[0][0])} {number(placed[0][1])}"
        rest = "".join(f"L{number(x)} {number(y)}" for x, y in placed[1:])
        return f"{first}{rest}{'Z' if closed else ''}"

    @property
    def box(self) -> Box:
        """Left, top, right, bottom of what is drawn so far, before mirroring."""
        return (min(self._xs), min(self._ys), max(self._xs), max(self._ys))

    def figure(
        self,
        title: str,
        alt: str,
        margin: float = 1.5,
        box: Box | None = None,
        key_from: float | None = None,
    ) -> Figure:
        """The whole drawing. box: what of it shows, if not all. key_from: where the key at its foot is."""
        left, top, right, bottom = box or self.box
        if self.mirrored:
            left, right = -right, -left
        wide, high = right - left + 2 * margin, bottom - top + 2 * margin
        view = " ".join(number(value) for value in (left - margin, top - margin, wide, high))
        key = f'data-key-from="{number(key_from - top + margin)}" ' if key_from is not None else ""
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" width="{number(wide)}mm" '
            f'height="{number(high)}mm" {key}role="img" fill="none" stroke-linecap="round" '
            f'stroke-linejoin="round" font-family="Leaflet Sans, sans-serif"><title>{escape(title)}</title>'
            f"<desc>{escape(alt)}</desc>{STYLE}{''.join(self._parts)}</svg>"
        )
        # Names of its own, for several drawings may stand in one page.
        return Figure(svg.replace(_OWN, f"t{crc32(svg.encode()):08x}-"), alt)

    def bare(self, pixels: float) -> str:
        """The drawing by itself without words about it, so many pixels wide, for a page that says what it is;
        the page gives its inks.
        """
        left, top, right, bottom = self.box
        view = " ".join(
            number(value) for value in (left - 0.5, top - 0.5, right - left + 1, bottom - top + 1)
        )
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" width="{number(pixels)}" '
            f'aria-hidden="true" fill="none">{"".join(self._parts)}</svg>'
        )

    def _at(self, point: Point) -> Point:
        return (-point[0], point[1]) if self.mirrored else point

    def _grow(self, points: Sequence[Point]) -> None:
        self._xs += [x for x, _ in points]
        self._ys += [y for _, y in points]


def painted(ink: Ink | None = None, fill: str = "") -> str:
    """The attributes of a shape: its line (None: without), and its fill, an ink by its name or a colour."""
    names: list[str] = []
    parts: list[str] = []
    if fill in _PRINTED:
        names.append(f"fill-{fill}")
    if fill:
        parts.append(f'fill="{_PRINTED.get(fill, fill)}"')
    if ink is not None:
        colour = "second" if ink == "second" else "ink"
        names.append(f"draw-{colour}")
        parts.append(f'stroke="{_PRINTED[colour]}" stroke-width="{number(_WIDTHS[ink])}"')
        parts += [f'stroke-dasharray="{_DASHES[ink]}"'] if ink in _DASHES else []
    return " ".join(([f'class="{" ".join(names)}"'] if names else []) + parts)


def stacked(figures: Sequence[tuple[str, Figure]], title: str) -> Figure | None:
    """Several drawings one below the other as one, each under its name; None for none, one as it is."""
    if len(figures) < 2:
        return figures[0][1] if figures else None
    parts: list[str] = []
    wide, low = 0.0, 0.0
    for name, figure in figures:
        across, down = _size(figure.svg)
        low += NAME_ROOM
        parts.append(
            f'<text {painted(fill="ink")} x="{number(NAME_IN)}" y="{number(low - NAME_ROOM + NAME)}" '
            f'font-size="{number(NAME)}">{escape(name)}</text>'
        )
        parts.append(figure.svg.replace("<svg ", f'<svg y="{number(low)}" ', 1).replace("mm", "", 2))
        wide = max(wide, across, room_for(name, NAME) + 2 * NAME_IN)
        low += down + STACKED_GAP
    low -= STACKED_GAP
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(wide)} {number(low)}" '
        f'width="{number(wide)}mm" height="{number(low)}mm" role="img" '
        f'font-family="Leaflet Sans, sans-serif"><title>{escape(title)}</title>{"".join(parts)}</svg>'
    )
    return Figure(svg, " ".join(figure.alt for _, figure in figures))


def _size(svg: str) -> tuple[float, float]:
    """Width and height of a drawing, in units."""
    box = re.search(r'viewBox="\S+ \S+ (\S+) (\S+)"', svg)
    assert box is not None
    return float(box[1]), float(box[2])
