"""Turns words that can't be read into a problem: which words, what was expected there, and the nearest known word."""

from .cursor import Cursor, UnreadableError
from .problem import Problem


def explain(cursor: Cursor, error: UnreadableError) -> Problem:
    """The problem for a stretch that can't be read."""
    first = error.at
    last = max(error.to, first)
    span = cursor.span(first)
    return Problem("unknown-instruction", "error", span, f"“{cursor.text[span.start:span.end]}” can't be read here ({error.expected}).")
