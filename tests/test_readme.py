"""README and DEVELOPERS say what is there: commands, pictures, files, and the very words of a check."""

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner

from loopleaf.cli import main

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_check_says_what_the_readme_shows(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The demo's pouch with the count of round 18 two short."""
    pouch = (ROOT / "patterns" / "lantern-pouch.yml").read_text(encoding="utf-8")
    slip = re.sub(r"(\{round: 18, .*count: )48", r"\g<1>46", pouch)
    assert slip != pouch
    (tmp_path / "lantern-pouch.yml").write_text(slip, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    said = CliRunner().invoke(main, ["check", "lantern-pouch.yml"])
    shown, _ = re.findall(r"```text\n(.*?)```", README, re.S)
    assert said.exit_code == 1
    assert shown == said.output


def test_the_taller_pouch_says_what_the_readme_shows(tmp_path: Path) -> None:
    """Line for line and in order; an ellipsis stands for lines left out."""
    _, shown = re.findall(r"```text\n(.*?)```", README, re.S)
    command, *lines = shown.splitlines()
    asked = shlex.split(command.removeprefix("$ loopleaf "))
    asked[1] = str(ROOT / asked[1])
    asked[-1] = str(tmp_path / asked[-1])
    said = CliRunner().invoke(main, asked)
    assert said.exit_code == 0
    told = iter(said.output.splitlines())
    assert len(lines) > 5
    for line in lines:
        assert line.strip() == "…" or any(line == other for other in told), line


def test_every_command_and_target_is_there() -> None:
    targets = re.findall(r"^([a-z-]+):", (ROOT / "Makefile").read_text(encoding="utf-8"), re.M)
    asked = re.findall(r"^make ([a-z]+)|`make ([a-z]+)`", README, re.M)
    made = {first or second for first, second in asked}
    assert {"site", "test"} <= made <= set(targets)
    called = set(re.findall(r"^loopleaf ([a-z]+)|`loopleaf ([a-z]+)", README, re.M))
    assert {first or second for first, second in called} <= set(main.commands)


def test_every_link_leads_somewhere() -> None:
    links = re.findall(r"\]\(([^)]+)\)", README)
    assert len(links) >= 3
    for link in links:
        assert (ROOT / link).is_file(), link


def test_the_files_that_developers_are_sent_to_are_there() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`([a-z_./*]+/[a-z_./*]*)`", text)) | set(
        re.findall(r"`([a-z_./]+\.(?:py|yml|md))`", text)
    )
    assert len(named) > 25
    rooms = (ROOT, ROOT / "plugins" / "loopleaf", ROOT / "theme_overrides")
    assert {name for name in named if not any(any(room.glob(name)) for room in rooms)} == set()
