"""Every sign that a chart may hold, one by one, with its names on both sides of the Atlantic."""

from collections.abc import Iterator
from dataclasses import dataclass

from .. import trade
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import number
from .chart_key import PICOT, PICOT_CHAINS
from .drawn_together import drawn_together
from .pen import picot_way
from .signs import CHAIN, DOT, MAGIC_RING, Sign, height_of, lines
from .sketch import STYLE, painted

_MADE_OTHERWISE = (
    Sign("slip", loop="front"),
    Sign("slip", loop="back"),
    Sign("double", loop="front"),
    Sign("double", loop="back"),
    Sign("double", loop="third"),
    Sign("double", post="front"),
    Sign("double", post="back"),
    Sign("double", form="cluster", legs=3),
    Sign("double", form="bobble", legs=5),
    Sign("half", form="puff", legs=3),
    Sign("double", form="popcorn", legs=5),
)
"""The same stitch in one loop, around a post, several in one place: the other stitches have theirs alike."""

_TOGETHER = (Sign("single", "tog", 2), Sign("double", "tog", 2), Sign("double", "tog", 3))
"""Stitches drawn together over several places: the others have theirs alike."""

_WIDE, _FEET = 14.0, 10.0
"""How wide a sign's drawing is, and how far apart the outer feet of stitches drawn together stand."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A sign and what it is called: `dc, double crochet`. other: in the other terms, "" where they agree."""

    svg: str
    name: str
    other: str


def symbols(terms: Terms) -> tuple[Symbol, ...]:
    """All signs: ring, chain, slip stitch, the stitches by height, those made otherwise, several drawn
    together, and the picot.
    """
    return tuple(_symbols(terms))


def _symbols(terms: Terms) -> Iterator[Symbol]:
    radius = MAGIC_RING - 1
    ring = f"M-{radius} 0a{radius} {radius} 0 1 0 {2 * radius} 0a{radius} {radius} 0 1 0 -{2 * radius} 0z"
    yield Symbol(_svg(ring, -radius, radius), "magic ring", "")
    yield _symbol(Sign("chain"), terms, _svg(CHAIN, -4.0, 4.0))
    yield _symbol(Sign("slip"), terms, _svg(DOT, -4.0, 4.0, filled=True))
    for row in trade.stitches():
        if row.key not in ("chain", "slip"):
            yield _symbol(Sign(row.key), terms)
    for sign in _MADE_OTHERWISE:
        yield _symbol(sign, terms)
    for sign in _TOGETHER:
        tall = height_of(sign.kind)
        feet = [(_FEET * (leg / (sign.legs - 1) - 0.5), tall) for leg in range(sign.legs)]
        yield _symbol(sign, terms, _svg(drawn_together(sign.kind, feet), -1.0, tall))
    yield Symbol(_svg(picot_way(PICOT_CHAINS), -11.0, 1.0), PICOT, "")


def _symbol(sign: Sign, terms: Terms, svg: str = "") -> Symbol:
    other: Terms = "UK" if terms == "US" else "US"
    named, away = _name(sign, terms), _name(sign, other)
    return Symbol(
        svg or _svg(lines(sign), -height_of(sign.kind) - 1.0, 3.5), named, away if away != named else ""
    )


def _name(sign: Sign, terms: Terms) -> str:
    stitch = Stitch(sign.kind, sign.form, sign.legs, sign.loop, sign.post)
    names = dict.fromkeys(stitch_name(stitch, terms, full) for full in (False, True))
    loop = f" in the {sign.loop} loop" if sign.loop else ""
    return ", ".join(names) + loop


def _svg(way: str, top: float, low: float, filled: bool = False) -> str:
    """A sign by itself, standing on the line that it shares with the others."""
    paint = painted(fill="ink") if filled else painted("ink") + ' fill="none"'
    paint = paint.replace('stroke-width=".5"', 'stroke-width=".9"')
    top, low = top - 1.0, low + 1.0
    high = number(low - top)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="-{_WIDE / 2} {number(top)} {_WIDE} {high}" '
        f'width="{_WIDE}" height="{high}" aria-hidden="true" stroke-linecap="round" '
        f'stroke-linejoin="round">{STYLE}<path {paint} d="{way}"/></svg>'
    )
