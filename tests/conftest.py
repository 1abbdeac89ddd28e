"""What the tests of several rooms share."""

import runpy
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]


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


MEASURED = frozenset(["pattern", "notation", "fabric", "measure", "review", "trade", "published", "demo"])
"""Tests of the rooms whose coverage is measured. The others build sites, booklets and drawings of the same
patterns: following each line of the engine through them doubles their time, and shows nothing of how well a
room is tested."""


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Iterator[None]:
    """Rests the measuring of coverage, fixtures included, while another room's test runs."""
    measuring = item.config.pluginmanager.get_plugin("_cov")
    room = item.path.relative_to(ROOT / "tests").parts[0]
    controller = measuring.cov_controller if measuring and room not in MEASURED else None
    if controller is None:
        return (yield)
    controller.pause()
    try:
        return (yield)
    finally:
        controller.resume()


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
