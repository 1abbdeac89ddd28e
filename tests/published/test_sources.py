"""The table of sources in this folder's README holds for every measure."""

import re
from pathlib import Path

import loopleaf.measure

HERE = Path(__file__).parent
TESTS = "".join(
    path.read_text("utf-8") for folder in (HERE, HERE.parent / "measure") for path in folder.glob("test_*.py")
)


def rows() -> list[tuple[str, str, list[str]]]:
    """Module, source and functions of each row; a row without a module belongs to the one above."""
    found: list[tuple[str, str, list[str]]] = []
    for line in (HERE / "README.md").read_text("utf-8").splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if line.startswith("|") and len(cells) == 3 and "`test_" in cells[2]:
            found.append((cells[0] or found[-1][0], cells[1], re.findall(r"`(\w+)`", cells[2])))
    return found


def test_every_measure_has_two_outside_values() -> None:
    modules = {path.stem for path in Path(loopleaf.measure.__file__).parent.glob("*.py")} - {"__init__"}
    sources = {module: [what for name, what, _ in rows() if name == module] for module in modules}
    assert {module for module, _, _ in rows()} == modules
    assert {module: len(set(found)) for module, found in sources.items() if len(set(found)) < 2} == {}


def test_every_function_that_is_named_is_there() -> None:
    named = {one for _, _, functions in rows() for one in functions}
    assert {one for one in named if f"def {one}(" not in TESTS} == set()
