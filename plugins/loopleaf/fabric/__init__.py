"""The fabric: works a pattern's instruction trees stitch by stitch into the edge below, and keeps what each
stitch
went into. `work_pattern` gives the stitch graph, the running counts and the troubles; words are the
review's."""

from .edge import Edge
from .pattern import LineProblem, PatternWork, vocabulary_of, work_pattern
from .worked import Made, PieceWork, Place, Ring, RoundWork, Space, Trouble, WorkedRound

__all__ = [
    "Edge",
    "LineProblem",
    "Made",
    "PatternWork",
    "PieceWork",
    "Place",
    "Ring",
    "RoundWork",
    "Space",
    "Trouble",
    "WorkedRound",
    "vocabulary_of",
    "work_pattern",
]
