"""How the house is laid out: what stands at its door, which way its rooms open, how its code is written."""

import ast
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "plugins" / "loopleaf"
FLOW = ("pattern", "notation", "fabric", "measure", "review", "alter", "draw", "publish", "cli")
TOP = {
    *("README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "Makefile", "pyproject.toml", "mkdocs.yml"),
    *("requirements.txt", "patterns", "plugins", "theme_overrides", "tests"),
}
MODULES = sorted(PACKAGE.rglob("*.py"))
# Only these may import the two large tools; the engine runs without either.
KEPT_IN = {"mkdocs": r"publish/site\w*(/.*)?\.py", "weasyprint": r"publish/booklet\w*(/.*)?\.py"}


def tracked() -> list[Path]:
    """Every file of the repository: as git knows them; in an unpacked source, as they lie there."""
    if not (ROOT / ".git").exists():
        built = {".venv", ".cache", ".loopleaf", "site", "dist", "build", "PKG-INFO"}
        files = [file.relative_to(ROOT) for file in ROOT.rglob("*") if file.is_file()]
        return [file for file in files if file.parts[0] not in built]
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True)
    return [Path(name) for name in listed.stdout.split("\0") if name and (ROOT / name).exists()]


def room(module: Path) -> str:
    """`fabric` for plugins/loopleaf/fabric/edge.py, `cli` for cli.py."""
    return module.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imported(module: Path) -> set[str]:
    """All modules that this one imports, by their full names; `from x import y` gives both `x` and `x.y`."""
    own = ("loopleaf", *module.relative_to(PACKAGE).with_suffix("").parts)
    found: set[str] = set()
    for step in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(step, ast.Import):
            found |= {alias.name for alias in step.names}
        elif isinstance(step, ast.ImportFrom):
            above = own[: len(own) - step.level] if step.level else ()
            base = ".".join([*above, *(step.module.split(".") if step.module else [])])
            found |= {base} | {f"{base}.{alias.name}" for alias in step.names}
    return found


def test_only_the_design_stands_at_the_top() -> None:
    entries = {file.parts[0] for file in tracked()}
    assert {entry for entry in entries if not entry.startswith(".")} == TOP


def test_every_room_of_the_design_is_there() -> None:
    rooms = {room(module) for module in MODULES if module.parent != PACKAGE or module.name == "cli.py"}
    assert rooms == {*FLOW, "trade"}


@pytest.mark.parametrize("module", MODULES, ids=lambda m: m.relative_to(PACKAGE).as_posix())
def test_imports_go_one_way(module: Path) -> None:
    here = room(module)
    if here in {"__init__", "__main__"}:
        return
    allowed = {"trade"} if here == "trade" else {"trade", *FLOW[: FLOW.index(here) + 1]}
    rooms = {name.split(".")[1] for name in imported(module) if name.startswith("loopleaf.")}
    assert rooms & {*FLOW, "trade"} <= allowed, f"{here} may not read from {rooms - allowed}"


@pytest.mark.parametrize("tool", KEPT_IN)
def test_the_large_tools_stay_in_publish(tool: str) -> None:
    users = {
        m.relative_to(PACKAGE).as_posix() for m in MODULES if tool in {n.split(".")[0] for n in imported(m)}
    }
    assert users, f"nothing imports {tool}: is the test looking in the right place?"
    assert {user for user in users if not re.fullmatch(KEPT_IN[tool], user)} == set()


def test_the_engine_loads_neither_of_them() -> None:
    script = (
        "import sys, loopleaf.review, loopleaf.draw; print(sorted({'mkdocs', 'weasyprint'} & {*sys.modules}))"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_modules_stay_short() -> None:
    lengths = {m.relative_to(ROOT).as_posix(): len(m.read_text("utf-8").splitlines()) for m in MODULES}
    assert len(lengths) > 30
    assert {name: length for name, length in lengths.items() if length > 400} == {}


def test_no_address_of_a_registry_and_nothing_left_for_later() -> None:
    """Names are put together here, so that this file doesn't find itself."""
    unwanted = [
        *("pypi" + ".org", "files." + "pythonhosted", "registry." + "npmjs", "deb." + "debian.org"),
        *("security." + "debian.org", "archive." + "ubuntu.com", "proxy." + "golang.org", "unpk" + "g.com"),
    ]
    unfinished = ["NotImplemented" + "Error", "TO" + "DO", "FIX" + "ME", "mark.ski" + "p", "pytest.ski" + "p"]
    found = []
    for file in tracked():
        try:
            text = (ROOT / file).read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue  # pictures and fonts
        words = unwanted + (unfinished if file.suffix in {".py", ".js", ".css", ".html", ".sh"} else [])
        found += [(file.as_posix(), word) for word in words if word in text]
    assert found == []


def test_every_font_has_its_licence_beside_it() -> None:
    fonts = [file for file in tracked() if file.suffix in {".woff2", ".woff", ".ttf", ".otf"}]
    assert fonts
    for folder in {font.parent for font in fonts}:
        licences = [
            file for file in (ROOT / folder).iterdir() if file.name.upper().startswith(("OFL", "LICEN"))
        ]
        assert licences, folder
        assert any("SIL OPEN FONT LICENSE" in file.read_text("utf-8").upper() for file in licences)


def test_every_package_says_what_it_is_for() -> None:
    for module in PACKAGE.rglob("__init__.py"):
        assert ast.get_docstring(ast.parse(module.read_text(encoding="utf-8"))), module


@pytest.mark.parametrize(
    "command", [("ruff", "check"), ("ruff", "format", "--check"), ("mypy",)], ids=lambda c: " ".join(c)
)
def test_style_and_types(command: tuple[str, ...]) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_what_is_imported_is_declared() -> None:
    """What the code imports from outside is asked for by pyproject.toml itself, and nothing else is."""
    part_of = {"yaml": "pyyaml", "markupsafe": "jinja2", "pydantic_core": "pydantic"}
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    declared = {re.split(r"[<>=~!;\[ ]", line)[0].lower() for line in settings["project"]["dependencies"]}
    outside = {name.split(".")[0] for module in MODULES for name in imported(module)}
    outside -= {*sys.stdlib_module_names, "loopleaf"}
    theme = {"mkdocs-material"}  # named in mkdocs.yml
    assert {part_of.get(name, name).lower() for name in outside} == declared - theme
