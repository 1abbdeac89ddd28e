"""The signs of the diagram, as lines in units of a tenth of a stitch's width.

The forms follow common practice, as trade tables and needlework books give them: an open oval for a chain, a
dot for a slip stitch, x for a single crochet, T for a half double, and a T with one slanting bar for each
yarn over from the double on. Signs are not standardised, so every diagram prints its key. Each sign stands
on its foot at (0, 0) and reaches up to (0, -height).
"""

import re
from dataclasses import dataclass
from functools import cache

from .. import trade
from .canvas import number

UNIT = 10.0
"""A stitch's width."""

SLIP_HEIGHT = 4.0
_HALF_HEIGHT = 14.0
_TALL_HEIGHT = 19.0
_A_YARN_OVER = 6.0

CHAIN_LONG, CHAIN_THICK = 7.6, 3.8
CHAIN = "M-3.8 0a3.8 1.9 0 1 0 7.6 0a3.8 1.9 0 1 0 -7.6 0z"
SHORT_CHAIN = "M-2.7 0a2.7 1.6 0 1 0 5.4 0a2.7 1.6 0 1 0 -5.4 0z"
"""Ovals about their own middle, lying along the line of work: in a stack or a picot they are shorter."""

DOT = "M-1.7 0a1.7 1.7 0 1 0 3.4 0a1.7 1.7 0 1 0 -3.4 0z"
"""About its own middle, to be filled."""

_DOT_STROKES = (1.25, 0.45)
"""Circles whose strokes fill a dot, where it is one path with what is only stroked."""

CROSS = "M-3.2 -3.2L3.2 3.2M3.2 -3.2L-3.2 3.2"
"""About its own middle."""

ARROW = "M-2.4 -1.7L2.4 0L-2.4 1.7z"
"""About its own middle, pointing to the right, to be filled."""

CROSS_REACH = 3.6
"""All ink of a cross lies within so much of its middle, but for the tips of its arms."""

MAGIC_RING = 5.0
HEAD = 3.4
_CROSS = 3.2
_GATHERED_BARS = 2.6
_PLACED, _NUMBER = re.compile("([MLQV])([^A-Za-z]*)"), re.compile(r"-?\d*\.?\d+")
_GATHERED = ("bobble", "cluster", "popcorn", "tog")


@dataclass(frozen=True, slots=True)
class Sign:
    """What a stitch looks like: its kind (a neutral key) and how it is made.

    form, legs: as in Made; legs 0 where a stitch leans on several places and each leg is drawn by itself.
    """

    kind: str
    form: str = ""
    legs: int = 0
    loop: str = ""
    post: str = ""


@cache
def height_of(kind: str) -> float:
    """How tall a stitch's sign is: taller stitches have taller signs."""
    if kind == "slip":
        return SLIP_HEIGHT
    overs = _yarn_overs(kind)
    if not overs or _base(kind) == "single":
        return UNIT
    if _base(kind) == "half":
        return _HALF_HEIGHT
    return _TALL_HEIGHT + _A_YARN_OVER * (overs - 1)


@cache
def _yarn_overs(kind: str) -> int:
    return next((row.yarn_overs or 0 for row in trade.stitches() if row.key == kind), 1)


_MADE_OF = ("extended", "foundation", "loop", "reverse")
"""What a plain stitch's key begins with where it is made in an unusual way."""


def _base(kind: str) -> str:
    """`half` for extended and foundation halves too."""
    return kind.rpartition("-")[2] if kind.startswith(_MADE_OF) else kind


@cache
def lines(sign: Sign) -> str:
    """The sign as an SVG path to be stroked."""
    tall = height_of(sign.kind)
    if sign.form in _GATHERED and sign.legs > 1:
        body = _gathered(sign, tall)
    elif sign.form == "puff":
        body = f"M0 0Q-4 {number(-tall / 2)} 0 {number(-tall)}Q4 {number(-tall / 2)} 0 0M0 0V{number(-tall)}"
    else:
        body = stem(sign.kind) + head(sign.kind)
    return body + grip(sign)


@cache
def longer(way: str, by: float) -> str:
    """A sign's path so many times as tall, its bars and hooks of the same size and stroke: these are drawn
    from where they begin, so only such places move.
    """
    return _PLACED.sub(lambda part: part[1] + _moved(part[1], part[2], by), way)


def _moved(letter: str, numbers: str, by: float) -> str:
    found = [float(part) for part in _NUMBER.findall(numbers)]
    ups = [value * by if letter == "V" or at % 2 else value for at, value in enumerate(found)]
    return " ".join(number(value) for value in ups)


@cache
def stem(kind: str) -> str:
    """One leg of a stitch, without its head: an x, or a stem with a bar for each yarn over."""
    tall = height_of(kind)
    middle = -tall / 2
    if kind == "slip":
        return "".join(
            f"M{number(-r)} {number(middle)}a{number(r)} {number(r)} 0 1 0 {number(2 * r)} 0"
            f"a{number(r)} {number(r)} 0 1 0 {number(-2 * r)} 0z"
            for r in _DOT_STROKES
        )
    if kind == "knot":
        return f"M0 0Q-5 {number(middle)} 0 {number(-tall)}Q5 {number(middle)} 0 0"
    if not _known(kind):
        return f"M0 0L-3.5 {number(middle)}L0 {number(-tall)}L3.5 {number(middle)}z"
    if is_cross(kind):
        return _single(kind, tall)
    slants = "".join(f"M-2.4 {number(up + 1.1)}l4.8 -2.2" for up in bars(kind))
    return f"M0 -0.6V{number(0.6 - tall)}{slants}{_by_the_way(kind, tall)}"


def bars(kind: str) -> list[float]:
    """How far below its head (negative, from its foot up) a stitch has its slanting bars, one a yarn over."""
    if is_cross(kind) or not _known(kind) or kind in ("slip", "knot") or _base(kind) == "half":
        return []
    many, tall = _yarn_overs(kind), height_of(kind)
    step = min(4.2, tall * 0.5 / max(many, 1))
    return [-tall * 0.72 + step * at for at in range(many)]


def _single(kind: str, tall: float) -> str:
    up, low = number(-tall / 2 - _CROSS), number(-tall / 2 + _CROSS)
    cross = f"M-3.2 {up}L3.2 {low}M3.2 {up}L-3.2 {low}"
    if kind.startswith("reverse"):
        return f"{cross}M-3.2 {number(-tall)}q1.6 -2 3.2 0t3.2 0"
    return f"{cross}{_by_the_way(kind, tall)}"


def _by_the_way(kind: str, tall: float) -> str:
    """What marks a stitch begun or made in an unusual way: a bar at the foot, an oval, a link to the left, a
    loop that hangs from its middle."""
    if kind.startswith("extended"):
        return "M-2.6 -1.4h5.2"
    if kind.startswith("foundation"):
        return "M-2.6 0a2.6 1.3 0 1 0 5.2 0a2.6 1.3 0 1 0 -5.2 0z"
    if kind.startswith("loop"):
        return f"M0 {number(-tall / 2)}C-4.6 -0.4 -1.8 0.6 0 0.6S4.6 -0.4 0 {number(-tall / 2)}"
    if kind.startswith("linked"):
        return f"M0 {number(-tall * 0.4)}h-4.4"
    return ""


@cache
def head(kind: str) -> str:
    """The bar across the top of a T; nothing for the others."""
    if not _known(kind) or is_cross(kind) or kind in ("slip", "knot"):
        return ""
    return f"M-{HEAD} {number(0.6 - height_of(kind))}h{2 * HEAD}"


@cache
def is_cross(kind: str) -> bool:
    """Whether the sign is an x, which stands upright wherever its foot is."""
    return _known(kind) and _base(kind) == "single"


@cache
def _known(kind: str) -> bool:
    return any(row.key == kind for row in trade.stitches())


def _gathered(sign: Sign, tall: float) -> str:
    """Stems joined at both ends with their bars; a popcorn's under an oval."""
    parts, many = [], len(bars(sign.kind))
    for leg in range(sign.legs):
        bow = number((leg / (sign.legs - 1) - 0.5) * 11)
        parts.append(f"M0 0Q{bow} {number(-tall / 2)} 0 {number(-tall)}")
        at = number((leg / (sign.legs - 1) - 0.5) * 5.5)
        for bar in range(many):
            up = -tall * 0.5 + ((many - 1) / 2 - bar) * _GATHERED_BARS
            parts.append(f"M{at} {number(up)}m-1.2 .6l2.4 -1.2")
    if sign.form == "popcorn":
        parts.append(f"M-3.4 {number(-tall)}a3.4 1.6 0 1 0 6.8 0a3.4 1.6 0 1 0 -6.8 0z")
    else:
        parts.append(f"M-2.4 {number(-tall)}h4.8")
    return "".join(parts)


@cache
def grip(sign: Sign) -> str:
    """What shows where the hook goes in: a hook at the foot for a post, an arc under the sign for a loop."""
    parts = ""
    if sign.post == "front":
        parts += "M0 -.6c0 3 3.6 3 3.6 0"
    elif sign.post == "back":
        parts += "M0 -.6c0 3 -3.6 3 -3.6 0"
    elif sign.post:
        parts += "M-2.4 -.6c0 2.4 4.8 2.4 4.8 0"
    if sign.loop == "front":
        parts += "M-3.4 0q3.4 3.6 6.8 0"
    elif sign.loop == "back":
        parts += "M-3.4 2q3.4 -3.6 6.8 0"
    elif sign.loop:
        parts += "M-3.4 1.4h6.8"
    return parts
