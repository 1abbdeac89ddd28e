"""Where the signs of a diagram stand: rounds about a centre, rows one above the other.

In units of a tenth of a stitch's width, x to the right and y down. A round lies as far out as its stitches
need, at least the height of its tallest sign beyond the one below; a gap at its start leaves room for
its number. Rows are as wide as their stitches; where they differ little they are stretched to one width, so
that columns stand above each other; where they grow steadily they lie in an arc, as the piece does.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, sin

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .in_rows import sheet_for
from .items import CHAIN_SHARE, Item, items_of_rounds, items_of_rows
from .profile import Ring
from .section import Oval, Polygon, Section
from .signs import MAGIC_RING, SLIP_HEIGHT, UNIT, height_of
from .stand import USUAL_CORNERS, base_spots, chains_of
from .subject import Subject

GAP = 2.2
"""Room at the start of a round, in stitch widths."""

ROOM = 3.0
"""Between one round or row and the next, in units."""

ALIKE = 1.3
"""Rows whose widths differ by less than this share are drawn equally wide."""


@dataclass(frozen=True, slots=True)
class Line:
    """A round or row of the diagram. items: from its start, in the order made.

    tall: height of its tallest sign. wide: length of its way, in units, with the gap.
    """

    items: Sequence[Item]
    tall: float
    wide: float


@dataclass(frozen=True, slots=True)
class Rounds:
    """Rounds about a centre. rings: of each, its inner and outer edge."""

    section: Section
    rings: Sequence[Ring]
    lines: Sequence[Line]

    def point(self, at: int, along: float, up: float) -> Point:
        """A point of a round: a share of its way, so far above the round's lower edge."""
        start, gap = self._start(at)
        return self._point(at, start + gap + (along - start) * (1 - gap), up)

    def before(self, at: int, share: float, up: float) -> Point:
        """A point in the gap before a round's first stitch: from 0, after its last stitch, to 1."""
        start, gap = self._start(at)
        return self._point(at, start + gap * share, up)

    def carried(self, at: int, along: float) -> float:
        """The share of a round's way straight outside of a share of the round below."""
        if not at:
            return along
        return self.section.carried(along, self.rings[at - 1].out1, self.rings[at].out1)

    def _point(self, at: int, along: float, up: float) -> Point:
        ring = self.rings[at]
        x, y = self.section.at(ring.out0 + up, self.section.carried(along, ring.out1, ring.out0 + up))
        return (x, -y)

    def _start(self, at: int) -> tuple[float, float]:
        """Where a round begins, and the share of its way that the gap takes."""
        line = self.lines[at]
        return line.items[0].start if line.items else 0.0, GAP * UNIT / line.wide


@dataclass(frozen=True, slots=True)
class Rows:
    """Rows from the first one up. lows: where each stands; leftward: whether each begins at its right end.

    arc: the radians that rows take which lie in an arc, `lows` away from its middle; 0 for straight rows.
    """

    lows: Sequence[float]
    leftward: Sequence[bool]
    lines: Sequence[Line]
    arc: float

    def point(self, at: int, along: float, up: float) -> Point:
        """A point of a row: a share of its width from the left, so far above its foot."""
        out = self.lows[at] + up
        if not self.arc:
            return ((along - 0.5) * self.lines[at].wide, -out)
        angle = (along - 0.5) * self.arc
        return (out * sin(angle), -out * cos(angle))

    def before(self, at: int, share: float, up: float) -> Point:
        """A point beside a row's start: from 0, a little away, to 1, close to its first stitch."""
        away = UNIT * (0.4 + GAP * (1 - share)) / self.lines[at].wide
        return self.point(at, 1 + away if self.leftward[at] else -away, up)

    def carried(self, at: int, along: float) -> float:
        """The share of a row's width straight above a share of the row below: the same."""
        return along


Places = Rounds | Rows


def places_of(subject: Subject) -> Places:
    """Where the signs of a piece stand."""
    return _rows(subject) if subject.in_rows else _rounds(subject)


def _rounds(subject: Subject) -> Rounds:
    corners = subject.sizes[-1].corners
    section: Section = Oval(max(len(chains_of(subject)) - 1, 0) * UNIT)
    if corners in USUAL_CORNERS:
        section = Polygon(corners)
    rings: list[Ring] = []
    out = MAGIC_RING
    for one in subject.worked:
        tall = _tallest(one)
        units = sum(1 if isinstance(m, Made) else m.chains for m in one.made if _takes_room(m))
        out = max(out + tall + ROOM, section.out_for((units + GAP) * UNIT))
        rings.append(Ring(out - tall, 0.0, out, 0.0))
    base = base_spots(subject, section, rings[0].out1)
    rounds = items_of_rounds(subject.worked, subject.scale, section, rings, base)
    lines = [
        Line(items, ring.out1 - ring.out0, section.way(ring.out1))
        for items, ring in zip(rounds, rings, strict=True)
    ]
    return Rounds(section, rings, lines)


def _rows(subject: Subject) -> Rows:
    leftward = [work.side != "WS" for work in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, leftward, subject.scale, start)
    widths = [_units(items) * UNIT for items in rows]
    arc = sheet_for(subject.sizes).arc
    if not arc and min(widths) * ALIKE > max(widths):
        widths = [max(widths)] * len(widths)
    lows: list[float] = []
    lines: list[Line] = []
    low = ROOM
    for items, one, wide, left in zip(rows, subject.worked, widths, leftward, strict=True):
        low = max(low, wide / arc) if arc else low
        lows.append(low)
        ordered = list(reversed(items)) if left else list(items)
        lines.append(Line(ordered, _tallest(one), arc * low or wide))
        low += _tallest(one) + ROOM
    return Rows(lows, leftward, lines, arc)


def _tallest(worked: WorkedRound) -> float:
    return max(
        (height_of(made.kind) for made in worked.made if isinstance(made, Made) and made.number),
        default=SLIP_HEIGHT,
    )


def _takes_room(made: Made | Space) -> bool:
    return bool(made.number) if isinstance(made, Made) else not made.back


def _units(items: Sequence[Item]) -> float:
    return sum(1 if isinstance(i.thing, Made) else i.thing.chains * CHAIN_SHARE for i in items) or 1.0
