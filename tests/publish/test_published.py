"""What was published last, and patterns whose counts changed since under the same version."""

from pathlib import Path

from loopleaf.publish.kept import Worked
from loopleaf.publish.published import compared, keep, last, published
from loopleaf.publish.settings import Settings
from loopleaf.publish.site import LoopleafPlugin
from loopleaf.publish.workshop import work
from tests.publish.small_site import COASTER, SmallSite
from tests.review.frame import framed


def worked(count: int, version: str = "version: 1.0.0\n") -> tuple[Worked, bytes]:
    lines = (
        f'rounds:\n  - {{round: 1, work: "ch 1, {count} hdc in ring, join, fasten off", count: {count}}}\n'
        f"{version}"
    )
    data = framed(lines).encode()
    one = work("coaster.yml", data, Settings())
    assert one is not None
    return one, data


def said(file: Path, count: int, version: str = "version: 1.0.0\n") -> list[str]:
    """A build: what it says of the version, and what it writes down."""
    one, data = worked(count, version)
    (seen,) = compared([one], last(file), {"coaster.yml": data})
    keep(file, [seen], last(file))
    return [found.working for found in seen.findings if found.rule == "changed-without-version"]


def test_counts_that_change_under_the_same_version(tmp_path: Path) -> None:
    file = tmp_path / ".loopleaf/published.json"
    changed = ["In “piece”, Round 1 had 8, and has 9 now."]
    assert said(file, 8) == []
    assert said(file, 8) == []
    assert said(file, 9) == changed
    assert said(file, 9) == changed  # until the version is raised
    assert said(file, 9, "version: 1.0.1\n") == []
    assert said(file, 9, "version: 1.0.1\n") == []
    assert said(file, 8, "version: 1.0.1\n") == ["In “piece”, Round 1 had 9, and has 8 now."]


def test_a_pattern_without_a_version_is_not_compared(tmp_path: Path) -> None:
    file = tmp_path / "published.json"
    assert said(file, 8, "") == said(file, 9, "") == []


def test_rounds_that_came_or_went(tmp_path: Path) -> None:
    one, data = worked(8)
    now = published(one)
    assert now is not None
    before = {"coaster.yml": type(now)("1.0.0", {"piece": {"Round 1": "8", "Round 2": "16"}})}
    (seen,) = compared([one], before, {"coaster.yml": data})
    assert "Round 2 had 16, and has none now" in seen.findings[-1].working
    before = {"coaster.yml": type(now)("1.0.0", {"moon": {"Round 1": "8"}})}
    (seen,) = compared([one], before, {"coaster.yml": data})
    assert "Round 1 had no count, and has 8 now" in seen.findings[-1].working


def test_what_can_not_be_read_or_is_not_published(tmp_path: Path) -> None:
    for text in ("", "[]", '{"a": 1}', '{"a": {"version": "1"}}'):
        file = tmp_path / "published.json"
        file.write_text(text)
        assert last(file) == {}
    assert last(tmp_path / "none.json") == {}
    broken = work("broken.yml", framed("terms: XX").encode(), Settings())
    assert broken is not None
    assert published(broken) is None
    file = tmp_path / "kept.json"
    said(file, 8)
    keep(file, [broken], last(file))
    assert list(last(file)) == ["coaster.yml"]


def test_a_build_writes_down_what_it_publishes(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER})
    first = site.build()
    kept = last(tmp_path / ".loopleaf/published.json")
    assert kept["coaster.yml"].counts == {"coaster": {"Round 1": "6", "Round 2": "12", "Round 3": "18"}}
    assert rules(first) == []
    longer = COASTER.replace('x 6, join, fasten off", count: 18', 'x 6, join", count: 18')
    longer = longer.replace(
        "finishing:",
        '      - {round: 4, work: "ch 1, sc in each st around, join, fasten off", count: 18}\nfinishing:',
    )
    (tmp_path / "patterns/coaster.yml").write_text(longer)
    assert "changed-without-version" in rules(site.build())
    (tmp_path / "patterns/coaster.yml").write_text(longer.replace("version: 1.0.0", "version: 1.1.0"))
    assert rules(site.build()) == []


def rules(plugin: LoopleafPlugin) -> list[str]:
    return [found.rule for one in plugin.patterns for found in one.findings if found.severity != "note"]
