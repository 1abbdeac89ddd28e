"""Says what the machine still lacks, one word a line: `venv`, `pango`; for tests `chromium` and others.

    python3 .setup/needs.py site|test

Runs on a bare Python, before anything is installed. The libraries are those that WeasyPrint opens by name.
"""

import ctypes
import importlib.util
import shutil
import sys
from ctypes.util import find_library
from pathlib import Path

LIBRARIES = {  # name as the linker knows it: file on Linux
    "gobject-2.0": "libgobject-2.0.so.0",
    "pango-1.0": "libpango-1.0.so.0",
    "pangoft2-1.0": "libpangoft2-1.0.so.0",
    "harfbuzz": "libharfbuzz.so.0",
    "harfbuzz-subset": "libharfbuzz-subset.so.0",
    "fontconfig": "libfontconfig.so.1",
}
HOMEBREW = (Path("/opt/homebrew/lib"), Path("/usr/local/lib"))
BROWSERS = ("chromium", "chromium-browser", "/Applications/Chromium.app/Contents/MacOS/Chromium")


def has_library(name: str, file: str) -> bool:
    """Whether a program started now could open this library."""
    try:
        ctypes.CDLL(file)
    except OSError:
        dylib = f"lib{name}.dylib"
        return find_library(name) is not None or any((folder / dylib).exists() for folder in HOMEBREW)
    return True


def chromium() -> str | None:
    """Where Chromium is, None without one."""
    return next((found for name in BROWSERS if (found := shutil.which(name))), None)


def missing(purpose: str) -> list[str]:
    """What has to be installed before `make site` or `make test` can go on."""
    lacks: list[str] = []
    # Debian parts venv from Python: the module is there, what it needs to bring pip along is not.
    if not all(importlib.util.find_spec(module) for module in ("venv", "ensurepip")):
        lacks.append("venv")
    if not all(has_library(name, file) for name, file in LIBRARIES.items()):
        lacks.append("pango")
    if purpose == "test":
        if chromium() is None:
            lacks.append("chromium")
        if shutil.which("pdftotext") is None:
            lacks.append("poppler")
        # The driver that the browser tests come with opens it; Debian's smallest installation is without.
        if sys.platform == "linux" and not has_library("atomic", "libatomic.so.1"):
            lacks.append("atomic")
    return lacks


if __name__ == "__main__":
    for need in missing(sys.argv[1]):
        print(need)  # noqa: T201 (the set-up script reads it)
