"""What the parser has to say about a line besides its tree."""

from dataclasses import dataclass

from .tree import Line, Span


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong or unclear in a line.

    rule: `unknown-instruction`, `term-of-the-other-system`, `special-stitch-undefined`, `number-too-large`, …
    severity: `error`, `warning`, `note`.
    message: what is wrong, in a crafter's words; working: the reason behind it (may be "").
    suggestion: (text, replacement for the span or None, applies: `safe`, `likely` or `fill-in`), or None.
    """

    rule: str
    severity: str
    span: Span
    message: str
    working: str = ""
    suggestion: tuple[str, str | None, str] | None = None


@dataclass(frozen=True, slots=True)
class Parsed:
    """A line's tree (None after an error) and what there is to say about it."""

    line: Line | None
    problems: tuple[Problem, ...] = ()
