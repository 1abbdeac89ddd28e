"""The trade's shorthand, read into a tree without terminology and written back in US or UK terms, short or in full."""

from .parser import parse, parse_count
from .problem import Parsed, Problem
from .vocabulary import SpecialStitch, Terms, Vocabulary

__all__ = ["Parsed", "Problem", "SpecialStitch", "Terms", "Vocabulary", "parse", "parse_count"]
