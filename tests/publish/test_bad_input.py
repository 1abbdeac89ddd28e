"""Bad files among good ones: each a clear finding at its place, the good ones published as if nothing were,
nothing half-written, and no old page of a pattern that no longer checks.
"""

import json
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest
from click.testing import CliRunner

from loopleaf.cli import main
from tests.publish.small_site import COASTER
from tests.yaml_text import written_yaml


@dataclass(frozen=True)
class Bad:
    """A file that can't be published: its bytes, and the one finding with line and column."""

    content: bytes
    rule: str
    line: int
    column: int


def _with(old: str, new: str) -> bytes:
    assert old in COASTER
    return COASTER.replace(old, new, 1).encode()


CARE = "care: Machine wash."
LINES = COASTER.count("\n")
BOMB = "".join(
    f"{name}: &{name} [{', '.join([f'*{below}'] * 9)}]\n"
    for below, name in zip("abcdefgh", "bcdefghi", strict=True)
)
BAD = {
    "not-yaml": Bad(_with(CARE, "care: [Machine wash."), "not-yaml", 17, 7),
    "not-utf8": Bad(COASTER.encode().replace(b"A. Maker", b"A. M\xe4ker"), "not-utf8", 2, 15),
    "tab": Bad(_with("  hook:", "\thook:"), "not-yaml", 12, 1),
    "asterisk": Bad(_with(CARE, "care: *gently*"), "not-yaml", 17, 7),
    "at-sign": Bad(_with(CARE, "care: @home"), "not-yaml", 17, 7),
    "key-twice": Bad(f"{COASTER}title: Again\n".encode(), "key-twice", LINES + 1, 1),
    "alias-bomb": Bad(f"a: &a [x, x, x, x]\n{BOMB}{COASTER}".encode(), "too-many-aliases", 6, 28),
    "script": Bad(_with("title: Coaster", "title: C <script>alert(1)</script>"), "markup-in-text", 1, 10),
    "picture": Bad(f"{COASTER}pictures: [{{file: ../../a.jpg, alt: No.}}]\n".encode(),
        "path-leaves-collection", LINES + 1, 19),
    "picture-of-the-machine": Bad(f"{COASTER}pictures: [{{file: /etc/passwd, alt: No.}}]\n".encode(),
        "path-leaves-collection", LINES + 1, 19),
    "many-repeats": Bad(_with("x 6, join, fasten", "x 1000000000, join, fasten"), "number-too-large", 27, 68),
    "many-rounds": Bad(_with("round: 3,", "rounds: 3-1000000000,"), "number-too-large", 27, 20),
    "deep": Bad(f"{COASTER}tags: {'[' * 300}{']' * 300}\n".encode(), "too-deep", LINES + 1, 22),
    "large": Bad(COASTER.encode() + b"#" * 2_000_000, "too-large", 1, 1),
    "utf-16": Bad(COASTER.encode("utf-16"), "not-utf8", 1, 1),
    "address": Bad(f'{COASTER}contact: "javascript:alert(1)"\n'.encode(), "link-not-http", LINES + 1, 10),
    "colour": Bad(_with('"#44525c"', '"red; background: url(x)"'), "wrong-type", 11, 41),
}  # fmt: skip


@dataclass(frozen=True)
class Built:
    """What a build over a good pattern and all bad ones left behind, where an older site had been."""

    folder: Path
    said: str
    code: int
    before: dict[str, bytes]

    def published(self) -> dict[str, bytes]:
        """Patterns' pages and booklets by their path in the site."""
        site, names = self.folder / "site", ("good", *BAD)
        pages = [site / terms / name / "index.html" for terms in ("us", "uk") for name in names]
        found = [*filter(Path.is_file, pages), *site.glob("booklets/*")]
        return {str(one.relative_to(site)): one.read_bytes() for one in found}


def _loopleaf(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", "from loopleaf.cli import main; main()", *arguments]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=240)


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    folder = tmp_path_factory.mktemp("bad")
    patterns = folder / "patterns"
    patterns.mkdir()
    settings = {
        "site_name": "A collection",
        "docs_dir": "patterns",
        "theme": {"name": "material"},
        "plugins": ["search", {"loopleaf": {"papers": ["a4"]}}],
    }
    (folder / "mkdocs.yml").write_text(written_yaml(settings), encoding="utf-8")
    (patterns / "good.yml").write_text(COASTER, encoding="utf-8")
    first = _loopleaf(folder, "build")
    assert first.returncode == 0, first.stderr
    before = Built(folder, "", 0, {}).published()
    for name in BAD:  # As if each had been right at the last build.
        for terms in ("us", "uk"):
            shutil.copytree(folder / f"site/{terms}/good", folder / f"site/{terms}/{name}")
            booklet = folder / f"site/booklets/good-{terms}-a4.pdf"
            shutil.copy(booklet, booklet.with_name(f"{name}-{terms}-a4.pdf"))
    for name, bad in BAD.items():
        (patterns / f"{name}.yml").write_bytes(bad.content)
    second = _loopleaf(folder, "build")
    return Built(folder, second.stdout + second.stderr, second.returncode, before)


@pytest.mark.parametrize("name", BAD)
def test_each_has_one_finding_at_its_place(name: str, tmp_path: Path) -> None:
    (tmp_path / "case.yml").write_bytes(BAD[name].content)
    made = CliRunner().invoke(main, ["check", str(tmp_path / "case.yml"), "--format", "json"])
    assert made.exit_code == 1
    findings = json.loads(made.stdout)[0]["findings"]
    assert [(one["rule"], one["severity"], one["line"], one["column"]) for one in findings] == [
        (BAD[name].rule, "error", BAD[name].line, BAD[name].column)
    ]
    assert findings[0]["working"] or findings[0]["suggestion"]


def test_the_build_says_which_were_left_out_and_fails(built: Built) -> None:
    assert built.code == 1
    assert "Traceback" not in built.said
    assert f"{len(BAD)} patterns were not published" in built.said
    for name, bad in BAD.items():
        assert f"patterns/{name}.yml:{bad.line}:{bad.column}: " in built.said


def test_the_good_one_is_published_as_before_and_no_old_page_is_left(built: Built) -> None:
    assert built.published() == built.before
    assert len(built.before) == 4


def test_nothing_of_the_bad_ones_is_in_the_site(built: Built) -> None:
    site = built.folder / "site"
    pages = [path for path in site.rglob("*.html") if path.parent.name != "rules"]
    texts = [path.read_text(encoding="utf-8") for path in pages]
    index = (site / "search" / "search_index.json").read_text(encoding="utf-8")
    for text in (*texts, index, (site / "sitemap.xml").read_text(encoding="utf-8")):
        assert "<script>alert" not in text
        assert "passwd" not in text
        assert not any(f"/{name}/" in text for name in BAD)
    left = [path.name for path in built.folder.iterdir()]
    assert sorted(left) == [".loopleaf", "mkdocs.yml", "patterns", "site"]
