"""Forms that a drawing defines once, and how they are put in their places."""

import re
from math import hypot

from .canvas import Point, number

_NUMBER = r"(-?[\d.]+)"
_BAR = re.compile(rf"-?[\d. -]+(?:m[\d. -]+)?(?:h{_NUMBER}|l{_NUMBER} {_NUMBER}|L{_NUMBER} {_NUMBER})")

LONGEST_BAR = 8.0
"""A straight stroke that is no longer, in units, is a bar across a stem or the head of one."""


class Shapes:
    """Forms that are defined once in an SVG and used by a short name."""

    def __init__(self) -> None:
        self._names: dict[tuple[str, bool, int, str], str] = {}

    def name(self, way: str, filled: bool = False, turned: int = 0, scale: str = "") -> str:
        """The name of a path, to be stroked or to be filled, turned by so many degrees; scale: of a stretched
        one, as in its transform.
        """
        return self._names.setdefault((way, filled, turned, scale), f"s{len(self._names) + 1}")

    def copy(self) -> "Shapes":
        """The same forms, to which others can be added."""
        other = Shapes()
        other._names.update(self._names)
        return other

    def take_up(self, copied: "Shapes") -> None:
        """The forms that a copy of these has more."""
        self._names.update(copied._names)

    def definitions(self, dashed: bool = False) -> str:
        """All of them, defined. dashed: some are used in dashed strokes, which leave bars whole."""
        paths = (
            stroked(way, f' id="{name}"{turning(angle, scale)}', dashed)
            if not filled
            else f'<path id="{name}" stroke="none"{turning(angle, scale)} d="{way}"/>'
            for (way, filled, angle, scale), name in self._names.items()
        )
        return f"<defs>{''.join(paths)}</defs>"


def stroked(way: str, more: str, dashed: bool) -> str:
    """A path to be stroked, with more attributes. dashed: it may be; its bars stay whole all the same, since
    how many there are is what the sign says.
    """
    parts = [f"M{part}" for part in way.split("M") if part]
    bars = [part for part in parts if is_bar(part)] if dashed else []
    rest = "".join(part for part in parts if part not in bars)
    if not bars or not rest:
        return f'<path fill="none"{more} d="{way}"/>'
    return f'<g fill="none"{more}><path d="{rest}"/><path stroke-dasharray="none" d="{"".join(bars)}"/></g>'


def is_bar(way: str) -> bool:
    """Whether a path is one short straight stroke."""
    found = _BAR.fullmatch(way[1:])
    if found is None:
        return False
    across, right, down, x, y = found.groups()
    if across is not None:
        return abs(float(across)) <= LONGEST_BAR
    if right is not None:
        return hypot(float(right), float(down)) <= LONGEST_BAR
    start = [float(value) for value in way[1:].partition("L")[0].split()]
    return hypot(float(x) - start[0], float(y) - start[1]) <= LONGEST_BAR


def turning(angle: int, scale: str) -> str:
    """An attribute that turns and stretches a shape where it is defined."""
    way = (f"rotate({angle})" if angle else "") + scale
    return f' transform="{way.strip()}"' if way else ""


def moved(to: Point) -> str:
    """The way to a place, as in a transform."""
    return f"translate({short(to[0])} {short(to[1])})"


def placed(to: Point, angle: int = 0, scale: str = "") -> str:
    """Attributes that put a shape in its place, turned by whole degrees; as short as they can be."""
    if not angle and not scale:
        return f' x="{short(to[0])}" y="{short(to[1])}"'
    turned = f" rotate({angle})" if angle else ""
    return f' transform="{moved(to)}{turned}{scale}"'


def short(value: float) -> str:
    """To a hundredth of a stitch's width: finer is not seen."""
    return number(round(value, 1))
