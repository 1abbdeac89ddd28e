"""Signs placed one by one, and the SVG that they make."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from html import escape
from itertools import groupby
from math import atan2, cos, degrees, hypot, sin
from typing import NamedTuple

from .canvas import Box, Point
from .colour import FAINT
from .drawn_together import drawn_together
from .shapes import Shapes, moved, placed, short, stroked
from .signs import (
    CHAIN,
    CHAIN_LONG,
    CROSS,
    DOT,
    SHORT_CHAIN,
    Sign,
    grip,
    height_of,
    is_cross,
    lines,
    longer,
)
from .strokes import Stroke


class Mark(NamedTuple):
    """What a sign says of itself besides its round: its kind in the file's own terms, and its number in the
    round (0, and unsaid, where it isn't counted). counts_as: the kind of stitch that it stands for.
    """

    kind: str
    stitch: int = 0
    counts_as: str = ""

    def __str__(self) -> str:
        number = f' data-stitch="{self.stitch}"' if self.stitch else ""
        stands = f' data-counts-as="{escape(self.counts_as)}"' if self.counts_as else ""
        return f"{_named(self.kind)}{number}{stands}"


@cache
def _named(kind: str) -> str:
    return f' data-kind="{escape(kind)}"'


@cache
def _round(label: str) -> str:
    return f' data-round="{escape(label)}"' if label else ""


class _Group(NamedTuple):
    """What signs drawn one after the other have in common, written once around them."""

    round: str = ""
    letter: str = ""
    colour: str = ""
    faint: bool = False


FEW_DEGREES = 5

MOST_SCALED = 1.2
"""What is drawn more than so many times as tall has a form of its own: a scaled one's bars would be thick."""

MANY = 4
"""So many signs that look alike, turn and all, share a form that is turned already."""

Look = tuple[str, int, str]


class _Standing(NamedTuple):
    """A sign that stands on its foot. look: its path, its turn in degrees and its stretch; mark: its data."""

    at: Point
    look: Look
    mark: str


@dataclass(slots=True)
class Pen:
    """Draws signs in units, y down. strokes: of each yarn, dashes and width. round: the label of the
    round that is drawn now, "" for none. faint: what is drawn now was drawn before, and is lighter.
    """

    shapes: Shapes
    strokes: Mapping[str, Stroke] = field(default_factory=dict)
    round: str = ""
    faint: bool = False
    _yarn: tuple[str, str] = ("", "")
    _groups: list[tuple[_Group, list[str | _Standing]]] = field(default_factory=list)
    _alike: Counter[Look] = field(default_factory=Counter)
    _reached: list[Point] = field(default_factory=lambda: [(0.0, 0.0)])

    def yarn(self, letter: str, colour: str) -> None:
        """Draw on in a yarn."""
        self._yarn = (letter, colour)

    def _put(self, part: str | _Standing) -> None:
        """One more sign, in a group with those before it where it has all in common with them."""
        group = _Group(self.round, *self._yarn, self.faint)
        if not self._groups or self._groups[-1][0] != group:
            self._groups.append((group, []))
        self._groups[-1][1].append(part)

    def _ink(self, group: _Group) -> str:
        stroke = self.strokes.get(group.letter, Stroke()).attributes
        # Not the group's own opacity: a printer that draws such a group apart may cut its signs off.
        light = f' stroke-opacity="{FAINT}" fill-opacity="{FAINT}"' if group.faint else ""
        return (
            f'class="{ink_name(group.colour)}" stroke="{group.colour}" fill="{group.colour}"{stroke}{light}'
        )

    def _data(self, mark: Mark | None) -> str:
        """All that a sign says of itself. Its round too, which its group tells the page: a program that reads
        the chart sign by sign need not know of groups.
        """
        return f"{mark}{_round(self.round)}" if mark is not None else ""

    def stitch(self, sign: Sign, foot: Point, top: Point, mark: Mark) -> None:
        """A sign between its foot and its top. A cross looks the same after a quarter turn."""
        if _is_plain_cross(sign):
            middle = ((foot[0] + top[0]) / 2, (foot[1] + top[1]) / 2)
            turned = _evened(degrees(atan2(top[0] - foot[0], foot[1] - top[1])), 90)
            self._use(self.shapes.name(CROSS, turned=turned), middle, mark, foot, top)
            return
        dx, dy = top[0] - foot[0], top[1] - foot[1]
        stretch = round(hypot(dx, dy) / height_of(sign.kind), 1)
        angle = round(degrees(atan2(dx, -dy)))
        way, scale = lines(sign), ""
        if stretch > MOST_SCALED:
            way = longer(way, stretch)
        elif stretch != 1:
            scale = f" scale(1 {short(stretch)})"
        look = (way, angle, scale)
        self._alike[look] += 1
        self._put(_Standing(foot, look, self._data(mark)))
        self._grow(foot, top)

    def gathered(self, sign: Sign, feet: Sequence[Point], top: Point, up: Point, mark: Mark) -> None:
        """A stitch with a leg in each of several places, their heads together. up: the way that it grows."""
        way = drawn_together(sign.kind, [(x - top[0], y - top[1]) for x, y in feet], up)
        more = f' transform="{moved(top)}"{self._data(mark)}'
        self._put(stroked(way, more, bool(self.strokes.get(self._yarn[0], Stroke()).dash)))
        self._grow(top, *feet)

    def chain(self, middle: Point, along: Point, mark: Mark | None, long: float = CHAIN_LONG) -> None:
        """An oval that lies in the direction of `along`. long: its length."""
        turned = _evened(degrees(atan2(along[1], along[0])), 180)
        way = CHAIN if long > 0.9 * CHAIN_LONG else SHORT_CHAIN
        self._use(self.shapes.name(way, turned=turned), middle, mark, middle)

    def picot(self, foot: Point, up: Point, chains: int, mark: Mark) -> None:
        """Chains in a ring above a place, a dot at the foot."""
        turned = round(degrees(atan2(up[0], -up[1])))
        length = hypot(*up) or 1.0
        self._grow((foot[0] + up[0] / length * 11, foot[1] + up[1] / length * 11))
        self._put(f"<g{self._data(mark)}>")
        self._put(f'<use href="#{self.shapes.name(picot_way(chains))}"{placed(foot, turned)}/>')
        self.dot(foot, None)
        self._put("</g>")

    def dot(self, middle: Point, mark: Mark | None) -> None:
        """A slip stitch."""
        self._use(self.shapes.name(DOT, filled=True), middle, mark, middle)

    def grip(self, sign: Sign, foot: Point, top: Point) -> None:
        """Only what shows where the hook goes in, below a slip stitch or a stem."""
        self.form(grip(sign), foot, foot, top)

    def form(self, way: str, at: Point, foot: Point, top: Point, mark: Mark | None = None) -> None:
        """A path about a point, upright where foot lies below top."""
        angle = round(degrees(atan2(top[0] - foot[0], foot[1] - top[1])))
        look = (way, angle, "")
        self._alike[look] += 1
        self._put(_Standing(at, look, self._data(mark)))
        self._grow(foot, top)

    def ring(self, middle: Point, radius: float) -> None:
        """A plain circle."""
        x, y = middle
        at = f' cx="{short(x)}" cy="{short(y)}"' if x or y else ""
        self._put(f'<circle{at} r="{short(radius)}" fill="none"/>')
        self._grow((x - radius, y - radius), (x + radius, y + radius))

    def line(self, start: Point, end: Point) -> None:
        """A plain line."""
        (x, y), (to_x, to_y) = start, end
        self._put(f'<path fill="none" d="M{short(x)} {short(y)}L{short(to_x)} {short(to_y)}"/>')
        self._grow(start, end)

    def lead(self, start: Point, bow: Point, end: Point) -> None:
        """A dotted line that only leads from one place to another, bowed."""
        way = " ".join(f"{short(x)} {short(y)}" for x, y in (bow, end))
        self._put(
            f'<path fill="none" stroke-dasharray="0.1 2" d="M{short(start[0])} {short(start[1])}Q{way}"/>'
        )

    def _use(self, name: str, middle: Point, mark: Mark | None, *points: Point) -> None:
        self._put(f'<use href="#{name}"{placed(middle)}{self._data(mark)}/>')
        self._grow(*points)

    def _grow(self, *points: Point) -> None:
        self._reached += points

    @property
    def box(self) -> Box:
        """Left, top, right, bottom of what is drawn, with room for the widest sign."""
        xs, ys = [x for x, _ in self._reached], [y for _, y in self._reached]
        return (min(xs) - 5, min(ys) - 5, max(xs) + 5, max(ys) + 5)

    def body(self) -> str:
        """What was drawn. Rounds in one ink, one after the other, have it from a group around them; a stroke
        of its own width stands on each round, whose width the page may change.
        """
        parts: list[str] = []
        for ink, run in groupby(self._groups, key=lambda one: self._ink(one[0])):
            groups = list(run)
            if len(groups) == 1 or "stroke-width" in ink:
                parts += (self._written(f" {ink}", *group) for group in groups)
            else:
                parts += (f"<g {ink}>", *(self._written("", *group) for group in groups), "</g>")
        return "".join(parts)

    def _written(self, ink: str, group: _Group, signs: Sequence[str | _Standing]) -> str:
        inside = "".join(sign if isinstance(sign, str) else self._stood(sign) for sign in signs)
        about = f"{ink}{_round(group.round)}"
        return f"<g{about}>{inside}</g>" if about else inside

    def _stood(self, one: _Standing) -> str:
        """A sign on its foot: of many alike the form is turned where it is defined, which is shorter."""
        way, angle, scale = one.look
        if self._alike[one.look] >= MANY:
            name, place = self.shapes.name(way, turned=angle, scale=scale), placed(one.at)
        else:
            name, place = self.shapes.name(way), placed(one.at, angle, scale)
        return f'<use href="#{name}"{place}{one.mark}/>'


@cache
def _is_plain_cross(sign: Sign) -> bool:
    return sign == Sign(sign.kind) and is_cross(sign.kind) and lines(sign) == lines(Sign("single"))


_PICOT_CHAIN, _PICOT_THICK = 2.5, 1.5
_RING = ((-3.4, 5.0), (0.0, 8.4), (3.4, 5.0), (0.0, 2.6))


@cache
def picot_way(chains: int) -> str:
    """The path of chains in a ring above (0, 0)."""
    ways: list[str] = []
    for at in range(chains):
        side, rise = _RING[at * len(_RING) // chains]
        turned = atan2(-side, 5 - rise)
        dx, dy = _PICOT_CHAIN * cos(turned), _PICOT_CHAIN * sin(turned)
        oval = f"a{_PICOT_CHAIN} {_PICOT_THICK} {round(degrees(turned))} 1 0"
        ways.append(
            f"M{short(side - dx)} {short(-rise - dy)}{oval} {short(2 * dx)} {short(2 * dy)}"
            f"{oval} {short(-2 * dx)} {short(-2 * dy)}z"
        )
    return "".join(ways)


def ink_name(colour: str) -> str:
    """The class of what is drawn in a colour `#rrggbb`: dark paper gives it another ink."""
    return f"ink-{colour[1:]}"


def _evened(angle: float, alike: int) -> int:
    """An angle to the next few degrees, for what looks the same after a turn of `alike`: finer is not seen,
    and each of the few can be defined once.
    """
    return round((angle + alike / 2) % alike / FEW_DEGREES) * FEW_DEGREES % alike - alike // 2
