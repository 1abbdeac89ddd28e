"""Measures of a worked pattern: sizes, shape, yarn, cords, tails, time, level, cautions; see `measure`.

Every measure is a pure function of the worked stitches and the gauge, with units in its names and its
uncertainty in its result. `amounts` writes them down as patterns print them.
"""

from . import amounts
from .ball import Ball
from .cautions import Earned
from .checkpoints import Checkpoint
from .cords import Cord, least_cord_mm
from .finished import StatedSize
from .follow import needs_followed
from .gauge import Scale
from .level import Level, because, reason, to_learn
from .measured import Measured, PieceMeasure, measure
from .other_yarn import OTHER_OFF, OtherYarn
from .scales import scale_of
from .shape import Flatness, Stretch, edge_a_height, flat_growth, flatness, way_out
from .size import RoundSize
from .tails import Tail, sewing_tail
from .techniques import Use
from .threading import Pass, Threading, Way
from .time import Hours
from .units import Band
from .unsaid_tails import UnsaidTail
from .yarn import YarnNeed

__all__ = [
    "OTHER_OFF",
    "Ball",
    "Band",
    "Checkpoint",
    "Cord",
    "Earned",
    "Flatness",
    "Hours",
    "Level",
    "Measured",
    "OtherYarn",
    "Pass",
    "PieceMeasure",
    "RoundSize",
    "Scale",
    "StatedSize",
    "Stretch",
    "Tail",
    "Threading",
    "UnsaidTail",
    "Use",
    "Way",
    "YarnNeed",
    "amounts",
    "because",
    "edge_a_height",
    "flat_growth",
    "flatness",
    "least_cord_mm",
    "measure",
    "needs_followed",
    "reason",
    "scale_of",
    "sewing_tail",
    "to_learn",
    "way_out",
]
