"""Signs placed one by one, and the SVG that they make."""

from dataclasses import dataclass, field
from html import escape
from math import atan2, degrees, hypot

from .canvas import Box, Point, number
from .signs import CHAIN, CHAIN_LONG, DOT, Sign, head, height_of, lines, stem


@dataclass(frozen=True, slots=True)
class Mark:
    """What a sign says of itself: its kind in the file's own terms, its round, and its number there (0 where
    it isn't counted). counts_as: the kind of stitch that it stands for.
    """

    kind: str
    round: str
    stitch: int = 0
    counts_as: str = ""

    def __str__(self) -> str:
        stands = f' data-counts-as="{escape(self.counts_as)}"' if self.counts_as else ""
        return (
            f' data-kind="{escape(self.kind)}" data-round="{escape(self.round)}" '
            f'data-stitch="{self.stitch}"{stands}'
        )


class Shapes:
    """Forms that are defined once in an SVG and used by a short name."""

    def __init__(self) -> None:
        self._names: dict[tuple[str, bool], str] = {}

    def name(self, way: str, filled: bool = False) -> str:
        """The name of a path, to be stroked or to be filled."""
        return self._names.setdefault((way, filled), f"s{len(self._names) + 1}")

    def definitions(self) -> str:
        """All of them, defined."""
        paths = (
            f'<path id="{name}" {"stroke" if filled else "fill"}="none" d="{way}"/>'
            for (way, filled), name in self._names.items()
        )
        return f"<defs>{''.join(paths)}</defs>"


@dataclass(slots=True)
class Pen:
    """Draws signs in units, y down."""

    shapes: Shapes
    _parts: list[str] = field(default_factory=list)
    _colour: str = ""
    _xs: list[float] = field(default_factory=list)
    _ys: list[float] = field(default_factory=list)

    def colour(self, colour: str) -> None:
        """Draw on in another colour."""
        if colour != self._colour:
            self._parts.append(f'{"</g>" if self._colour else ""}<g stroke="{colour}" fill="{colour}">')
            self._colour = colour

    def stitch(self, sign: Sign, foot: Point, top: Point, mark: Mark) -> None:
        """A sign between its foot and its top."""
        self._use(
            self.shapes.name(lines(sign)), _between(foot, top, height_of(sign.kind)), str(mark), foot, top
        )

    def gathered(self, sign: Sign, feet: list[Point], top: Point, mark: Mark) -> None:
        """A stitch with a leg in each of several places, their heads together."""
        tall = height_of(sign.kind)
        leg = self.shapes.name(stem(sign.kind) if head(sign.kind) else f"M0 0V{number(-tall)}")
        bar = self.shapes.name(head(sign.kind) or f"M-2.6 {number(2 - tall)}h5.2")
        middle = (sum(x for x, _ in feet) / len(feet), sum(y for _, y in feet) / len(feet))
        self._parts.append(f"<g{mark}>")
        for foot in feet:
            self._use(leg, _between(foot, top, tall), "", foot, top)
        self._use(bar, _between(middle, top, tall), "", middle, top)
        self._parts.append("</g>")

    def chain(self, middle: Point, along: Point, mark: Mark | None, long: float = CHAIN_LONG) -> None:
        """An oval that lies in the direction of `along`. long: its length."""
        self._use(self.shapes.name(CHAIN), _lying(middle, along, long / CHAIN_LONG), str(mark or ""), middle)

    def picot(self, foot: Point, up: Point, chains: int, mark: Mark) -> None:
        """Chains in a ring above a place, a dot at the foot."""
        length = hypot(*up) or 1.0
        ux, uy = up[0] / length, up[1] / length
        self._parts.append(f"<g{mark}>")
        for at in range(chains):
            side, rise = _RING[at * len(_RING) // chains]
            middle = (foot[0] + ux * rise - uy * side, foot[1] + uy * rise + ux * side)
            self.chain(middle, (ux * side - uy * (5 - rise), uy * side + ux * (5 - rise)), None, 5.0)
        self.dot(foot, None)
        self._parts.append("</g>")

    def dot(self, middle: Point, mark: Mark | None) -> None:
        """A slip stitch."""
        self._use(self.shapes.name(DOT, filled=True), _moved(middle), str(mark or ""), middle)

    def ring(self, radius: float) -> None:
        """A ring about the centre."""
        self._parts.append(f'<circle r="{number(radius)}" fill="none"/>')
        self._grow((-radius, -radius), (radius, radius))

    def _use(self, name: str, transform: str, mark: str, *points: Point) -> None:
        self._parts.append(f'<use href="#{name}" transform="{transform}"{mark}/>')
        self._grow(*points)

    def _grow(self, *points: Point) -> None:
        for x, y in points:
            self._xs.append(x)
            self._ys.append(y)

    @property
    def box(self) -> Box:
        """Left, top, right, bottom of what is drawn, with room for the widest sign."""
        xs, ys = self._xs or [0.0], self._ys or [0.0]
        return (min(xs) - 5, min(ys) - 5, max(xs) + 5, max(ys) + 5)

    def body(self) -> str:
        """What was drawn."""
        return "".join(self._parts) + ("</g>" if self._colour else "")


_RING = ((-3.4, 5.0), (0.0, 8.4), (3.4, 5.0), (0.0, 2.6))


def _moved(to: Point) -> str:
    return f"translate({_short(to[0])} {_short(to[1])})"


def _short(value: float) -> str:
    """A hundredth of a stitch's width: finer is not seen."""
    return number(round(value, 1))


def _degrees(rise: float, run: float) -> str:
    return str(round(degrees(atan2(rise, run))))


def _between(foot: Point, top: Point, tall: float) -> str:
    dx, dy = top[0] - foot[0], top[1] - foot[1]
    text = _moved(foot)
    angle, stretch = _degrees(dx, -dy), _short(hypot(dx, dy) / tall)
    text += f"rotate({angle})" if angle != "0" else ""
    return text + (f"scale(1 {stretch})" if stretch != "1" else "")


def _lying(middle: Point, along: Point, stretch: float) -> str:
    text = _moved(middle)
    angle, wide = _degrees(along[1], along[0]), number(stretch)
    text += f"rotate({angle})" if angle != "0" else ""
    return text + (f"scale({wide} 1)" if wide != "1" else "")
