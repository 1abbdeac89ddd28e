"""Writes requirements.txt: every package with the hashes of its files, for the oldest and the newest Python.

    python .setup/lock.py python3.11 python3.13

Each interpreter named resolves pyproject.toml by itself (what Loopleaf needs, what builds it, what tests it);
packages that only one of them needs are kept under a marker. No address is written, so whoever installs
chooses where the files come from, and the hashes see to it that they are these files.
"""

import os
import re
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PIN = re.compile(r"(?P<name>[A-Za-z0-9._-]+)==(?P<version>[^\s;\\]+)(?: *; *(?P<marker>[^\\]+?))? \\\n")


def wanted() -> list[str]:
    """All requirements of pyproject.toml: of the package, of its build, and of its tests."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    return [
        *settings["build-system"]["requires"],
        *settings["project"]["dependencies"],
        *settings["dependency-groups"]["dev"],
    ]


def resolve(python: str, requirements: list[str], known: Path, folder: Path) -> dict[str, str]:
    """The pinned blocks by package name, as it resolves them; versions in `known` stay where they fit."""
    venv = folder / "venv"
    # Nothing that this machine alone offers (its pip settings, its own folders of wheels) may leak in.
    clean = {k: v for k, v in os.environ.items() if not k.startswith("PIP_") or k == "PIP_CERT"}
    clean |= {"PIP_CONFIG_FILE": os.devnull, "PIP_DISABLE_PIP_VERSION_CHECK": "1"}
    subprocess.run([python, "-m", "venv", "--clear", venv], check=True)
    subprocess.run(
        [venv / "bin/pip", "install", "-q", "--upgrade", "pip", "pip-tools"], check=True, env=clean
    )
    asked, lock = folder / "wanted.in", folder / "lock.txt"
    asked.write_text("\n".join(requirements) + "\n", encoding="utf-8")
    lock.write_text(known.read_text(encoding="utf-8") if known.exists() else "", encoding="utf-8")
    subprocess.run(
        [
            *(venv / "bin/pip-compile", "--quiet", "--generate-hashes", "--strip-extras", "--allow-unsafe"),
            *("--no-emit-index-url", "--no-emit-find-links", "--no-header", "--no-annotate"),
            *("--output-file", lock, asked),
        ],
        check=True,
        env=clean,
    )
    blocks: dict[str, str] = {}
    for block in re.split(r"\n(?=[A-Za-z0-9])", lock.read_text(encoding="utf-8").strip()):
        if pin := PIN.match(block):
            blocks[pin["name"]] = block.strip()
    return blocks


def merged(by_python: dict[str, dict[str, str]]) -> str:
    """One text for all: what they agree on once, the rest under the Python version that it is for."""
    names = sorted({name for blocks in by_python.values() for name in blocks})
    lines: list[str] = []
    for name in names:
        found = {python: blocks[name] for python, blocks in by_python.items() if name in blocks}
        if len(found) == len(by_python) and len(set(found.values())) == 1:
            lines.append(next(iter(found.values())))
            continue
        oldest = next(iter(by_python))
        for python, block in found.items():
            bound = f'python_version {"<" if python == oldest else ">="} "{list(by_python)[-1]}"'
            lines.append(block.replace(" \\\n", f" ; {bound} \\\n", 1))
    return "\n".join(lines) + "\n"


def version(python: str) -> str:
    """`3.11` for that interpreter."""
    asked = [python, "-c", "import sys; print('%d.%d' % sys.version_info[:2])"]
    return subprocess.run(asked, check=True, capture_output=True, text=True).stdout.strip()


def main(pythons: list[str]) -> None:
    """Resolve with each Python given, oldest first, and write requirements.txt."""
    known = ROOT / "requirements.txt"
    by_python: dict[str, dict[str, str]] = {}
    for python in pythons:
        with tempfile.TemporaryDirectory() as folder:
            by_python[version(python)] = resolve(python, wanted(), known, Path(folder))
    head = f"# Written by `make lock` for Python {' and '.join(by_python)}: edit pyproject.toml instead.\n"
    known.write_text(head + merged(by_python), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
