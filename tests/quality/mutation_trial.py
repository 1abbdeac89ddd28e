"""Tries changes of the engine: for each a forked process that imports the changed module and runs tests.

    python -m tests.quality.mutation_trial changes.json reach.json outcomes.jsonl

runs in a folder that holds the project, with nothing of the engine imported yet: what stays the same (pytest,
hypothesis, YAML, pydantic) is imported once, before the forks. A line of outcomes.jsonl is one outcome.
"""

import importlib
import json
import os
import resource
import signal
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import spec_from_file_location
from pathlib import Path
from types import CodeType, ModuleType

import pytest
from hypothesis import HealthCheck, Phase, settings

from .mutation_changes import Change
from .mutation_reach import OPTIONS, Reach, load

ALIKE = (
    "click",
    "hypothesis.strategies",
    "jinja2",
    "jsonschema",
    "mkdocs.config.defaults",
    "pydantic",
    "yaml",
)
"""What the tests and the engine import from others, whatever is changed."""

TO_START = 60
"""Seconds of computing for the imports and for finding the tests, before a process counts as hung."""

MEMORY = 3 << 30
"""Bytes that a process may ask for."""


@dataclass(frozen=True)
class Outcome:
    """What became of a change.

    how: `survived`, `failed` (a test did), `hung` (far more time than before), `broke` (the module or a test
    file couldn't even be imported), `unreached` (no test comes by). by: the test that failed or hung.
    """

    module: str
    kind: str
    line: int
    was: str
    now: str
    how: str
    by: str
    seconds: float

    @property
    def killed(self) -> bool:
        return self.how in ("failed", "hung", "broke")


class _Changed(SourceFileLoader):
    """Loads a module's changed text in place of its file; nothing is kept on disk."""

    def __init__(self, name: str, path: str, text: str) -> None:
        super().__init__(name, path)
        self.text = text

    def get_code(self, fullname: str) -> CodeType:
        code = compile(self.text, self.path, "exec", dont_inherit=True)
        assert isinstance(code, CodeType)
        return code


class _Finder:
    """Knows the changed module only."""

    def __init__(self, change: Change) -> None:
        name = change.module.removeprefix("plugins/").removesuffix(".py").removesuffix("/__init__")
        self.name = name.replace("/", ".")
        self.path = str(Path(change.module).resolve())
        self.text = change.text

    def find_spec(
        self, name: str, path: Sequence[str] | None = None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        if name != self.name:
            return None
        loader = _Changed(name, self.path, self.text)
        return spec_from_file_location(name, self.path, loader=loader)


class _Chosen:
    """Runs the chosen tests only, the quick ones first, within ten times their seconds; says which one runs.

    A test that wasn't there without the change is run as well.
    """

    def __init__(self, chosen: Sequence[str], known: dict[str, float], say: int) -> None:
        self.chosen = set(chosen)
        self.known = known
        self.say = say

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        some = [one for one in items if one.nodeid in self.chosen or one.nodeid not in self.known]
        items[:] = sorted(some, key=lambda one: self.known.get(one.nodeid, 0))

    def pytest_runtest_setup(self, item: pytest.Item) -> None:
        signal.setitimer(signal.ITIMER_PROF, 5 + 10 * self.known.get(item.nodeid, 1))
        os.write(self.say, item.nodeid.encode() + b"\n")


def rounds(change: Change, tests: Sequence[str]) -> Iterator[list[str]]:
    """The tests in the order to try them: those of the changed room, then the rest."""
    own = [test for test in tests if test.startswith(f"tests/{change.room}/")]
    yield own
    yield [test for test in tests if test not in set(own)]


def try_out(change: Change, tests: Sequence[str], known: dict[str, float]) -> Outcome:
    """One change on the tests given; `known` has the seconds of every test that there is."""
    start = time.monotonic()
    how, by = "unreached", ""
    for some in rounds(change, tests):
        if some:
            how, by = _forked(change, some, known)
        if how not in ("survived", "unreached"):
            break
    took = round(time.monotonic() - start, 2)
    return Outcome(*(change.module, change.kind, change.line, change.was, change.now), how, by, took)


def _forked(change: Change, tests: Sequence[str], known: dict[str, float]) -> tuple[str, str]:
    """How a process with the change ended, and the last test it began if it didn't end well."""
    hear, say = os.pipe()
    child = os.fork()
    if not child:
        try:
            os.close(hear)
            os._exit(_run(change, tests, known, say))
        finally:
            os._exit(pytest.ExitCode.INTERNAL_ERROR)
    os.close(say)
    with os.fdopen(hear, encoding="utf-8") as said:
        last = said.read().rpartition("\n")[0].rpartition("\n")[2]
    _, status = os.waitpid(child, 0)
    if os.WIFSIGNALED(status):
        return "hung", last
    code = os.WEXITSTATUS(status)
    if code == pytest.ExitCode.OK:
        return "survived", ""
    return ("failed", last) if last else ("broke", "")


def _run(change: Change, tests: Sequence[str], known: dict[str, float], say: int) -> int:
    signal.setitimer(signal.ITIMER_PROF, TO_START)
    signal.alarm(1200)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    sys.meta_path.insert(0, _Finder(change))
    files = list(dict.fromkeys(test.partition("::")[0] for test in tests))
    return int(pytest.main(["-x", *OPTIONS, *files], plugins=[_Chosen(tests, known, say)]))


def get_ready() -> None:
    """Imports what every process shares; hypothesis tries the same examples each time, without shrinking."""
    for name in ALIKE:
        importlib.import_module(name)
    settings.register_profile(
        "changes",
        derandomize=True,
        database=None,
        deadline=None,
        phases=(Phase.explicit, Phase.generate),
        suppress_health_check=list(HealthCheck),
    )
    settings.load_profile("changes")
    engine = [name for name in sys.modules if name.partition(".")[0] == "loopleaf"]
    assert not engine, f"imported too early: {engine}"


def try_all(changes: Sequence[Change], reach: Reach) -> Iterator[Outcome]:
    """Each change on the tests that come by its line."""
    for change in changes:
        before = Path(change.module).read_text(encoding="utf-8")
        yield try_out(change, reach.tests(change.module, change.line, before), reach.seconds)


def main(changes: Path, reach: Path, outcomes: Path) -> None:
    get_ready()
    wanted = [Change(**one) for one in json.loads(changes.read_text(encoding="utf-8"))]
    with outcomes.open("a", encoding="utf-8") as to:
        for outcome in try_all(wanted, load(reach)):
            to.write(json.dumps(asdict(outcome)) + "\n")
            to.flush()


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:]))
