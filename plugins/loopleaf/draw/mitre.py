"""Rows with a corner: each gathers or gains two stitches in its middle, so that the cloth is a square with
its rows around two of its sides.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..fabric import Made, WorkedRound
from .canvas import Point
from .chart_things import shared
from .subject import Subject

FEWEST = 4
"""Fewer rows than this have no corner."""

A_ROW = 2
"""So many stitches a row fewer or more make a right angle, as each is about as wide as it is high."""

SQUARE = (0.7, 1.4)
"""What a row gains or loses, of twice its height: else the corner isn't square."""

MIDDLE = 0.1
"""The corner lies so near to the middle of its row, as a share of it, or within one stitch."""


@dataclass(frozen=True, slots=True)
class Mitre:
    """A square of rows around a corner, their right side to the viewer. leg: from the corner to either end of
    the first row's foot, in mm. inward: rows grow towards the inner side of the corner, which lies at the
    lower left, and get shorter; else outwards, to the upper right.
    """

    leg: float
    inward: bool

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: rows of any width are eased along both sides, their corner at a half; at a
        height in mm.
        """
        along = min(max(along, 0.0), 1.0)
        leg = max(self.leg - high if self.inward else self.leg + high, 0.0)
        right, up = (max(2 * along - 1, 0.0) * leg, max(1 - 2 * along, 0.0) * leg)
        return (high + right, high + up) if self.inward else (high - up, high - right)


def mitre_of(subject: Subject) -> Mitre | None:
    """The corner that most rows have; None for rows without one."""
    if not subject.in_rows or len(subject.worked) < FEWEST:
        return None
    rows = [_stitches(one) for one in subject.worked]
    turns = [*_turns(rows)]
    for inward in (True, False):
        if turns.count(inward) >= len(turns) - 1 and _square(subject):
            last = subject.sizes[-1]
            return Mitre(last.length_mm / 2 + last.height_mm * (1 if inward else -1), inward)
    return None


def _stitches(worked: WorkedRound) -> list[Made]:
    """The counted stitches of a row."""
    return [made for made in worked.made if isinstance(made, Made) and made.number]


def _turns(rows: Sequence[Sequence[Made]]) -> Iterator[bool | None]:
    """For each row after the first whether it loses stitches in its middle (True) or gains them there
    (False); None for other rows.
    """
    for below, row in pairwise(rows):
        change = len(row) - len(below)
        many = [len(one.into) - 1 for one in row] if change < 0 else [*_extra(row)]
        at = [i for i, more in enumerate(many) if more]
        close = max(MIDDLE * len(many), 1.0)
        middle = bool(at) and all(abs(i - (len(many) - 1) / 2) <= close for i in at)
        yield change < 0 if middle and abs(change) == A_ROW == sum(many) else None


def _extra(row: Sequence[Made]) -> Iterator[int]:
    """Of each stitch, how many more its place holds, told of the first of them."""
    keys = [shared(made) or id(made) for made in row]
    for at, key in enumerate(keys):
        yield keys.count(key) - 1 if keys.index(key) == at else 0


def _square(subject: Subject) -> bool:
    """Whether what rows gain or lose is about twice their height."""
    first, last = subject.sizes[0], subject.sizes[-1]
    deep = 2 * (last.height_mm - first.height_mm)
    low, high = SQUARE
    return low * deep < abs(last.length_mm - first.length_mm) < high * deep
