"""The JSON Schema that editors read, tried with a validator of its own (JSON Schema, draft 2020-12)."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from loopleaf.pattern import load, schema
from loopleaf.pattern.known_fields import PARTS, fields_of
from tests.yaml_text import read_yaml, written_yaml

ROOT = Path(__file__).resolve().parents[2]
FILES = [*sorted((ROOT / "patterns").glob("*.yml")), ROOT / "plugins/loopleaf/starter/pattern.yml"]
VALIDATOR = Draft202012Validator(schema())


def values(text: str) -> Any:
    """The file as an editor sees it: YAML 1.2 has no dates, `2026-10-02` is text."""
    return json.loads(json.dumps(read_yaml(text), default=str))


def wrong(pattern: Any) -> list[str]:
    return [error.message for error in VALIDATOR.iter_errors(pattern)]


def test_it_is_a_schema() -> None:
    Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_right_patterns_fit(file: Path) -> None:
    assert wrong(values(file.read_text("utf-8"))) == []


def places(value: Any) -> Iterator[dict[str, Any]]:
    """Every set of fields in a pattern, but for those that the author names."""
    if isinstance(value, dict):
        yield value
        for inner in value.values():
            yield from places(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from places(inner)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_a_misspelt_field_does_not(file: Path) -> None:
    """Each fixed field in turn loses a letter, those too that may be left out."""
    fixed = {name for part in PARTS for name in fields_of(part)}
    pattern = values(file.read_text("utf-8"))
    named = {
        name for field in ("pieces", "special stitches", "variations") for name in pattern.get(field, {})
    }
    tried = 0
    for fields in places(pattern):
        for name in [name for name in fields if name in fixed - named and len(name) > 3]:
            misspelt = name[:-2] + name[-1]
            fields[misspelt] = fields.pop(name)
            assert wrong(pattern), f"{misspelt} for {name}"
            fields[name] = fields.pop(misspelt)
            tried += 1
    assert tried > 15
    assert wrong(pattern) == []


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("terms", "UKK"),
        ("level", "hard"),
        ("pieces", []),
        ("gauge", {"stitches": 14, "over": "ten cm"}),
        ("published", 12),
        ("title", ["Coaster"]),
    ],
)
def test_a_value_that_is_not_one_does_not(field: str, value: Any) -> None:
    pattern = values(FILES[-1].read_text("utf-8"))
    pattern[field] = value
    assert wrong(pattern)
    assert load(written_yaml(pattern).encode(), "case.yml").findings


def test_every_field_says_what_it_means() -> None:
    made = schema()
    parts = [made, *made["$defs"].values()]
    fields = [
        (part.get("title"), name, meant)
        for part in parts
        for holder in (part, *part.get("anyOf", []))
        for name, meant in holder.get("properties", {}).items()
    ]
    assert len(fields) > 100
    assert [(part, name) for part, name, meant in fields if not meant.get("description")] == []
