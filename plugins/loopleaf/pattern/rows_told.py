"""How many rows an entry's own words say it is for: `Work 4 rows straight`, `work 6 more rounds in dc`."""

import re

from .entries import Entry
from .plans import Path, PlanProblem
from .values import Run

_TOLD = re.compile(r"\bwork(?:ing)? (\d{1,3}) (?:more )?(rows|rounds|rnds)\b(?! \()", re.IGNORECASE)


def rows_told_otherwise(entry: Entry, path: Path, numbers: list[int]) -> PlanProblem | None:
    """What to say where the words name another number of rows than the entry has; path: of its number."""
    found = _TOLD.search(entry.work or "")
    if found is None or entry.every is not None or entry.until is not None or not numbers:
        return None
    told, there = int(found[1]), len(numbers)
    if told == there:
        return None
    word, first = entry.word, numbers[0]
    right = str(Run(first, first + told - 1))
    entry_has = f"{word} {first}" if there == 1 else f"{word}s {first}-{numbers[-1]}"
    return PlanProblem(
        "rounds-out-of-order",
        path,
        f"“{found[0]}” stands for {entry_has}.",
        f"{entry_has.capitalize()} {'is' if there == 1 else 'are'} {there} {word}{'s' * (there > 1)}.",
        (f"{told} {word}s from here on would be {right}.", right, "likely"),
        facts={"told": told, "there": there},
        round=str(first),
    )
