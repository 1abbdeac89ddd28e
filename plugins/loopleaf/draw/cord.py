"""A cord that is only a chain: its links in a row as a chart, and as it lies in a picture; its length."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, pi, sin, sqrt

from ..fabric import PatternWork
from ..measure import Measured, amounts
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..pattern import Yarn
from .canvas import Canvas, Point
from .chain_line import THICK, draw_chain
from .colour import UNDYED
from .pen import Mark, Pen
from .signs import CHAIN_LONG, UNIT
from .subject import NO_GAUGE

SHOWN, AT_ENDS = 48, 12
"""So many chains are drawn all; of more, so many at each end, with dots between them."""

DOTS = 3

BEND = 4.2
"""The radius of its bends in a picture, in its own thickness."""

WIDE = 3.6
"""In a picture its lanes are so long, for each radius and each lane: about twice as wide as high."""


@dataclass(frozen=True, slots=True)
class Cord:
    """chains: how many, None where no gauge tells. length_mm: in the first size; lengths: in all, in words.
    link_mm: how long a chain is. colour: of its yarn.
    """

    chains: int | None
    length_mm: float
    lengths: str
    link_mm: float
    colour: str

    @property
    def told(self) -> str:
        """Its measures, as a sentence."""
        chains = f"About {self.chains} chains: " if self.chains else ""
        words = f"{chains}{self.lengths} long."
        return words[0].upper() + words[1:]


def cord_of(work: PatternWork, name: str, measured: Measured) -> Cord | None:
    """The chain cord that a piece is; None for what has rounds, or where its length isn't known."""
    model, piece = work.pattern.pieces.get(name), work.piece(name)
    if model is None or model.worked != "chain" or (piece is not None and piece.rounds):
        return None
    found = [next((one for one in size if one.piece == name), None) for size in measured.cords]
    first = found[0] if found else None
    if first is None:
        return None
    own = measured.piece(name)
    scale = own.scale if own is not None and own.scale is not None else NO_GAUGE
    known = work.pattern.materials.yarns if work.pattern.materials is not None else {}
    yarn: Yarn | None = known.get(model.yarn) or next(iter(known.values()), None)
    colour = yarn.colour if yarn is not None and yarn.colour else UNDYED
    lengths = amounts.lengths(tuple(one.length_mm if one is not None else None for one in found))
    return Cord(first.chains, first.length_mm, lengths, scale.width_mm, colour)


# ---- as a chart -----------------------------------------------------------------------------------


def draw_links(pen: Pen, cord: Cord, work: PatternWork) -> None:
    """Its chains in a row, one after the other from the right; of many those at both ends."""
    mark = Mark(stitch_name(Stitch("chain"), work.pattern.terms))
    whole = cord.chains is not None and cord.chains <= SHOWN
    many = cord.chains if whole and cord.chains else 2 * AT_ENDS + DOTS
    for at in range(many):
        middle = ((many / 2 - at - 0.5) * UNIT, 0.0)
        if whole or not AT_ENDS <= at < AT_ENDS + DOTS:
            pen.chain(middle, (1.0, 0.0), mark, CHAIN_LONG)
        else:
            pen.dot(middle, None)


# ---- as it lies -----------------------------------------------------------------------------------


def draw_cord(canvas: Canvas, cord: Cord) -> None:
    """It lies in bends, as long as it is."""
    thick = THICK * cord.link_mm
    links = max(cord.chains or round(cord.length_mm / cord.link_mm), 2)
    draw_chain(canvas, 0, list(_way(cord.length_mm, BEND * thick, links)), cord.colour, thick)


def _way(length: float, radius: float, links: int) -> Iterator[Point]:
    """The ends of its links along lanes that half circles join."""
    lanes = max(round(sqrt(length / (WIDE * radius))), 1)
    bends = pi * radius
    lane = max((length - (lanes - 1) * bends) / lanes, 0.0)
    for link in range(links + 1):
        number, part = divmod(length * link / links, lane + bends)
        if number >= lanes:
            number, part = lanes - 1, lane
        back, high = number % 2, 2 * radius * number
        if part <= lane:
            yield (lane - part if back else part, high)
            continue
        angle = (part - lane) / radius
        aside = radius * sin(angle)
        yield (-aside if back else lane + aside, high + radius * (1 - cos(angle)))
