"""Patterns altered to a maker's liking: another height, another size, another gauge.

An alteration is a new file in which as little as possible is different, worked and checked like any other:
`adjust` and `settings` for the height, `resize` for the way around, the gauge and the yarn.
"""

from .draft import CannotAlter, Change
from .height import Setting, adjust, settings, wish
from .settle import Altered

__all__ = ["Altered", "CannotAlter", "Change", "Setting", "adjust", "settings", "wish"]
