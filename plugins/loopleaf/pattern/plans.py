"""What setting out gives: a plan for each round or row to be worked, and what is wrong with the numbering."""

from dataclasses import dataclass, field
from typing import Any, Literal

from .finding import Severity

Path = tuple[str | int, ...]
"""The way to a value in the file: `("pieces", "pouch", "rounds", 3, "work")`."""

NumberOfN = int | tuple[int | None, ...]
"""What stands for `n` in a round: a number, or one a size (None where a size has none)."""


@dataclass(frozen=True, slots=True)
class RoundPlan:
    """One round or row to be worked, as the author's entries set it out.

    label: the round's number as text (`"5"`), as `check` reports it. word: `round` or `row`.
    work: the line's text; work_path: where that text stands (for `as: 7` and `repeat: 2-3`, the entry
    that is named). entry: the index of the entry in the file's list; entry_path its path.
    n: what stands for `n` in this round, None where there is none.
    stated: the author's count for this round, as text (`"40"` for round 5 of `{from: 32, step: 8}`), or None;
    stated_path: where it stands. in_line: its stretch of the line, for `… join (24)`; no path then.
    side: `RS`, `WS` or "" as stated. sizes: indexes of the sizes that work it, None for all.
    by_rule: how a rule gave it: "" written itself, `repeat`, `as`, `every`, `grid`.
    again: the label of the round whose line it takes, "" for its own. reversed: `reversed: true`.
    """

    number: int
    label: str
    word: Literal["round", "row"]
    work: str
    work_path: Path
    entry: int
    entry_path: Path
    n: NumberOfN | None = None
    stated: str | None = None
    stated_path: Path = ()
    in_line: tuple[int, int] | None = None
    side: str = ""
    yarn: str = ""
    note: str = ""
    picture: str = ""
    video: str = ""
    adjustable: str = ""
    sizes: tuple[int, ...] | None = None
    by_rule: str = ""
    again: str = ""
    reversed: bool = False


@dataclass(frozen=True, slots=True)
class PlanProblem:
    """Something wrong with how a piece's rounds are numbered or derived.

    rule: `rounds-out-of-order`, `row-repeat-stops-midway`, `number-too-large`, `wrong-type`, `field-missing`.
    path: the value it is about. suggestion: words, replacement for that value (None: words only), how sure.
    round: the label of the first round it is about, "" for none.
    """

    rule: str
    path: Path
    message: str
    working: str = ""
    suggestion: tuple[str, str | None, str] | None = None
    severity: Severity = "error"
    facts: dict[str, Any] = field(default_factory=dict)
    round: str = ""
