"""What the tests of several rooms share."""

import os
import runpy
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest

from tests import shelf

ROOT = Path(__file__).resolve().parents[1]
LONGEST = [
    "pdf/test_demo",
    "browser/",
    "alter/test_resize",
    "publish/test_leaflet",
    "publish/test_site",
    "publish/test_kept",
    "quality/test_faults",
    "draw/test_whatever_comes",
    "test_json_contract",
    "publish/",
    "pdf/",
    "draw/test_engraving",
    "alter/",
    "test_cli",
    "quality/",
    "test_house",
]
"""What takes longest, in this order: started first, so that no worker waits for another one's last file."""


def pytest_configure(config: pytest.Config) -> None:
    """One folder for all workers of a run, made and taken away by the process that starts them."""
    if not hasattr(config, "workerinput"):
        folder = tempfile.mkdtemp(prefix="loopleaf-tests-")
        os.environ[shelf.NAME] = folder
        config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    def begins(item: pytest.Item) -> int:
        here = item.path.relative_to(ROOT / "tests").as_posix()
        return next((at for at, name in enumerate(LONGEST) if here.startswith(name)), len(LONGEST))

    items.sort(key=begins)


@pytest.fixture(scope="session")
def chromium() -> str:
    """Where the system's Chromium is: what the set-up looked for, and installed where it could."""
    found = runpy.run_path(str(ROOT / ".setup" / "needs.py"))["chromium"]()
    assert found, "Chromium is not installed; `make test` says how to get it."
    return str(found)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--golden", action="store_true", help="write the kept texts anew instead of comparing them"
    )


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Callable[[str, str], None]:
    """Compares a text with the one kept in the folder `golden` beside the test; `--golden` keeps it anew."""
    folder = request.path.parent / "golden"

    def compare(name: str, text: str) -> None:
        path = folder / name
        if request.config.getoption("--golden"):
            folder.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
        assert path.is_file(), f"{path.name} isn't kept yet; `make golden` keeps it."
        assert text == path.read_text(encoding="utf-8")

    return compare
