"""How large a chart is printed: as large as a page has room for, up to a size that is read at ease."""

from math import ceil

WIDEST_MM, TALLEST_MM = 162.0, 207.0
"""Room on the shorter page, US Letter's, below a chart's heading; with the margin that text leaves free."""

LARGEST, SMALLEST = 0.32, 0.17
"""Millimetres a unit. A sign is 10 units wide: 3.2 mm at most, 1.7 mm at least; its line, 0.9 units, is then
0.43 pt (0.15 mm) at the thinnest.
"""

PARTED = 0.2
"""A chart that is parted over pages is printed at least so large, and larger where its parts have room."""

EDGE_MM = 6.0
"""Where a chart is cut upright, so much is left beside it for the numbers of its rows."""

OVERLAP = 40.0
"""Neighbouring parts show so much of each other, in units: four signs."""

WORDS_MM = 2.5
"""Words and numbers are printed at least so high: 7.1 pt."""


def is_parted(wide: float, high: float) -> bool:
    """Whether a chart is too large for one page."""
    return min(WIDEST_MM / wide, TALLEST_MM / high) < SMALLEST


def printed_scale(wide: float, high: float) -> float:
    """How many millimetres a unit of it is long in print."""
    if not is_parted(wide, high):
        return min(WIDEST_MM / wide, TALLEST_MM / high, LARGEST)
    across, down = parts_of(wide, high, PARTED)
    room = (
        _width(across) * across / (wide + OVERLAP * (across - 1)),
        TALLEST_MM * down / (high + OVERLAP * (down - 1)),
    )
    return min(*room, LARGEST)


def parts_of(wide: float, high: float, scale: float) -> tuple[int, int]:
    """In how many parts a chart of so many millimetres a unit is printed, across and down."""
    narrow = _width(1 if wide * scale <= WIDEST_MM + 1e-6 else 2)
    steps = ((wide, narrow), (high, TALLEST_MM))
    across, down = (ceil((long - OVERLAP) / (room / scale - OVERLAP) - 1e-6) for long, room in steps)
    return max(1, across), max(1, down)


def _width(across: int) -> float:
    """How wide the signs of a part have room, of so many beside each other, in mm."""
    return WIDEST_MM if across == 1 else WIDEST_MM - 2 * EDGE_MM
