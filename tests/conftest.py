"""What the tests of several rooms share."""

import runpy
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def chromium() -> str:
    """Where the system's Chromium is: what the set-up looked for, and installed where it could."""
    found = runpy.run_path(str(ROOT / ".setup" / "needs.py"))["chromium"]()
    assert found, "Chromium is not installed; `make test` says how to get it."
    return str(found)
