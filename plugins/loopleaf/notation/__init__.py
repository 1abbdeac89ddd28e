"""The trade's shorthand, read into a tree without terminology and written back in US or UK terms, short or
in full.
"""

from .groups_said import groups_of
from .parser import parse, parse_count
from .picot_said import picot_of
from .problem import Parsed, Problem
from .prose import translate_prose
from .style import kind_names
from .vocabulary import SpecialStitch, Terms, Vocabulary
from .writer import stitch_name, write, write_count, write_step

__all__ = [
    "Parsed",
    "Problem",
    "SpecialStitch",
    "Terms",
    "Vocabulary",
    "groups_of",
    "kind_names",
    "parse",
    "parse_count",
    "picot_of",
    "stitch_name",
    "translate_prose",
    "write",
    "write_count",
    "write_step",
]
