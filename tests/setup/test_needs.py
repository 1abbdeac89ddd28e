"""What the set-up looks for on the machine is what WeasyPrint opens and what the tests call."""

import re
import runpy
from pathlib import Path
from types import SimpleNamespace

import pytest
import weasyprint

from tests.setup.fresh_machine import ROOT


@pytest.fixture
def needs() -> SimpleNamespace:
    return SimpleNamespace(**runpy.run_path(str(ROOT / ".setup" / "needs.py")))


def test_the_libraries_are_those_that_weasyprint_opens(needs: SimpleNamespace) -> None:
    source = Path(weasyprint.__file__).with_name("text") / "ffi.py"
    calls = re.findall(r"^\w+ = _dlopen\(\s*ffi,(.*?)\)$", source.read_text(), re.M | re.S)
    asked = {
        name for call in calls if "allow_fail" not in call for name in re.findall(r"lib\S+\.so\.\d", call)
    }
    assert len(asked) >= 5
    # It goes on without harfbuzz-subset for now, but says that it soon will not, and makes larger files.
    assert set(needs.LIBRARIES.values()) == asked | {"libharfbuzz-subset.so.0"}


def test_a_library_is_there_or_not(needs: SimpleNamespace) -> None:
    assert needs.has_library("pango-1.0", "libpango-1.0.so.0")
    assert not needs.has_library("linen-thread-9", "liblinen-thread-9.so.0")


def test_this_machine_lacks_nothing(needs: SimpleNamespace) -> None:
    assert needs.missing("test") == []


def test_what_lacks_is_named(needs: SimpleNamespace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    monkeypatch.setitem(
        needs.missing.__globals__, "has_library", lambda name, file: name != "harfbuzz-subset"
    )
    monkeypatch.setitem(needs.missing.__globals__, "BROWSERS", ("chromium",))
    assert needs.missing("site") == ["pango"]
    assert needs.missing("test") == ["pango", "chromium", "poppler"]
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setitem(needs.missing.__globals__, "has_library", lambda name, file: name != "atomic")
    assert needs.missing("test") == ["chromium", "poppler", "atomic"]


def test_debian_parts_venv_from_python(needs: SimpleNamespace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None if name == "ensurepip" else object())
    assert needs.missing("site") == ["venv"]
