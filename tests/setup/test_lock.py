"""The lock: whole, hashed, without an address, and for every Python that Loopleaf serves."""

import hashlib
import re
import runpy
import tomllib
import zipfile

import pytest
from packaging.requirements import Requirement
from packaging.specifiers import SpecifierSet
from packaging.utils import canonicalize_name

from tests.setup.fresh_machine import ROOT

LOCK = (ROOT / "requirements.txt").read_text()
BLOCKS = {
    block.split("==")[0]: block for block in re.split(r"\n(?=[a-z0-9])", LOCK) if not block.startswith("#")
}


def test_every_package_is_pinned_by_hashes_and_nothing_else_stands_there() -> None:
    assert len(BLOCKS) > 40
    for name, block in BLOCKS.items():
        first, *rest = block.strip().splitlines()
        assert re.fullmatch(rf"{re.escape(name)}==[\w.]+( ; [^\\]+)? \\", first), first
        assert rest, name
        for line in rest:
            assert re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", line), line


def test_no_address_host_or_folder_of_this_machine() -> None:
    assert not re.search(r"https?:|file:|--index|--extra-index|--find-links|@ |/", LOCK)


def test_all_that_pyproject_asks_for_is_locked_at_a_version_it_allows() -> None:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text())
    asked = [
        *settings["build-system"]["requires"],
        *settings["project"]["dependencies"],
        *settings["dependency-groups"]["dev"],
    ]
    assert any(line.startswith("hatchling") for line in asked)
    for requirement in map(Requirement, asked):
        block = BLOCKS[canonicalize_name(requirement.name)]
        assert requirement.specifier.contains(block.split("==")[1].split()[0]), requirement


def _is_for_this_python(block: str) -> bool:
    """Whether a pinned package is one for the Python that runs: some are asked for by others only."""
    marker = Requirement(block.split("\\")[0].strip()).marker
    return marker is None or marker.evaluate()


def test_the_files_put_aside_are_those_of_the_lock() -> None:
    wheels = list((ROOT / ".cache" / "wheelhouse").glob("*.whl"))
    here = [block for block in BLOCKS.values() if _is_for_this_python(block)]
    assert len(wheels) == len(here)
    for wheel in wheels:
        assert hashlib.sha256(wheel.read_bytes()).hexdigest() in LOCK, wheel.name


@pytest.mark.parametrize("version", ["3.11.0", "3.12.0", "3.13.0"])
def test_every_package_serves_the_first_release_of_each_python(version: str) -> None:
    """Distributions keep the release they began with: Debian 12 has Python 3.11.2."""
    refused = []
    for wheel in (ROOT / ".cache" / "wheelhouse").glob("*.whl"):
        with zipfile.ZipFile(wheel) as packed:
            (name,) = (n for n in packed.namelist() if re.fullmatch(r"[^/]+\.dist-info/METADATA", n))
            wanted = re.search(r"^Requires-Python: (.+)$", packed.read(name).decode(), re.M)
        if wanted and not SpecifierSet(wanted[1]).contains(version):
            refused.append((wheel.name, wanted[1]))
    assert refused == []


def test_what_only_one_python_needs_stands_under_its_version() -> None:
    merged = runpy.run_path(str(ROOT / ".setup" / "lock.py"))["merged"]
    old = {"yarn": "yarn==1 \\\n    --hash=sha256:a", "hook": "hook==2 \\\n    --hash=sha256:b"}
    new = {"yarn": "yarn==1 \\\n    --hash=sha256:a", "hook": "hook==3 \\\n    --hash=sha256:c"}
    assert merged({"3.11": old, "3.13": new}) == (
        'hook==2 ; python_version < "3.13" \\\n    --hash=sha256:b\n'
        'hook==3 ; python_version >= "3.13" \\\n    --hash=sha256:c\n'
        "yarn==1 \\\n    --hash=sha256:a\n"
    )
    assert 'python_version < "3.13"' in merged({"3.11": old, "3.13": {"yarn": new["yarn"]}})


@pytest.mark.parametrize("line", ["yarn==1 \\\n", 'yarn==1 ; python_version < "3.13" \\\n'])
def test_a_pin_is_read_with_or_without_a_marker(line: str) -> None:
    pin = runpy.run_path(str(ROOT / ".setup" / "lock.py"))["PIN"].match(line)
    assert (pin["name"], pin["version"]) == ("yarn", "1")
