"""What a maker reads of each kind of mistake: one of every kind, drawn by its name, in short patterns.

The golden file is read by eye when it changes: the words, the working and the mend have to fit the mistake.
"""

import random
from collections.abc import Callable, Iterator
from functools import cache

from loopleaf.pattern import Finding
from loopleaf.review import check
from tests.quality.collected import right_patterns
from tests.quality.mutants import Mutant, mutants
from tests.quality.sites import read

SHORT = 4_600
"""Characters of a pattern that is checked quickly."""

TRIED = 3
"""So many of a kind are tried at most for one of which the review says anything."""


def short_mutants() -> Iterator[Mutant]:
    for name, text in sorted(right_patterns().items()):
        if len(text) <= SHORT:
            yield from mutants(read(name, text))


@cache
def findings(text: str, name: str) -> tuple[Finding, ...]:
    return tuple(check(text.encode(), name).findings)


def said_of(mutant: Mutant) -> list[Finding]:
    """What is said of the mutant and wasn't of the right pattern."""
    before = {(one.rule, one.message) for one in findings(right_patterns()[mutant.file], mutant.file)}
    now = check(mutant.text.encode(), mutant.file).findings
    return [one for one in now if (one.rule, one.message) not in before]


def told(mutant: Mutant, found: list[Finding]) -> Iterator[str]:
    yield f"  {mutant.file}, {mutant.piece} {', '.join(mutant.rounds)}"
    if mutant.was:
        yield f"    was: {mutant.was}"
        yield f"    now: {mutant.now}"
    for one in found:
        at = one.location
        lines = mutant.text.splitlines()
        words = lines[at.line - 1][at.column - 1 : at.end_column - 1] if at.line == at.end_line else "…"
        yield f"    {one.severity} {one.rule} ({one.piece} {one.round}) at “{words}”"
        yield f"      {one.message}"
        if one.working:
            yield f"      {one.working}"
        if one.suggestion is not None:
            replacement = one.suggestion.replacement
            instead = "" if replacement is None else f" [{one.suggestion.applies}: {replacement!r}]"
            yield f"      {one.suggestion.text}{instead}"


def test_each_kind_of_mistake(golden: Callable[[str, str], None]) -> None:
    kinds: dict[str, list[Mutant]] = {}
    for mutant in short_mutants():
        kinds.setdefault(mutant.kind, []).append(mutant)
    lines = []
    for kind, some in sorted(kinds.items()):
        lines.append(kind)
        drawn = random.Random(kind).sample(some, min(TRIED, len(some)))
        first = next(((one, found) for one in drawn if (found := said_of(one))), None)
        lines.extend(
            ["  nothing", *[f"    {one.file}: {one.now}" for one in drawn]] if not first else told(*first)
        )
    golden("mistakes-told.txt", "\n".join(lines) + "\n")
