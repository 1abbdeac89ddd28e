"""`loopleaf check --fix`: what it writes, what it shows, how it ends."""

import json
import os
from pathlib import Path

import pytest

from loopleaf.publish.mending_files import NotWritten, difference, put_in_place
from loopleaf.publish.terminal import coloured
from loopleaf.review import mend
from tests.review.frame import framed
from tests.test_cli import folder, run, write

__all__ = ["folder"]

ROUNDS = (
    "rounds:\n"
    '  - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}  # kept\n'
    '  - {round: 2, work: "ch 1, (sc in next st, miss next st) x 6, join, fasten off", count: 6}'
)
TEXT = framed(ROUNDS)
BAD = TEXT.replace("count: 6", "count: 7")


def test_it_mends_and_shows_the_difference(folder: Path) -> None:
    file = write(folder / "a.yml", TEXT)
    file.chmod(0o640)
    result = run("check", "--fix", "a.yml")
    assert result.exit_code == 0
    assert file.read_text("utf-8") == TEXT.replace("miss", "sk")
    assert file.stat().st_mode & 0o777 == 0o640
    assert [path.name for path in folder.iterdir()] == ["a.yml"]
    lines = result.stdout.split("\n")
    assert lines[:2] == ["--- a.yml", "+++ a.yml"]
    (out,) = (line for line in lines if line.startswith("-  "))
    (put,) = (line for line in lines if line.startswith("+  "))
    assert out.replace("miss", "sk")[1:] == put[1:]
    assert lines[-2] == "1 pattern checked: nothing to mend."


def test_what_is_left_decides_the_exit_code(folder: Path) -> None:
    file = write(folder / "a.yml", BAD)
    result = run("check", "--fix", "a.yml")
    assert result.exit_code == 1
    assert "count-differs" in result.stdout
    assert file.read_text("utf-8") == BAD.replace("miss", "sk")


def test_without_fix_nothing_is_written(folder: Path) -> None:
    file = write(folder / "a.yml", TEXT)
    assert run("check", "a.yml").exit_code == 0
    assert file.read_text("utf-8") == TEXT


def test_a_file_with_nothing_to_put_in_is_not_touched(folder: Path) -> None:
    file = write(folder / "a.yml", TEXT.replace("miss", "sk"))
    before = file.stat()
    result = run("check", "--fix", "a.yml")
    assert result.stdout == (
        "There was nothing certain to put in: no file was changed.\n1 pattern checked: nothing to mend.\n"
    )
    assert (file.stat().st_ino, file.stat().st_mtime_ns) == (before.st_ino, before.st_mtime_ns)


def test_standard_input_is_never_mended(folder: Path) -> None:
    file = write(folder / "a.yml", TEXT)
    result = run("check", "--fix", "a.yml", "-", given=TEXT)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert "standard input" in result.stderr
    assert file.read_text("utf-8") == TEXT


def test_programs_read_the_report_alone(folder: Path) -> None:
    write(folder / "a.yml", TEXT)
    result = run("check", "--fix", "a.yml", "--format", "json")
    (found,) = json.loads(result.stdout)
    assert found["findings"] == []
    assert result.stderr.startswith("--- a.yml\n+++ a.yml\n")


def test_programs_are_told_beside_the_report_that_nothing_changed(folder: Path) -> None:
    write(folder / "a.yml", TEXT.replace("miss", "sk"))
    result = run("check", "--fix", "a.yml", "--format", "json")
    assert result.exit_code == 0
    assert len(json.loads(result.stdout)) == 1
    assert result.stderr == "There was nothing certain to put in: no file was changed.\n"


def test_a_folder_and_a_link(folder: Path) -> None:
    file = write(folder / "kept" / "a.yml", TEXT)
    (folder / "shelf").mkdir()
    (folder / "shelf" / "b.yml").symlink_to(file)
    assert run("check", "--fix", "shelf").exit_code == 0
    assert (folder / "shelf" / "b.yml").is_symlink()
    assert file.read_text("utf-8") == TEXT.replace("miss", "sk")


def test_a_file_not_to_be_written_to(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = write(folder / "a.yml", TEXT)
    monkeypatch.setattr(os, "access", lambda path, mode: False)
    result = run("check", "--fix", "a.yml")
    assert result.exit_code == 2
    assert "a.yml is not to be written to" in result.stderr
    assert file.read_text("utf-8") == TEXT


def test_a_file_changed_meanwhile_stays(folder: Path) -> None:
    file = write(folder / "a.yml", "what someone else saved")
    with pytest.raises(NotWritten, match="changed by someone else"):
        put_in_place(file, TEXT.encode(), b"ours")
    assert file.read_text("utf-8") == "what someone else saved"
    assert [path.name for path in folder.iterdir()] == ["a.yml"]


def test_a_full_disk_leaves_the_file_alone(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = write(folder / "a.yml", TEXT)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(NotWritten, match="no space left on device"):
        put_in_place(file, TEXT.encode(), b"ours")
    assert file.read_text("utf-8") == TEXT
    assert [path.name for path in folder.iterdir()] == ["a.yml"]


def test_the_difference_in_colour_and_without_a_last_line_end() -> None:
    mended = mend(TEXT.rstrip("\n").encode(), "a.yml")
    shown = difference("a.yml", TEXT.rstrip("\n"), mended, coloured)
    assert shown.startswith("\x1b[1m--- a.yml\x1b[0m\n\x1b[1m+++ a.yml\x1b[0m\n\x1b[2m@@ ")
    assert "\n\x1b[31m-  " in shown
    assert "\n\x1b[32m+  " in shown
    assert shown.count("\\ No newline at end of file\n") == 2
