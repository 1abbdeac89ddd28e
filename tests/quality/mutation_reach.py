"""Which tests run which line of the engine: a change is tried only on tests that come by it.

    python -m tests.quality.mutation_reach reach.json

runs the fast suites once, unchanged, and writes what they reach. It ends with pytest's own code: nothing is
said about changes while a test fails without one.
"""

import functools
import gc
import importlib
import json
import sys
import time
from collections.abc import Generator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import coverage
import pytest
from coverage.parser import PythonParser

from .mutation_changes import PACKAGE, ROOMS, modules

Reported = Generator[None, pytest.CollectReport, pytest.CollectReport]
SUITES = (
    "fabric", "notation", "review", "published", "demo",
    "quality/test_model_agrees.py", "quality/test_written.py",
)  # fmt: skip
ELSEWHERE = "--ignore=tests/demo/test_checking_guide.py"
"""These run the engine as another program, which a change in this process doesn't reach."""

OPTIONS = ("-q", "-p", "no:cacheprovider", "-p", "no:xdist", "--assert=plain", ELSEWHERE)


@dataclass(frozen=True)
class Reach:
    """Tests by name with their seconds; per module and line where it is run: in a test (its name), while a
    suite's tests are collected (the suite's folder), or when the engine is imported (an empty name).
    """

    seconds: dict[str, float]
    lines: dict[str, dict[int, frozenset[str]]]

    def tests(self, module: str, line: int, text: str) -> list[str]:
        """The tests that the module's line (its text being `text`) can make a difference to."""
        lines = self.lines.get(module, {})
        parser = PythonParser(text=text)
        parser.parse_source()
        first = parser.first_line(line)
        by = {where for other in lines if parser.first_line(other) == first for where in lines[other]}
        if "" in by:
            return [test for test in self.seconds if test in self.reaching]
        return [test for test in self.seconds if test in by or _suite(test) in by]

    @cached_property
    def reaching(self) -> frozenset[str]:
        """The tests that come by any line; what runs the engine as another program sees no change of it."""
        return frozenset(where for lines in self.lines.values() for by in lines.values() for where in by)


def load(file: Path) -> Reach:
    """What this command wrote."""
    kept = json.loads(file.read_text(encoding="utf-8"))
    names = kept["names"]
    lines = {
        module: {int(line): frozenset(names[number] for number in by) for line, by in lines.items()}
        for module, lines in kept["lines"].items()
    }
    return Reach(kept["seconds"], lines)


def _suite(test: str) -> str:
    """`tests/fabric` for tests/fabric/test_cases.py::test_rounds[a ball]."""
    return "/".join(test.split("/")[:2])


class Recorder:
    """Names the running test to coverage, and empties what functions keep.

    That is done before the first case of each test only: building the words anew for every line would
    take longer than all the rest. What a function kept is then put down to the first case.
    """

    def __init__(self, cover: coverage.Coverage) -> None:
        self.cover = cover
        self.seconds: dict[str, float] = {}
        self.kept: list[object] = []
        self.test = ""

    def pytest_collection_finish(self) -> None:
        wrapped = (one for one in gc.get_objects() if isinstance(one, functools._lru_cache_wrapper))
        whose = (*(f"loopleaf.{room}" for room in ROOMS), "tests")
        self.kept = [one for one in wrapped if str(one.__module__).startswith(whose)]

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Reported:
        self.cover.switch_context(_suite(collector.nodeid))
        try:
            return (yield)
        finally:
            self.cover.switch_context("")

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Generator[None, object, object]:
        test = item.nodeid.partition("[")[0]
        for one in self.kept if test != self.test else ():
            one.cache_clear()  # type: ignore[attr-defined]
        self.test = test
        self.cover.switch_context(item.nodeid)
        start = time.process_time()
        try:
            return (yield)
        finally:
            self.seconds[item.nodeid] = round(time.process_time() - start, 4)
            self.cover.switch_context("")


def record(suites: tuple[str, ...], to: Path) -> int:
    """Runs the suites in this process and writes what they reach; pytest's exit code."""
    cover = coverage.Coverage(
        data_file=None, source=[str(PACKAGE / room) for room in ROOMS], config_file=False
    )
    recorder = Recorder(cover)
    cover.start()
    for module in modules(Path()):
        importlib.import_module(
            module.removeprefix("plugins/").removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        )
    code = pytest.main([*OPTIONS, *(f"tests/{suite}" for suite in suites)], plugins=[recorder])
    cover.stop()
    data = cover.get_data()
    names = sorted(data.measured_contexts())
    numbers = {name: number for number, name in enumerate(names)}
    lines = {
        Path(file).relative_to(Path.cwd()).as_posix(): {
            line: [numbers[name] for name in by] for line, by in data.contexts_by_lineno(file).items()
        }
        for file in sorted(data.measured_files())
    }
    kept = {"seconds": recorder.seconds, "names": names, "lines": lines}
    to.write_text(json.dumps(kept), encoding="utf-8")
    return int(code)


if __name__ == "__main__":
    sys.exit(record(SUITES, Path(sys.argv[1])))
