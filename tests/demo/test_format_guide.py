"""The authors' guide: every example of it is run through the check."""

import re

import pytest

from loopleaf import notation
from loopleaf.pattern.model import schema
from loopleaf.review import Checked, check

from . import guide

YAML = [fence for fence in guide.fences() if fence.language == "yaml"]
LINES = [fence for fence in guide.fences() if fence.language in ("us", "uk")]
PLACES = [
    code
    for table in guide.tables(guide.GUIDE)
    for row in table
    for code in guide.codes(row[0])
    if re.match(r"(in|between|over|through) ", code)
]


def _errors(checked: Checked) -> list[str]:
    return [f"{found.rule}: {found.message}" for found in checked.findings if found.severity == "error"]


def test_nothing_in_a_fence_goes_unchecked() -> None:
    assert {fence.language for fence in guide.fences()} == {"yaml", "us", "uk"}
    assert len(YAML) > 10
    assert len(LINES) > 10


@pytest.mark.parametrize("fence", YAML, ids=str)
def test_yaml_examples_check(fence: guide.Fence) -> None:
    checked = check(guide.dumped(guide.as_file(fence)), "example.yml")
    assert _errors(checked) == []


def test_the_whole_pattern_has_nothing_to_mend() -> None:
    checked = check(YAML[0].text.encode(), "rock-pool-mat.yml")
    assert [found for found in checked.findings if found.severity != "note"] == []


@pytest.mark.parametrize("fence", LINES, ids=str)
def test_lines_make_what_stands_behind_their_arrows(fence: guide.Fence) -> None:
    checked = check(guide.dumped(guide.as_rounds(fence)), "example.yml")
    assert _errors(checked) == []
    assert checked.work is not None
    for worked in checked.work.pieces[0].rounds:
        stated = worked.plan.stated
        assert stated is not None
        one = worked.sizes[0]
        assert one is not None
        if stated.isdigit():
            assert one.count == int(stated)


@pytest.mark.parametrize("place", PLACES)
def test_places_are_read(place: str) -> None:
    vocabulary = notation.Vocabulary(
        "US",
        {"shell": notation.SpecialStitch("shell", "sh", "5 dc in same st", "", None)},
        frozenset(),
        frozenset({"leg 2", "square", "square 1", "edge"}),
    )
    parsed = notation.parse(f"sc {place}", vocabulary)
    assert [problem.message for problem in parsed.problems] == []


def _fields(schema: object) -> set[str]:
    """Every field's name in a schema, at any depth."""
    if isinstance(schema, list):
        return {name for inner in schema for name in _fields(inner)}
    if not isinstance(schema, dict):
        return set()
    properties = schema.get("properties", {})
    own = set(properties) if isinstance(properties, dict) else set()
    return own | {name for inner in schema.values() for name in _fields(inner)}


def test_every_field_of_the_format_stands_in_the_guide() -> None:
    text = guide.GUIDE.read_text(encoding="utf-8")
    said = {
        name for name in _fields(schema()) if re.search(rf"`{name}\b|(?<![\w ]){name}:|[{{ ]{name}:", text)
    }
    assert _fields(schema()) - said == set()
