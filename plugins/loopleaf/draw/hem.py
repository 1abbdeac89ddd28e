"""The edging of a piece worked corner to corner: rows that go on from the last of its blocks.

Where the blocks end in a corner and the row has far more stitches than the last block offers, it goes all
around; else along the last row of blocks.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from math import dist, sqrt
from operator import sub
from typing import NamedTuple

from ..fabric import Made, Space, WorkedRound
from ..fabric.squares import Block
from .canvas import Point
from .signing import between

AROUND = 3
"""A row of so many times the last block's stitches goes all around."""

CLEAR = 3.0
"""Stitches that stand upright are so far from a corner, in units, that those of two sides don't touch."""


@dataclass(frozen=True, slots=True)
class Way:
    """Straight stretches from corner to corner, in the order worked, as the right side shows it: a row made
    with that side up goes to the left.
    """

    corners: Sequence[Point]

    @property
    def long(self) -> float:
        """Its length."""
        return sum(dist(start, end) for start, end in pairwise(self.corners))

    def at(self, share: float) -> Point:
        """The point after a share of it."""
        left = share * self.long
        for start, end in pairwise(self.corners):
            long = dist(start, end)
            if left <= long:
                return between(start, end, left / (long or 1.0))
            left -= long
        return self.corners[-1]


def stitches_of(worked: WorkedRound) -> list[Made | Space]:
    """What a row has side by side, in the order made."""
    return [made for made in worked.made if isinstance(made, Space) or made.number]


@dataclass(frozen=True, slots=True)
class Hem:
    """A row of the edging. things: what it has side by side, in the order made; tall: how high it stands;
    long: the room it needs; right: made with the right side up; lead: the room before its first stitch.
    """

    things: Sequence[Made | Space]
    tall: float
    long: float
    right: bool
    lead: float = 0.0


class Post(NamedTuple):
    """Where a stitch stands on a row's lower edge. along, out: the directions of the work and of its growth;
    room: how much of the edge is its own.
    """

    foot: Point
    along: Point
    out: Point
    room: float

    def at(self, up: float, aside: float = 0.0) -> Point:
        """The point so far up from its foot, and so far aside in the direction of the work."""
        (x, y), (dx, dy), (ox, oy) = self.foot, self.along, self.out
        return (x + up * ox + aside * dx, y + up * oy + aside * dy)


def posts(hem: Hem, lower: Way) -> list[Post]:
    """Where a row's stitches stand: evenly and upright on each straight stretch, none in its corners."""
    sides = list(pairwise(lower.corners))
    leads = [hem.lead, *[0.0] * (len(sides) - 1)]
    longs = [dist(*side) - lead for side, lead in zip(sides, leads, strict=True)]
    ends = [round(len(hem.things) * share / sum(longs)) for share in accumulate(longs, initial=0.0)]
    found: list[Post] = []
    for (start, end), lead, long, many in zip(sides, leads, longs, map(sub, ends[1:], ends), strict=True):
        whole = dist(start, end)
        along = ((end[0] - start[0]) / whole, (end[1] - start[1]) / whole)
        out = (along[1], -along[0]) if hem.right else (-along[1], along[0])
        clear = CLEAR if len(sides) > 1 and many > 1 else long / max(many, 1) / 2
        room = (long - 2 * clear) / max(many - 1, 1)
        for at in range(many):
            found.append(Post(between(start, end, (lead + clear + room * at) / whole), along, out, room))
    return found


def goes_around(rows: Sequence[Sequence[Block]], hems: Sequence[Hem]) -> bool:
    """Whether the edging goes around the whole piece."""
    return len(rows[-1]) == 1 and len(hems[0].things) >= AROUND * len(rows[-1][0].stitches)


def ways(
    rows: Sequence[Sequence[Block]], side: float, hems: Sequence[Hem], sunk: float = 0.0
) -> Iterator[tuple[Way, Way]]:
    """The lower and the upper edge of each row. sunk: how far what goes along a slanting edge lies between
    the corners of the blocks.
    """
    squares = [block.square for row in rows for block in row]
    wide, high = (side * (max(square[axis] for square in squares) + 1) for axis in (0, 1))
    last = rows[-1]
    around = goes_around(rows, hems)
    out = max((hems[0].long - 2 * (wide + high)) / 8, 0.0) if around else 0.0
    for hem in hems:
        found: list[Way] = []
        for reach in (out, out + hem.tall):
            if around:
                way = _around(wide, high, reach)
            elif len(last) == 1:
                way = _on(last[0], side, reach, hem.long)
            else:
                way = _slanting(sorted(block.square for block in last), side, reach - sunk, hem.long)
            found.append(way if hem.right else Way(way.corners[::-1]))
        yield found[0], found[1]
        out += hem.tall


def _on(block: Block, side: float, out: float, long: float) -> Way:
    """Along the heads of one block, to the left or upwards."""
    (x, y), short = block.square, max(long - side, 0.0) / 2
    if block.upright:
        high = (y + 1) * side + out
        return Way([((x + 1) * side + short, high), (x * side - short, high)])
    across = (x + 1) * side + out
    return Way([(across, y * side - short), (across, (y + 1) * side + short)])


def _around(wide: float, high: float, out: float) -> Way:
    """From the upper right corner, where the last block lies, counter-clockwise."""
    far, top = wide + out, high + out
    return Way([(far, top), (-out, top), (-out, -out), (far, -out), (far, top)])


def _slanting(ends: Sequence[tuple[int, int]], side: float, out: float, long: float) -> Way:
    """Along the corners of the last row's blocks, from the lower right to the upper left."""
    (left, top), (right, low) = ends[0], ends[-1]
    short = max(long / sqrt(2) - (right - left + 1) * side, 0.0) / 2
    shift = out / sqrt(2)
    return Way(
        [
            ((right + 1.5) * side + shift + short, (low + 0.5) * side + shift - short),
            ((left + 0.5) * side + shift - short, (top + 1.5) * side + shift + short),
        ]
    )
