"""Bands, the form that an estimate has here, and exact conversions between the two families of units.

Exact by the international yard and pound of 1959: an inch is 25.4 mm, a yard 0.9144 m, an ounce
28.349523125 g.
"""

from dataclasses import dataclass

MM_AN_INCH = 25.4
METRES_A_YARD = 0.9144
GRAMS_AN_OUNCE = 28.349523125


@dataclass(frozen=True, slots=True)
class Band:
    """An estimate between `low` and `high`, both in the unit of the name that it goes by (`length_mm`,
    `metres`).
    """

    low: float
    high: float

    @classmethod
    def about(cls, value: float, share: float) -> "Band":
        """A value give or take a share of itself: `about(100, 0.25)` is 75 to 125."""
        return cls(value * (1 - share), value * (1 + share))

    @property
    def middle(self) -> float:
        return (self.low + self.high) / 2

    @property
    def off(self) -> float:
        """The share of the middle by which it may be off."""
        return (self.high - self.low) / (self.high + self.low)

    def __add__(self, other: "Band") -> "Band":
        return Band(self.low + other.low, self.high + other.high)

    def __mul__(self, factor: float) -> "Band":
        return Band(self.low * factor, self.high * factor)

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high


NOTHING = Band(0.0, 0.0)


def mm_to_inches(mm: float) -> float:
    """Millimetres as inches."""
    return mm / MM_AN_INCH


def inches_to_mm(inches: float) -> float:
    """Inches as millimetres."""
    return inches * MM_AN_INCH


def metres_to_yards(metres: float) -> float:
    """Metres as yards."""
    return metres / METRES_A_YARD


def yards_to_metres(yards: float) -> float:
    """Yards as metres."""
    return yards * METRES_A_YARD


def grams_to_ounces(grams: float) -> float:
    """Grams as ounces."""
    return grams / GRAMS_AN_OUNCE


def ounces_to_grams(ounces: float) -> float:
    """Ounces as grams."""
    return ounces * GRAMS_AN_OUNCE
