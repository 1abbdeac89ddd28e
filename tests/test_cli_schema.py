"""`loopleaf schema`, and the line by which an editor finds it from a pattern."""

import json
import re
from pathlib import Path

from jsonschema import Draft202012Validator

from loopleaf.pattern import schema
from tests.test_cli import folder, run, write
from tests.yaml_text import read_yaml

__all__ = ["folder"]


def schema_of(file: Path) -> Path | None:
    """The schema that the first line of a pattern names, followed as an editor does."""
    found = re.match(r"# yaml-language-server: \$schema=(\S+)\n", file.read_text("utf-8"))
    return (file.parent / found[1]).resolve() if found else None


def test_it_prints_or_writes_the_schema(folder: Path) -> None:
    result = run("schema")
    assert result.exit_code == 0
    assert json.loads(result.stdout) == schema()
    assert run("schema", "-o", "kept.json").stdout == ""
    assert (folder / "kept.json").read_text("utf-8") == result.stdout
    assert run("schema", "-o", "nowhere/kept.json").exit_code == 2


def test_a_new_collection_brings_it_and_its_patterns_point_to_it(folder: Path) -> None:
    run("init", "shelf")
    file = folder / "shelf" / "patterns" / "first-coaster.yml"
    assert schema_of(file) == folder / "shelf" / "pattern.schema.json"
    validator = Draft202012Validator(
        json.loads((folder / "shelf" / "pattern.schema.json").read_text("utf-8"))
    )
    pattern = json.loads(json.dumps(read_yaml(file.read_text("utf-8")), default=str))
    assert validator.is_valid(pattern)
    assert not validator.is_valid(pattern | {"titel": "Coaster"})


def test_a_new_pattern_of_the_collection_points_to_it_too(folder: Path) -> None:
    run("init", "shelf")
    for name in ("shelf/patterns/mat.yml", "shelf/patterns/winter/hat.yml"):
        assert run("new", name).exit_code == 0
        assert schema_of(folder / name) == folder / "shelf" / "pattern.schema.json"
        assert run("check", name).exit_code == 0


def test_a_pattern_elsewhere_points_nowhere(folder: Path) -> None:
    write(folder / "mkdocs.yml", "site_name: Shelf\n")
    assert run("new", "mat.yml").exit_code == 0
    assert schema_of(folder / "mat.yml") is None
    assert (folder / "mat.yml").read_text("utf-8").startswith("title: Mat\n")
