"""Which cautions a pattern earns, by what it holds (`trade/cautions.yml`).

From the work itself, and from the author's own words.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from .. import trade
from ..pattern import Pattern

LONG_WORK_HOURS = 8
"""From so many hours at usual speed a sitting is worth a word (chosen here)."""
SMALL_MM = 57.1
"""The depth of the test cylinder for small parts, 2.25 in (16 CFR 1501.4).

Nothing longer fits into it whole.
"""
OPEN_CHAINS = 2
_KEPT_AWAY = re.compile(
    r"\b(?:no|without|leav(?:e|ing) out|instead of"
    r"|unsuitable for|away from|out of (?:the )?reach of|safe from"
    r"|(?:not|never|\w+n[’']t)(?: (?:meant|made|intended|suit(?:able|ed)|designed|recommended|safe))? for)"
    r"(?: [\w'’-]+,?){0,3} $",
    re.IGNORECASE,
)
"""What stands before someone that a thing isn't made for."""


@dataclass(frozen=True, slots=True)
class Earned:
    """A caution and what earns it, in a reader's words."""

    caution: trade.CautionRow
    because: tuple[str, ...]


def earned(pattern: Pattern, held: Mapping[str, str]) -> tuple[Earned, ...]:
    """The cautions that a pattern earns, in the table's order.

    held: conditions that the work itself shows, with where (`cord` -> `Drawstring`); those that the author's
    words show are found here.
    """
    met = dict(_told(pattern)) | dict(held)
    rows = {row.key: row for row in trade.conditions()}

    def reasons(keys: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(
            f"{rows[key].because} ({met[key]})" if met[key] else rows[key].because
            for key in keys
            if key in met
        )

    found: list[Earned] = []
    for row in trade.cautions():
        first, besides = reasons(row.earned_by), reasons(row.only_with)
        if first and (besides or not row.only_with):
            found.append(Earned(row, first + besides))
    return tuple(found)


def _told(pattern: Pattern) -> Iterator[tuple[str, str]]:
    """Conditions that the author's own words show, with the word that shows each."""
    texts = {
        "names": [
            pattern.title,
            pattern.summary,
            *pattern.tags,
            *(text for name, piece in pattern.pieces.items() for text in (name, piece.title)),
        ],
        "notes": [
            *pattern.notes,
            *(text for step in pattern.finishing for text in (step.text, step.note) if text),
        ],
        "notions": [*pattern.materials.notions, *_placed(pattern)],
    }
    for row in trade.conditions():
        shows = _shows(row)
        said = next((found for where in row.where for text in texts[where] if (found := shows(text))), None)
        if said is not None:
            yield row.key, said.group(1).lower()


def _placed(pattern: Pattern) -> Iterator[str]:
    """What is put into a piece, by its name: `safety eyes`."""
    return (step.place.what for step in pattern.finishing if step.place is not None)


@cache
def _shows(row: trade.ConditionRow) -> Callable[[str], re.Match[str] | None]:
    """Finds one of a condition's words, or its plural, as a whole word."""
    words = "|".join(re.escape(word) for word in sorted(row.words, key=len, reverse=True))
    before, behind = (
        "|".join(map(re.escape, others)) or "(?!)" for others in (row.unless_before, row.unless_behind)
    )
    found = re.compile(rf"\b({words or '(?!)'})(?:s|es)?\b(?! ?-?(?:{before})(?:s|es)?\b)", re.IGNORECASE)
    otherwise = re.compile(rf"\b(?:{behind}) $", re.IGNORECASE)

    def meant(text: str) -> re.Match[str] | None:
        """The first that isn't kept away (`where no cat can reach it`) and doesn't mean something else."""
        for one in found.finditer(text):
            said = text[: one.start()]
            if not _KEPT_AWAY.search(said) and not otherwise.search(said):
                return one
        return None

    return meant
