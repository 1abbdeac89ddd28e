"""What is kept between builds comes back as it was, and only for the same content."""

import os
import time
from pathlib import Path

import pytest

from loopleaf.publish import kept, workshop
from loopleaf.publish.settings import Settings
from tests.demo import leaflets
from tests.publish.small_site import COASTER, ROOT, WRONG, SmallSite

DEMO = sorted((ROOT / "patterns").glob("*.yml"))


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_a_pattern_comes_back_as_it_was(tmp_path: Path, path: Path) -> None:
    """So it does when it is first worked, for all tests (tests/demo/leaflets.py), and again from there."""
    worked = leaflets.worked(path.stem)
    assert worked.leaflets
    kept.put(tmp_path, "k", worked)
    assert kept.take(tmp_path, "k") == worked


def test_findings_come_back_as_they_were(tmp_path: Path) -> None:
    worked = workshop.work("wrong.yml", WRONG.encode(), Settings())
    assert worked.has_errors
    kept.put(tmp_path, "k", worked)
    assert kept.take(tmp_path, "k") == worked


def test_other_content_another_name_or_other_settings_have_another_key() -> None:
    keys = {
        kept.key_of(source, data, settings)
        for source in ("a.yml", "b.yml")
        for data in (b"x", b"y")
        for settings in (Settings(), Settings(contact="ask@example.org"))
    }
    assert len(keys) == 8


@pytest.mark.parametrize("content", [b"", b"{}", b"\xff", b'{"drawing": "", "worked": {"source": 3}}'])
def test_what_can_t_be_read_is_worked_again(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "k.json").write_bytes(content)
    assert kept.take(tmp_path, "k") is None
    assert kept.take(tmp_path, "nothing") is None


def test_what_long_was_not_used_is_thrown_away(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    worked = workshop.work("coaster.yml", COASTER.encode(), Settings())
    kept.put(tmp_path, "used", worked)
    kept.put(tmp_path, "unused", worked)
    later = time.time() + (kept.KEPT_DAYS + 1) * 24 * 3600
    os.utime(tmp_path / "unused.json", (0, 0))
    kept.tidy(tmp_path, ["used"])
    assert [path.name for path in tmp_path.iterdir()] == ["used.json"]
    monkeypatch.setattr("time.time", lambda: later)
    kept.tidy(tmp_path, [])
    assert list(tmp_path.iterdir()) == []


def test_a_second_build_works_nothing_and_gives_the_same_pages(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "tide-cloth.yml": None})
    assert sorted(site.build().workshop.worked) == ["coaster.yml", "tide-cloth.yml"]
    first = {path: path.read_bytes() for path in site.html.rglob("*.html")}
    assert site.build().workshop.worked == []
    assert {path: path.read_bytes() for path in site.html.rglob("*.html")} == first
