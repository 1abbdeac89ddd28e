"""Stitches of one round that cross, drawn: the leg that lies behind is broken where another lies across it.

The hand that works a stitch over others made before comes to lie nearer to the maker; around the back of a
post it lies further off. A row worked from the wrong side shows the other way round. Common practice, no
source.
"""

from collections.abc import Mapping, Sequence
from math import dist

from ..fabric import Made
from .canvas import Point
from .chart_lines import Line
from .crossed import MOST
from .shapes import short
from .signs import HEAD, Sign, bars, grip, head

INNER = 0.06
"""Legs that meet within this share of either end stand side by side; they don't cross."""

HALF_GAP, MOST_GAP = 1.8, 3.4
"""A leg ends so far before the middle of the one that lies across it, more where that crosses it aslant."""

BELOW_A_HEAD, BETWEEN_BARS, BY_A_GAP = 3.4, 2.5, 0.9
"""Slanting bars stand closely below the head, where no leg crosses yet: so far below it and apart, and so far
off a gap, along their leg.
"""

Gap = tuple[float, float]
"""A stretch of a leg, in units from its foot."""


def broken(line: Line, reverse: bool) -> Mapping[int, Sequence[Gap]]:
    """The gaps in the legs of the stitches that cross, by their ids, none in those that lie in front.
    reverse: the round's wrong side faced the maker.
    """
    stand = [thing for thing in line.things if isinstance(thing, Made) and _is_leg(line, thing)]
    found: dict[int, list[Gap]] = {}
    for at, one in enumerate(stand):
        for other in stand[at + 1 : at + MOST]:
            met = _meet(_leg(line, one), _leg(line, other))
            if met is None:
                continue
            found.setdefault(id(one), [])
            found.setdefault(id(other), [])
            back, share = (one, met[0]) if _in_front(other, one, reverse) else (other, met[1])
            foot, top = _leg(line, back)
            middle, half = share * dist(foot, top), min(HALF_GAP / met[2], MOST_GAP)
            found[id(back)].append((middle - half, middle + half))
    return {key: sorted(gaps) for key, gaps in found.items()}


def broken_way(sign: Sign, long: float, gaps: Sequence[Gap]) -> str:
    """A sign with those gaps in its leg, standing on (0, 0), so long; its bars stand clear of them."""
    stem, low = "", 0.6
    for start, end in [*gaps, (long - 0.6, long)]:
        if start > low:
            stem += f"M0 {short(-low)}V{short(-start)}"
        low = max(low, end)
    slants, most = "", long - BELOW_A_HEAD
    for _ in bars(sign.kind):
        up = _clear(most, gaps)
        slants += f"M-2.4 {short(1.1 - up)}l4.8 -2.2"
        most = up - BETWEEN_BARS
    return f"{stem}{slants}M-{HEAD} {short(0.6 - long)}h{2 * HEAD}{grip(sign)}"


def _clear(most: float, gaps: Sequence[Gap]) -> float:
    """How far up a bar stands: so far at most, or below the gaps that lie there."""
    for low, high in reversed(gaps):
        if low - BY_A_GAP < most < high + BY_A_GAP:
            most = low - BY_A_GAP
    return max(most, BETWEEN_BARS)


def _is_leg(line: Line, made: Made) -> bool:
    return len(line.feet.get(id(made), ())) == 1 and not made.form and bool(head(made.kind))


def _leg(line: Line, made: Made) -> tuple[Point, Point]:
    return line.feet[id(made)][0], line.heads[id(made)]


def _in_front(other: Made, one: Made, reverse: bool) -> bool:
    """Whether one stitch lies in front of another, as the right side shows it."""
    later, earlier = (other, one) if other.number > one.number else (one, other)
    over = (later.post != "back") != reverse
    return (later if over else earlier) is other


def _meet(one: tuple[Point, Point], other: tuple[Point, Point]) -> tuple[float, float, float] | None:
    """Where two legs cross: the share of each from its foot, and how squarely (0 to 1); None where they don't
    cross.
    """
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    x, y, u, v = bx - ax, by - ay, dx - cx, dy - cy
    across = x * v - y * u
    square = abs(across) / ((dist(*one) * dist(*other)) or 1.0)
    if square < 0.1:
        return None
    s = ((cx - ax) * v - (cy - ay) * u) / across
    t = ((cx - ax) * y - (cy - ay) * x) / across
    inner = INNER < s < 1 - INNER and INNER < t < 1 - INNER
    return (s, t, square) if inner else None
