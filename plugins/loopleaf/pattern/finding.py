"""A finding: one thing the review has to say, at one place in a pattern file."""

from dataclasses import dataclass
from typing import Literal

Severity = Literal["error", "warning", "note"]
Applies = Literal["safe", "likely", "fill-in"]


@dataclass(frozen=True, slots=True, order=True)
class Location:
    """A stretch of the file: 1-based lines and columns in code points, end exclusive."""

    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A mending: in words, as text for the finding's own stretch (None: words only), and how sure it is.

    applies: `safe` keeps the same instruction tree, `likely` changes counts, `fill-in` has a blank.
    """

    text: str
    replacement: str | None
    applies: Applies


@dataclass(frozen=True, slots=True)
class Related:
    """Another place that matters: the stated count, where the chain was made."""

    location: Location
    message: str


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to say about a file.

    rule: its kebab-case name. message: one sentence, the author's words, no cure. working: the sum, redoable.

    piece, round: where it belongs (round is the round's label), "" where it belongs to none.
    """

    rule: str
    severity: Severity
    file: str
    location: Location
    message: str
    working: str = ""
    suggestion: Suggestion | None = None
    related: tuple[Related, ...] = ()
    piece: str = ""
    round: str = ""
