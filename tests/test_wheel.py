"""The wheel is complete: installed away from the repository, it starts a collection and builds it.

No network is used: the packages that Loopleaf needs come from `.cache/wheelhouse`, which `make test` fills.
"""

import os
import shutil
import subprocess
import sys
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
WHEELHOUSE = ROOT / ".cache" / "wheelhouse"

# Laid into the new environment: writes down every file and folder of the repository that any of its programs
# opens, lists or starts, the booklets' workers included.
WATCH = """
import os, sys
def _watch(event, args):
    if event in ("open", "os.listdir", "os.scandir", "subprocess.Popen") and args:
        name = args[0]
        name = os.fsdecode(name) if isinstance(name, (str, bytes)) else ""
        if os.path.abspath(name).startswith({root!r}):
            with open({seen!r}, "a") as seen:
                seen.write(event + " " + name + "\\n")
sys.addaudithook(_watch)
"""


def build(kind: str, source: Path, target: Path) -> Path:
    """One `wheel` or `sdist` of the source folder."""
    command = [sys.executable, "-m", "hatchling", "build", "-t", kind, "-d", os.fspath(target)]
    subprocess.run(command, cwd=source, check=True, capture_output=True, text=True)
    (built,) = target.iterdir()
    return built


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build("wheel", ROOT, tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="module")
def archive(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build("sdist", ROOT, tmp_path_factory.mktemp("sdist"))


class Place:
    """An environment with the wheel in it, and an empty folder to work in, away from the repository."""

    def __init__(self, folder: Path) -> None:
        self.environment = folder / "environment"
        self.folder = folder / "elsewhere"
        self.seen = folder / "seen"
        self.folder.mkdir()
        venv.create(self.environment, with_pip=True)

    def watch(self) -> None:
        (packages,) = self.environment.glob("lib/python*/site-packages")
        self.seen.touch()
        watch = WATCH.format(root=f"{ROOT}{os.sep}", seen=os.fspath(self.seen))
        (packages / "watch_the_repository.py").write_text(watch)
        (packages / "watch_the_repository.pth").write_text("import watch_the_repository\n")

    def run(self, program: str, *arguments: str, within: str = ".") -> subprocess.CompletedProcess[str]:
        """The new environment's own program, with nothing of this one's left in the environment variables."""
        return subprocess.run(
            [self.environment / "bin" / program, *arguments],
            cwd=self.folder / within,
            env={"PATH": "/usr/bin:/bin", "HOME": os.fspath(self.folder), "PIP_CONFIG_FILE": os.devnull},
            capture_output=True,
            text=True,
            timeout=300,
        )


@pytest.fixture(scope="module")
def place(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Place:
    place = Place(tmp_path_factory.mktemp("place"))
    pip = ("-m", "pip", "install", "-q", "--no-index", "--find-links", os.fspath(WHEELHOUSE))
    done = place.run("python", *pip, os.fspath(wheel))
    assert done.returncode == 0, done.stdout + done.stderr
    place.watch()
    return place


def test_the_source_archive_makes_the_same_wheel(wheel: Path, archive: Path, tmp_path: Path) -> None:
    shutil.unpack_archive(archive, tmp_path / "source")
    (source,) = (tmp_path / "source").iterdir()
    again = build("wheel", source, tmp_path / "again")
    with zipfile.ZipFile(wheel) as ours, zipfile.ZipFile(again) as theirs:
        contents = [{name: each.read(name) for name in each.namelist()} for each in (ours, theirs)]
    assert contents[0] == contents[1]
    assert {"LICENSE", "Makefile", "README.md", "mkdocs.yml", "requirements.txt"} <= {
        file.name for file in source.iterdir()
    }
    assert list((source / "tests").rglob("test_*.py"))
    assert list((source / "patterns").glob("*.yml"))


def test_from_an_empty_folder_to_a_site(place: Place) -> None:
    done = place.run("loopleaf", "init", "my-patterns")
    assert done.returncode == 0, done.stdout + done.stderr
    (pattern,) = (place.folder / "my-patterns" / "patterns").glob("*.yml")

    done = place.run("loopleaf", "build", within="my-patterns")
    assert done.returncode == 0, done.stdout + done.stderr
    assert os.fspath(ROOT) not in done.stdout + done.stderr

    site = place.folder / "my-patterns" / "site"
    pages = {terms: site / terms / pattern.stem / "index.html" for terms in ("us", "uk")}
    assert all(page.is_file() for page in pages.values())
    assert "US terms" in pages["us"].read_text("utf-8")
    assert "UK terms" in pages["uk"].read_text("utf-8")
    booklets = sorted(booklet.name for booklet in site.rglob("*.pdf"))
    assert booklets == sorted(f"{pattern.stem}-{t}-{p}.pdf" for t in ("us", "uk") for p in ("a4", "letter"))
    for booklet in site.rglob("*.pdf"):
        assert booklet.read_bytes().startswith(b"%PDF-")
    for file in site.rglob("*"):
        assert not file.is_file() or os.fsencode(ROOT) not in file.read_bytes(), file


def test_a_check_and_a_new_pattern_there(place: Place) -> None:
    assert place.run("loopleaf", "new", "reed-basket").returncode == 0
    done = place.run("loopleaf", "check", "reed-basket.yml")
    assert done.returncode == 0, done.stdout + done.stderr


def test_nothing_of_the_repository_is_in_reach(place: Place) -> None:
    paths = place.run("python", "-c", "import sys, loopleaf; print(*sys.path, loopleaf.__file__, sep='\\n')")
    assert paths.returncode == 0, paths.stderr
    assert "site-packages" in paths.stdout
    assert os.fspath(ROOT) not in paths.stdout
    # After all that ran there: none of it has opened a file of the repository…
    assert place.seen.read_text() == ""
    # …and one that does is noticed.
    license_text = place.run("python", "-c", f"print(open({os.fspath(ROOT / 'LICENSE')!r}).read())")
    assert "Permission is hereby granted" in license_text.stdout
    assert place.seen.read_text() == f"open {ROOT / 'LICENSE'}\n"
