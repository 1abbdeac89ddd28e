"""How large a chart is printed: as large as a page has room for, up to a size that is read at ease."""

WIDEST_MM, TALLEST_MM = 162.0, 207.0
"""Room on the shorter page, US Letter's, below a chart's heading; with the margin that text leaves free."""

LARGEST, SMALLEST = 0.32, 0.13
"""Millimetres a unit. A sign is 10 units wide: 3.2 mm at most, 1.3 mm at least; its line, 0.9 units, is then
0.33 pt (0.117 mm) at the thinnest.
"""

PARTED = 0.2
"""A chart that is parted over pages is printed so large, where its width allows."""

WORDS_MM = 2.5
"""Words and numbers are printed at least so high: 7.1 pt."""


def is_parted(wide: float, high: float) -> bool:
    """Whether a chart is too large for one page."""
    return min(WIDEST_MM / wide, TALLEST_MM / high) < SMALLEST


def printed_scale(wide: float, high: float) -> float:
    """How many millimetres a unit of it is long in print."""
    if is_parted(wide, high):
        return max(SMALLEST, min(WIDEST_MM / wide, PARTED))
    return min(WIDEST_MM / wide, TALLEST_MM / high, LARGEST)
