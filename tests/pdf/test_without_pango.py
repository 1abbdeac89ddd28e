"""On a machine without the libraries: one plain sentence, and what lies on the shelf is still there."""

import builtins
import shutil
import sys
from typing import Any

import pytest

from loopleaf.publish.booklet import BookletsUnavailable, render
from loopleaf.publish.booklet_library import missing_library
from loopleaf.publish.booklet_shelf import make_booklets
from tests.pdf.test_shelf import Counting, jobs

LOADING = "cannot load library 'libpango-1.0-0': libpango-1.0-0: cannot open shared object file."


@pytest.fixture
def no_pango(monkeypatch):
    """WeasyPrint as it fails on such a machine: a paragraph on the screen, then OSError."""
    importing = builtins.__import__

    def without(name: str, *args: Any, **kwargs: Any):
        if name == "weasyprint" or name.startswith("weasyprint."):
            sys.stdout.write("-----\nWeasyPrint could not import some external libraries.")
            raise OSError(LOADING)
        return importing(name, *args, **kwargs)

    for module in [name for name in sys.modules if name.split(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, module)
    monkeypatch.setattr(builtins, "__import__", without)


@pytest.mark.parametrize(
    ("manager", "command"),
    [
        ("apt-get", "apt-get install libpango-1.0-0"),
        ("dnf", "dnf install pango"),
        ("brew", "brew install pango"),
    ],
)
def test_the_sentence_names_the_library_and_the_command(monkeypatch, manager, command):
    monkeypatch.setattr(shutil, "which", lambda name: f"/bin/{name}" if name == manager else None)
    sentence = missing_library(OSError(LOADING))
    assert "the library Pango is missing" in sentence
    assert "libpango-1.0-0" in sentence
    assert f"`{command}" in sentence
    assert sentence.count(". ") == 0


def test_a_missing_package_is_named_with_its_own_command():
    sentence = missing_library(ModuleNotFoundError("No module named 'weasyprint'", name="weasyprint"))
    assert "`pip install weasyprint`" in sentence


def test_printing_says_so_and_nothing_else(no_pango, capsys):
    with pytest.raises(BookletsUnavailable, match="Pango is missing"):
        render("<p>x</p>", assets=None)  # type: ignore[arg-type]
    assert capsys.readouterr().out == ""


def test_finished_booklets_need_no_library(tmp_path, request):
    made = make_booklets(jobs(2), tmp_path, Counting())
    request.getfixturevalue("no_pango")
    assert make_booklets(jobs(2), tmp_path).paths == made.paths
    with pytest.raises(BookletsUnavailable):
        make_booklets(jobs(3), tmp_path)
