"""The guide to checking does what it says: its lines are run, its settings read, its tables true."""

import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from mkdocs.config.defaults import MkDocsConfig

from loopleaf import cli
from loopleaf.publish.site_settings import LoopleafOptions, settings
from loopleaf.review import check
from tests.demo.guide import fences
from tests.publish.test_counts_as_printed import set_out
from tests.review.frame import framed
from tests.yaml_text import read_yaml

ROOT = Path(__file__).resolve().parents[2]
GUIDE = ROOT / "patterns" / "checking.md"
LINES = [fence.text for fence in fences(GUIDE) if fence.language == "sh"]
SETTINGS: list[Any] = [read_yaml(fence.text) for fence in fences(GUIDE) if fence.language == "yaml"]
HOOKS: list[dict[str, Any]] = read_yaml((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """A collection begun by `loopleaf init`, without booklets, since they take their time."""
    result = CliRunner().invoke(cli.main, ["init", str(tmp_path / "shelf")])
    assert result.exit_code == 0, result.output
    config = tmp_path / "shelf" / "mkdocs.yml"
    config.write_text(config.read_text("utf-8").replace("booklets: true", "booklets: false"), "utf-8")
    return tmp_path / "shelf"


def shell(text: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """The lines in a plain shell, with the `loopleaf` of this Python."""
    commands = folder.parent / "bin"
    commands.mkdir(exist_ok=True)
    command = commands / "loopleaf"
    command.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m loopleaf "$@"\n')
    command.chmod(0o755)
    known = {**os.environ, "PATH": f"{commands}{os.pathsep}{os.environ['PATH']}"}
    known["PYTHONPATH"] = str(ROOT / "plugins")
    return subprocess.run(["sh", "-c", text], cwd=folder, env=known, capture_output=True, text=True)


@pytest.mark.parametrize("text", LINES)
def test_its_lines_run_in_a_sound_collection(shelf: Path, text: str) -> None:
    done = shell(text, shelf)
    assert done.returncode == 0, done.stdout + done.stderr
    for name in re.findall(r"(?:> |-o )(\S+)", text):
        assert (shelf / name).stat().st_size > 100


def test_the_lines_for_a_build_fail_on_a_mistake(shelf: Path) -> None:
    file = shelf / "patterns" / "first-coaster.yml"
    file.write_text(file.read_text("utf-8").replace("count: 16}", "count: 17}"), "utf-8")
    (lines,) = (text for text in LINES if "exit $failed" in text)
    done = shell(lines, shelf)
    assert done.returncode == 1
    assert "count-differs" in done.stdout
    assert '"ruleId": "count-differs"' in (shelf / "loopleaf.sarif").read_text("utf-8")


def test_the_hook_takes_patterns_and_leaves_other_files_alone(shelf: Path) -> None:
    (hook,) = HOOKS
    (asked,) = next(one for one in SETTINGS if one and "repos" in one)["repos"][0]["hooks"]
    assert asked["id"] == hook["id"]
    assert [bool(re.search(hook["files"], name)) for name in ("a.yml", "b/c.yaml", "index.md")] == [
        *(True, True, False)
    ]
    line = " ".join([hook["entry"], *asked["args"], "mkdocs.yml patterns/first-coaster.yml"])
    done = shell(line, shelf)
    assert (done.returncode, done.stdout) == (0, "1 pattern checked: nothing to mend.\n")
    (shelf / "wrong.yml").write_text(framed("rounds: []"), "utf-8")
    assert shell(f"{line} wrong.yml", shelf).returncode == 1


def test_the_counts_of_its_table() -> None:
    rows = re.findall(r"^\| `(\w+)`[^|]*\| ([^|]+) \| ([^|]+) \| ([^|]+) \|$", GUIDE.read_text("utf-8"), re.M)
    _, *rows = rows  # without the names of its columns
    assert [style for style, *_ in rows] == ["plain", "brackets", "sts"]
    work = "rounds:\n  - {round: 1, work: 'ch 1, %s, join, fasten off', count: %s}"
    sized = framed("sizes: [S, M, L]\n" + work % ("40 (48, 56) sc in ring", "'40 (48, 56)'"))
    kinds = framed(work % ("*6 dc in ring, ch 2; rep from * 3 more times", "'24 dc, 4 ch-2 sps'"))
    for style, *printed in rows:
        made = []
        for text in (framed(work % ("40 sc in ring", "40")), sized, kinds):
            assert not check(text.encode(), "case.yml").has_errors, text
            made.append(set_out(text, style).pieces[0].rounds[0].count)
        assert made == printed


def test_its_settings_are_settings() -> None:
    (options,) = (one["plugins"][0]["loopleaf"] for one in SETTINGS if one and "plugins" in one)
    config = LoopleafOptions()
    config.load_dict(options)
    assert config.validate() == ([], [])
    assert settings(config, MkDocsConfig()).counts == options["counts"] == "brackets"
