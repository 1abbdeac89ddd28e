"""`loopleaf build`: aside first, then in the old site's place, and no page of a pattern with a mistake."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from loopleaf import cli


def run(*arguments: str) -> Result:
    return CliRunner().invoke(cli.main, arguments)


@pytest.fixture
def collection(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A new collection of two patterns, without booklets, to stand in."""
    assert run("init", str(tmp_path / "shelf")).exit_code == 0
    folder = tmp_path / "shelf"
    monkeypatch.chdir(folder)
    settings = folder / "mkdocs.yml"
    settings.write_text(settings.read_text("utf-8").replace("booklets: true", "booklets: false"), "utf-8")
    assert run("new", "patterns/reed-mat").exit_code == 0
    return folder


def pages(folder: Path) -> set[str]:
    return {
        path.parent.relative_to(folder / "site").as_posix() for path in (folder / "site").rglob("index.html")
    }


def test_build_and_build_again_with_a_mistake(collection: Path) -> None:
    first = run("build")
    assert first.exit_code == 0, first.output
    assert {"us/first-coaster", "uk/first-coaster", "us/reed-mat", "uk/reed-mat", "rules"} <= pages(
        collection
    )
    (collection / "site" / "stale.txt").write_text("of the old site", "utf-8")

    pattern = collection / "patterns" / "reed-mat.yml"
    pattern.write_text(pattern.read_text("utf-8").replace("count: 16", "count: 17"), "utf-8")
    second = run("build")
    assert second.exit_code == 1
    assert "Traceback" not in second.output
    left = pages(collection)
    assert {"us/first-coaster", "uk/first-coaster"} <= left
    assert not left & {"us/reed-mat", "uk/reed-mat"}
    assert not (collection / "site" / "stale.txt").exists()
    assert (collection / "site" / "search" / "search_index.json").is_file()
    assert sorted(path.name for path in collection.iterdir() if path.name.startswith(".site")) == []


def test_settings_that_cannot_be_used_leave_the_old_site(collection: Path) -> None:
    (collection / "site").mkdir()
    (collection / "site" / "index.html").write_text("the old site", "utf-8")
    settings = collection / "mkdocs.yml"
    text = settings.read_text("utf-8")
    settings.write_text(text.replace("terms: US ", "terms: FR "), "utf-8")
    result = run("build")
    assert result.exit_code == 2, result.output
    assert "Traceback" not in result.output
    settings.write_text(f"{text}\nplugins: [", "utf-8")
    assert run("build").exit_code == 2
    assert (collection / "site" / "index.html").read_text("utf-8") == "the old site"


def test_a_build_that_breaks_off_leaves_the_old_site(collection: Path) -> None:
    (collection / "site").mkdir()
    (collection / "site" / "index.html").write_text("the old site", "utf-8")
    index = collection / "patterns" / "index.md"
    index.write_bytes(b"\xff\xfe not text")
    result = run("build")
    assert result.exit_code != 0
    assert "Traceback" not in result.output
    assert (collection / "site" / "index.html").read_text("utf-8") == "the old site"
