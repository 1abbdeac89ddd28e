"""Patterns altered to a maker's liking: another height, another size, another gauge.

An alteration is a new file in which as little as possible is different, worked and checked like any other:
`adjust` and `settings` for the height; `fit_around`, `fit_gauge` and `fit_yarn` for the way around, the gauge
and the yarn, `fit_sized` where there are several sizes; `in_size` for the file of one of them alone,
`one_size` for its stitches.
"""

from .around import Fitted, fit_around, length_mm, way_around
from .draft import CannotAlter, Change, NotUnderstood
from .gauge import Swatch, fit_gauge, fit_yarn, swatch
from .height import Setting, adjust, settings, wish
from .one_size import one_size
from .settle import Altered
from .sized import fit_sized, in_size

__all__ = [
    "Altered",
    "CannotAlter",
    "Change",
    "Fitted",
    "NotUnderstood",
    "Setting",
    "Swatch",
    "adjust",
    "fit_around",
    "fit_gauge",
    "fit_sized",
    "fit_yarn",
    "in_size",
    "length_mm",
    "one_size",
    "settings",
    "swatch",
    "way_around",
    "wish",
]
