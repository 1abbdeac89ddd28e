"""A pattern file, read.

`load` turns bytes into a `Source`: the typed `Pattern`, a finding for every mistake in the file itself, and
the place of every value. `set_out` gives a piece's rounds one by one; `schema` is for editors.
"""

from .content import PICTURE_ENDINGS, is_picture, leaves_the_folder
from .entries import Entry, Growing, Picture, Stuff
from .finding import Applies, Finding, Location, Related, Severity, Suggestion
from .finishing import AtStitches, FinishingStep, Knot, LayOut, Mark, Sew, Thread
from .grids import is_yarn
from .loading import load
from .materials import Ball, FinishedSize, Gauge, Hook, Materials, Yarn
from .model import Change, Pattern, SpecialStitch, Variation, Video, schema
from .nodes import KEY
from .pieces import Around, Grid, Piece
from .plans import Path, PlanProblem, RoundPlan
from .rounds import set_out
from .source import Source
from .start import Start
from .values import Length, Lengths, Numbers, Run, Weight

__all__ = [
    "KEY",
    "PICTURE_ENDINGS",
    "Applies",
    "Around",
    "AtStitches",
    "Ball",
    "Change",
    "Entry",
    "Finding",
    "FinishedSize",
    "FinishingStep",
    "Gauge",
    "Grid",
    "Growing",
    "Hook",
    "Knot",
    "LayOut",
    "Length",
    "Lengths",
    "Location",
    "Mark",
    "Materials",
    "Numbers",
    "Path",
    "Pattern",
    "Picture",
    "Piece",
    "PlanProblem",
    "Related",
    "RoundPlan",
    "Run",
    "Severity",
    "Sew",
    "Source",
    "SpecialStitch",
    "Start",
    "Stuff",
    "Suggestion",
    "Thread",
    "Variation",
    "Video",
    "Weight",
    "Yarn",
    "is_picture",
    "is_yarn",
    "leaves_the_folder",
    "load",
    "schema",
    "set_out",
]
