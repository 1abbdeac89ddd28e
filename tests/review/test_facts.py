"""What programs read of a finding beside its words: where it stands, what would mend it and how surely, what
else it points at.
"""

from collections.abc import Callable, Iterator

import pytest

from loopleaf.pattern import Finding, Location
from loopleaf.review import rule_named
from tests.review.frame import framed

from .test_rules import CASES, MADE, checked

APPLIES = {"safe", "likely", "fill-in"}


def fragments(name: str) -> list[str]:
    return [*([] if name in MADE else [rule_named(name).page.wrong]), *CASES[name].get("trips", [])]


def stretch(location: Location, text: str) -> str:
    """Where it stands, and its first words."""
    lines = text.split("\n")
    end = location.end_column - 1 if location.end_line == location.line else None
    words = lines[location.line - 1][location.column - 1 : end]
    return f"{location.line}:{location.column}-{location.end_line}:{location.end_column} “{words[:60]}”"


def facts(finding: Finding, text: str) -> Iterator[str]:
    belongs = "".join(f" · {name}" for name in (finding.piece, finding.round) if name)
    yield f"{finding.severity} {finding.rule}{belongs} at {stretch(finding.location, text)}"
    if finding.suggestion:
        new = finding.suggestion.replacement
        yield f"    {finding.suggestion.applies}: {'words only' if new is None else f'put “{new}”'}"
    for other in finding.related:
        yield f"    see {stretch(other.location, text)}: {other.message}"


@pytest.mark.parametrize("name", CASES)
def test_facts(name: str, golden: Callable[[str, str], None]) -> None:
    """All that is said of the cases of a rule, its own finding and others."""
    said: list[str] = []
    for fragment in fragments(name):
        for finding in checked(fragment).findings:
            said += facts(finding, framed(fragment))
        said.append("")
    golden(f"facts-of-{name}.txt", "\n".join(said))


@pytest.mark.parametrize("name", CASES)
def test_facts_are_of_the_few_kinds_that_are_promised(name: str) -> None:
    for fragment in fragments(name):
        for finding in checked(fragment).findings:
            assert finding.severity in ("error", "warning", "note")
            assert finding.file == "case.yml"
            assert finding.suggestion is None or finding.suggestion.applies in APPLIES
