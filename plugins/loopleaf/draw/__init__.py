"""Drawings made from the stitch graph and from nothing else: the picture of a piece as it comes off the hook,
its diagram with one sign a stitch, its schematic with the measures, its profile in section, the author's grid
in squares, and how its parts are threaded and placed. Graph in, SVG text out.
"""

from .chart_key import KeyEntry
from .diagram import Chart, chart_of, diagram
from .picture import first_picture, piece_picture
from .placing import placing
from .profile_figure import profile
from .schematic import schematic
from .sketch import Figure, stacked
from .squares import Squares, squares
from .threading import threading
from .trimmings import trimmings_yarns

__all__ = [
    "Chart",
    "Figure",
    "KeyEntry",
    "Squares",
    "chart_of",
    "diagram",
    "first_picture",
    "piece_picture",
    "placing",
    "profile",
    "schematic",
    "squares",
    "stacked",
    "threading",
    "trimmings_yarns",
]
