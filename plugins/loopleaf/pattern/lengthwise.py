"""Rows that go on until a length: how many, from the gauge's rows."""

import math

from .entries import Entry
from .materials import Gauge
from .model import Pattern
from .pieces import Piece


def row_height_mm(pattern: Pattern, piece: str) -> float | None:
    """Height of one row in mm by the gauge for this piece, else by the first that has rows; None without."""
    gauges = [gauge for gauge in pattern.gauge if gauge.rows and gauge.over]
    own = [gauge for gauge in gauges if gauge.piece == piece]
    general = [gauge for gauge in gauges if not gauge.piece]
    chosen: Gauge | None = next(iter([*own, *general]), None)
    if chosen is None or chosen.rows is None or chosen.over is None:
        return None
    return chosen.over.mm / chosen.rows


def first_row_side(piece: Piece) -> str:
    """The side that row 1 is worked on: RS, unless the first row that states a side says otherwise."""
    if piece.worked == "rows, right side only":
        return "RS"
    for entry in piece.entries:
        if entry.side and entry.run:
            return entry.side if entry.run.first % 2 == 1 else other_side(entry.side)
    return "RS"


def other_side(side: str) -> str:
    """RS for WS, WS for RS."""
    return "WS" if side == "RS" else "RS"


def last_row(entry: Entry, first: int, length_mm: float, row_mm: float, row_one: str, turns: bool) -> int:
    """The last row's number: so many that the piece is about so long.

    It ends on `end`'s side where that is said, else with a whole repeat. length_mm is measured from the
    piece's beginning. Of two numbers equally near, the larger is taken. At least one row is worked.
    """
    exact = length_mm / row_mm
    if entry.end and turns:
        odd = entry.end == row_one
        wanted = [number for number in _near(exact) if (number % 2 == 1) == odd and number >= first]
        return (
            max(wanted, key=lambda number: (-abs(number - exact), number))
            if wanted
            else first + ((first % 2 == 1) != odd)
        )
    if entry.repeat and len(entry.repeat.numbers) > 1:
        size = len(entry.repeat.numbers)
        times = max(1, math.floor((exact - (first - 1)) / size + 0.5))
        return first - 1 + times * size
    return max(first, math.floor(exact + 0.5))


def _near(exact: float) -> range:
    return range(math.floor(exact) - 1, math.floor(exact) + 3)
