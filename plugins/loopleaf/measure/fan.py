"""Rows that fan out from a point, or draw in to one: how far it is from tip to tip, and how deep the work is.

Rows that grow at their ends only are straight. Where they grow in between they bend: so many stitches g more
in one place, on rows of height h, turn them there by 2·atan(g·w ÷ 2h), and at an end the edge leans out by
atan(g·w ÷ h) (geometry of a row that keeps its distance to the one below). All these angles together are what
the work takes up around the point that it begins at. The last row lies H from that point, the height along
the fabric; it meets an edge H ÷ cos of its lean away, and bends H ÷ cos of half its turn away. Two leans and
half turns of 45° make a right isosceles triangle, twice as wide as deep; many small turns of 180° in all a
half disc, π·r long and 2·r wide. Work that begins at that edge and draws in to the point is the same the
other way about.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from ..fabric.shell_edging import edging_rows
from ..fabric.worked import Made, PieceWork, Place, Space, WorkedRound
from .gauge import Scale
from .size import RoundSize, enclosed
from .units import Band

_TOGETHER = 4.0
"""Stitch widths within which increases are one place, and so near to an end belong to it (chosen here)."""
_GATHERED = 5
"""A last stitch over so many gathers the work; corners are drawn in by fewer at a time (chosen here)."""
_APART = 8
"""A row so many times as long as that tells one place from the next (chosen here)."""
_BENDS = math.radians(30)
"""Rows that turn by less in all count as straight (chosen here)."""
_POINT = 1.25
"""A first row so much longer than a full circle of its height doesn't come out of a point (chosen here)."""
_GROWN = 4.0
"""The last row is so many times as long as the first one at least (chosen here)."""
_MOST = math.tau * 1.25
"""More than that doesn't lie flat around a point."""
_UPRIGHT = math.radians(10)
"""An edge that leans by less stands straight up from its row (chosen here)."""
_SQUARE = (math.radians(70), math.radians(110))
"""The turn between two sides that makes a square of the work (chosen here)."""


@dataclass(frozen=True, slots=True)
class Fan:
    """What rows from a point make. width: from tip to tip; of work that goes more than half around its point,
    across its widest. depth: from the point, which is the middle of the top edge, to the lowest point.
    outline: its corners as (x, y) in mm from the point, from tip to tip, y downwards. diagonal: of a square,
    whose width and depth are its sides and whose outline stands on them; None of others.
    """

    width: Band
    depth: Band
    outline: tuple[tuple[float, float], ...]
    diagonal: Band | None = None


@dataclass(frozen=True, slots=True)
class _Gain:
    """How many mm longer a row is in one place. at: where along it, from 0 to 1."""

    at: float
    mm: float


def fan_of(piece: PieceWork, size: int, rows: Sequence[RoundSize | None], scale: Scale) -> Fan | None:
    """The fan of a piece in rows, in one size; None where its rows are straight or come out of no point.

    rows: the piece's, measured, None where the size has no such row.
    """
    body = [
        (work.sizes[size], one)
        for work, one in zip(piece.rounds, rows, strict=True)
        if one is not None and one.aside is None
    ]
    if len(body) < 3 or any(one.on or one.blocks or not one.length_mm for _, one in body):
        return None
    first, last = body[0][1], body[-1][1]
    inwards = _is_point(last, first)
    ending = body[-1][0]
    if inwards and ending is not None and is_gathered(ending):
        return None
    if not inwards and not _is_point(first, last):
        return None
    edging = edging_rows([work for work, _ in body if work is not None])
    gains, rise_mm = _all_gains(body[: len(body) - edging], scale)
    if not rise_mm:
        return None
    whole = enclosed([one for one in rows if one is not None])[-1]
    aside = [one for one in rows if one is not None and one.aside is not None and one.aside.sides]
    above = sum((Band.about(one.rise_mm, one.height.off) for one in aside), Band(0.0, 0.0))
    leans = [(-gain.mm if inwards else gain.mm) / rise_mm for gain in gains]
    if _bends(leans) < _BENDS or sum(_turns(leans)) > _MOST:
        return None
    off = last.length.off
    if _is_square(leans):
        by_rows, by_height = (first if inwards else whole).length * 0.5, whole.height
        side = Band(min(by_rows.low, by_height.low), max(by_rows.high, by_height.high))
        mm = side.middle
        return Fan(side, side, ((0.0, mm), (mm, mm), (mm, 0.0)), side * math.sqrt(2))
    made = [
        _extent(_outline([lean * share for lean in leans], high))
        for high in (whole.height.low, whole.height.high)
        for share in (1 - off, 1 + off)
    ]
    width, depth = (Band(min(side), max(side)) for side in zip(*made, strict=True))
    return Fan(width, depth + above, tuple(_outline(leans, whole.height.middle)))


def is_gathered(row: WorkedRound) -> bool:
    """Whether a last row draws so much together at once that it gathers the cloth rather than shapes it."""
    return any(isinstance(one, Made) and len(one.into) >= _GATHERED for one in row.made)


def _is_point(one: RoundSize, other: RoundSize) -> bool:
    """Whether one row is so short that the work comes out of a point there, and grows to the other."""
    return one.length_mm <= _POINT * math.tau * one.rise_mm and other.length_mm >= _GROWN * one.length_mm


# ---- angles ---------------------------------------------------------------------------------------


def _turns(leans: Sequence[float]) -> list[float]:
    """The angles around the point: the lean of one edge, the turns between, the lean of the other edge.

    leans: mm of length for each mm of height, in the order of the row.
    """
    inner = [2 * math.atan(lean / 2) for lean in leans[1:-1]]
    return [math.atan(leans[0]), *inner, math.atan(leans[-1])]


def _bends(leans: Sequence[float]) -> float:
    return sum(_turns(leans)[1:-1])


def _is_square(leans: Sequence[float]) -> bool:
    first, *inner, last = _turns(leans)
    bends = [turn for turn in inner if abs(turn) > _UPRIGHT]
    upright = abs(first) <= _UPRIGHT and abs(last) <= _UPRIGHT
    return upright and len(bends) == 1 and _SQUARE[0] <= bends[0] <= _SQUARE[1]


def _outline(leans: Sequence[float], high_mm: float) -> list[tuple[float, float]]:
    """The corners of the last row around the point, from tip to tip, its middle hanging down."""
    first, *inner, last = _turns(leans)
    turn = -(first + sum(inner) + last) / 2
    corners = [(turn, high_mm / math.cos(first))]
    turn += first
    for bend in inner:
        corners.append((turn + bend / 2, high_mm / math.cos(bend / 2)))
        turn += bend
    corners.append((turn + last, high_mm / math.cos(last)))
    return [(out * math.sin(angle), out * math.cos(angle)) for angle, out in corners]


def _extent(corners: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """(width, depth) in mm."""
    across = [x for x, _ in corners]
    return max(across) - min(across), max(y for _, y in corners)


# ---- where rows grow ------------------------------------------------------------------------------


def _all_gains(
    body: Sequence[tuple[WorkedRound | None, RoundSize]], scale: Scale
) -> tuple[list[_Gain], float]:
    """Where and by how much the rows grow, from one end to the other, and over how much height.

    The first rows, too short to tell one place from the next, are left out as long as enough follow.
    """
    enough = [
        at for at in range(1, len(body)) if body[at - 1][1].length_mm >= _APART * _TOGETHER * scale.width_mm
    ]
    chosen = enough if len(enough) >= 3 else list(range(len(body) // 2, len(body)))
    near = _TOGETHER * scale.width_mm / body[-1][1].length_mm
    found: list[_Gain] = []
    mirrored = False
    for at in chosen:
        below, here = body[at - 1][0], body[at][0]
        assert below is not None
        assert here is not None
        gains, back = _gains(here, below.edge, scale)
        mirrored ^= back
        found += [_Gain(1 - gain.at, gain.mm) for gain in gains] if mirrored else gains
    left, right = (sum(one.mm for one in found if one.at == end) for end in (0.0, 1.0))
    inner: list[_Gain] = []
    begins = -1.0
    for one in sorted((one for one in found if 0 < one.at < 1), key=lambda one: one.at):
        if inner and one.at - begins <= near:
            inner[-1] = _Gain(inner[-1].at, inner[-1].mm + one.mm)
        else:
            begins = one.at
            inner.append(one)
    return [_Gain(0.0, left), *inner, _Gain(1.0, right)], sum(body[at][1].rise_mm for at in chosen)


@dataclass(slots=True)
class _Cell:
    """Stitches of a row that go into the same places: from where to where they reach, and those places."""

    upper: tuple[float, float]
    lower: tuple[float, float]


def _gains(here: WorkedRound, below: Sequence[Place], scale: Scale) -> tuple[list[_Gain], bool]:
    """Where one row is longer than the one below, told along itself; and whether it goes against that one."""
    reach: dict[int, tuple[float, float]] = {}
    long = 0.0
    for place in below:
        wide = _width(place, scale)
        reach[id(place)] = (long, long + wide)
        long += wide
    feet = [_feet(one, reach) for one in here.made]
    middles = [(foot[0] + foot[1]) / 2 for foot in feet if foot]
    back = bool(middles) and middles[0] > middles[-1]
    if back:
        feet = [foot and (long - foot[1], long - foot[0]) for foot in feet]
    cells, length = _cells(here.made, feet, scale)
    if not cells:
        return [], back
    near = _TOGETHER * scale.width_mm
    found: list[_Gain] = []
    for at, cell in enumerate(cells):
        before, after = cells[at - 1] if at else None, cells[at + 1] if at + 1 < len(cells) else None
        ups = _shared(before.upper if before else None, cell.upper, after.upper if after else None, length)
        lows = _shared(before.lower if before else None, cell.lower, after.lower if after else None, long)
        gain = (ups[1] - ups[0]) - (lows[1] - lows[0])
        middle = sum(cell.lower) / 2
        beside = min(near, long / 3)
        end = 0.0 if middle < beside else 1.0 if middle > long - beside else None
        if abs(gain) > 1e-6:
            found.append(_Gain(min(max(middle / long, 1e-6), 1 - 1e-6) if end is None else end, gain))
    return found, back


def _shared(
    before: tuple[float, float] | None,
    own: tuple[float, float],
    after: tuple[float, float] | None,
    length: float,
) -> tuple[float, float]:
    """A stretch with half of what lies free on either side of it; all of it towards an end."""
    low = (before[1] + own[0]) / 2 if before else 0.0
    high = (own[1] + after[0]) / 2 if after else length
    return low, high


def _cells(
    made: Sequence[Made | Space], feet: Sequence[tuple[float, float] | None], scale: Scale
) -> tuple[list[_Cell], float]:
    """The row's stitches by where they stand, in order, and how long the row is."""
    cells: list[_Cell] = []
    along = 0.0
    for one, foot in zip(made, feet, strict=True):
        wide = _width(one, scale) if isinstance(one, Space) or one.number else 0.0
        if foot is not None:
            if cells and foot[0] < cells[-1].lower[1] - 1e-6:
                last = cells[-1]
                last.upper = (last.upper[0], along + wide)
                last.lower = (min(last.lower[0], foot[0]), max(last.lower[1], foot[1]))
            else:
                cells.append(_Cell((along, along + wide), foot))
        along += wide
    return cells, along


def _feet(one: Made | Space, reach: dict[int, tuple[float, float]]) -> tuple[float, float] | None:
    """What a counted stitch goes into, from where to where; None where it stands on nothing below."""
    if not isinstance(one, Made) or not one.number:
        return None
    found = [reach[id(place)] for place in one.into if id(place) in reach]
    return (min(low for low, _ in found), max(high for _, high in found)) if found else None


def _width(place: Place, scale: Scale) -> float:
    if isinstance(place, Made):
        return 0.0 if place.role == "picot" else scale.width_of(place.kind, place.post)
    return 0.0 if isinstance(place, Space) and place.back else place.chains * scale.width_mm
