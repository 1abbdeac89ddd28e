"""A few changes of the code as `make mutants` tries them: some are noticed, and one changes nothing."""

import json
import signal
import subprocess
import sys
import time
from dataclasses import asdict
from pathlib import Path

import pytest

from .mutation import ended, started
from .mutation_changes import Change, change, modules, places, sample, shares
from .mutation_figures import Alike, Run, alike, keep_run, text, wilson
from .mutation_reach import Reach
from .mutation_trial import Outcome

ROOT = Path(__file__).resolve().parents[2]
TOY = '''"""A toy."""

def most(first: int, second: int = 0) -> int:
    if first > second:
        return first
    return second
'''


def outcome(how: str, now: str = "a >= b") -> Outcome:
    return Outcome("plugins/loopleaf/fabric/toy.py", "a kind", 1, "a > b", now, how, "", 1.0)


def toys(folder: Path) -> list[Change]:
    """Every change of the toy module."""
    module = "plugins/loopleaf/fabric/toy.py"
    file = folder / module
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(TOY, encoding="utf-8")
    found = [
        change(folder, module, place, number)
        for place in places(file)
        for number in range(len(place.changed))
    ]
    return [one for one in found if one is not None]


def test_a_change_is_one_line_of_what_does_something(tmp_path: Path) -> None:
    changed = {(one.line, one.was, one.now) for one in toys(tmp_path)}
    assert (4, "if first > second:", "if first >= second:") in changed
    assert (
        3,
        "def most(first: int, second: int = 0) -> int:",
        "def most(first: int, second: int = 1) -> int:",
    ) in changed
    assert not any("toy" in was for _, was, _ in changed)


def test_a_sample_is_the_same_for_a_seed_and_comes_from_every_module(tmp_path: Path) -> None:
    for room, lines in (("fabric", 30), ("notation", 3), ("review", 9)):
        for name in ("one", "two"):
            file = tmp_path / f"plugins/loopleaf/{room}/{name}.py"
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text("\n".join(f"{name}{n} = {n} + 1" for n in range(lines)), encoding="utf-8")
    first = list(sample(tmp_path, 40, 7))
    assert first == list(sample(tmp_path, 40, 7))
    assert first != list(sample(tmp_path, 40, 8))
    assert {one.module for one in first} == set(modules(tmp_path))
    assert len({(one.module, one.now) for one in first}) == len(first)


def test_shares_are_by_size_and_whole() -> None:
    assert shares({"a": 60, "b": 30, "c": 10, "empty": 0}, 10) == {"a": 6, "b": 3, "c": 1}
    assert shares({"a": 1000, "b": 1}, 10) == {"a": 9, "b": 1}
    assert shares({"a": 2, "b": 1}, 10) == {"a": 2, "b": 1}


def test_a_changed_line_is_tried_on_the_tests_that_come_by() -> None:
    text = "x = 1\ndef f():\n    return (\n        x\n        + 2\n    )\n"
    near, far = "tests/fabric/test_a.py::test_near", "tests/review/test_b.py::test_far"
    elsewhere = "tests/demo/test_c.py::test_that_starts_a_program"
    lines = {1: frozenset({""}), 2: frozenset({""}), 3: frozenset({near})}
    reach = Reach({near: 0.1, far: 0.1, elsewhere: 9.0}, {"m.py": lines, "n.py": {1: frozenset({far})}})
    assert reach.tests("m.py", 5, text) == [near]
    assert reach.tests("m.py", 1, text) == [near, far]
    assert reach.tests("other.py", 3, text) == []
    collected = Reach({near: 0.1, far: 0.1}, {"m.py": {3: frozenset({"tests/review"})}})
    assert collected.tests("m.py", 4, text) == [far]


def test_wilson_against_published_values() -> None:
    """R. G. Newcombe, Statistics in Medicine 17 (1998), table I, the score method."""
    for hits, number, low, high in (
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ):
        assert wilson(hits, number) == pytest.approx((low, high), abs=0.00005)


def test_a_change_that_changes_nothing_is_not_counted_unless_it_is_noticed() -> None:
    same = Alike("fabric/toy.py", "a > b", "a >= b", "Equal numbers give the same.")
    three = [outcome("failed", now="a < b"), outcome("survived"), outcome("unreached", now="b")]
    run = Run.of(1, three, [same], 3)
    assert (run.killed, run.counted, run.alike, run.tried) == (1, 2, 1, 3)
    assert Run.of(1, [outcome("failed")], [same], 1).counted == 1


def test_a_stopped_run_is_said_to_be_one(tmp_path: Path) -> None:
    runs = tmp_path / "runs.csv"
    whole = Run.of(1, [outcome("failed")], [], 1)
    assert "was stopped" not in text(whole, keep_run(whole, runs))
    stopped = Run.of(2, [outcome("failed"), outcome("survived")], [], 640)
    said = text(stopped, keep_run(stopped, runs))
    assert "The run was stopped: only 2 of them" in said
    assert "| 1 | 1 | 1 | 0 | 1 of 1" in said
    assert "| 2 | 640 | 2 | 0 | 1 of 2" in said


def test_a_stop_ends_what_was_started(monkeypatch: pytest.MonkeyPatch) -> None:
    """As Ctrl-C does: the process and its own child are ended, nothing is raised."""
    command = "import os, time; os.fork(); time.sleep(60)"
    process = subprocess.Popen([sys.executable, "-c", command], process_group=0)
    waited = process.wait
    interrupts = iter([KeyboardInterrupt])

    def wait() -> int:
        for one in interrupts:
            raise one
        return waited()

    monkeypatch.setattr(process, "wait", wait)
    assert not ended([process])
    assert process.poll() == -signal.SIGKILL
    for _ in range(100):
        if not _in_group(process.pid):
            break
        time.sleep(0.05)
    assert not _in_group(process.pid)


def _in_group(group: int) -> bool:
    """Whether anything of a process group is left that isn't just waiting to be noticed."""
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, _, of = stat.read_text().rpartition(")")[2].split()[:3]
        except OSError:
            continue
        if int(of) == group and state != "Z":
            return True
    return False


@pytest.mark.parametrize("one", alike(), ids=lambda one: f"{one.module}: {one.was}")
def test_what_is_said_to_change_nothing_still_stands_in_its_module(one: Alike) -> None:
    code = (ROOT / "plugins/loopleaf" / one.module).read_text(encoding="utf-8")
    assert one.was in " ".join(line.strip() for line in code.splitlines())
    assert one.was != one.now
    assert len(one.why) > 20


SOME = [
    ("fabric/tally.py", "worked.count - said}", "worked.count + said}"),
    ("fabric/tally.py", "said == worked.count:", "said != worked.count:"),
    ("fabric/repeats.py", "passes = 0", "passes = 1"),
    ("fabric/tally.py", 'wrong = ""', "wrong = None"),
]
"""Modules, what stands there, and what it becomes; the last changes nothing, as mutation_alike.yml says."""


def wanted(module: str, was: str, now: str) -> Change:
    """That change of the engine as it is."""
    file = f"plugins/loopleaf/{module}"
    for place in places(ROOT / file):
        for number in range(len(place.changed)):
            one = change(ROOT, file, place, number) if was in line(file, place.line) else None
            if one is not None and was in one.was and now in one.now:
                return one
    raise AssertionError(f"{module} has no “{was}” that could be “{now}” any more; choose another")


def line(file: str, number: int) -> str:
    return (ROOT / file).read_text(encoding="utf-8").splitlines()[number - 1]


def test_some_changes_of_the_engine_are_noticed_and_one_changes_nothing(tmp_path: Path) -> None:
    changes = [wanted(*one) for one in SOME]
    test = "tests/fabric/test_going_on.py::all of them"
    lines: dict[str, dict[int, list[int]]] = {}
    for one in changes:
        lines.setdefault(one.module, {})[one.line] = [0]
    kept = {"seconds": {test: 1.0}, "names": [test], "lines": lines}
    mine, reach, to = (tmp_path / name for name in ("changes.json", "reach.json", "outcomes.jsonl"))
    mine.write_text(json.dumps([asdict(one) for one in changes]), encoding="utf-8")
    reach.write_text(json.dumps(kept), encoding="utf-8")
    assert started(ROOT, "mutation_trial", mine, reach, to).wait() == 0
    outcomes = [Outcome(**json.loads(said)) for said in to.read_text(encoding="utf-8").splitlines()]
    assert [one.how for one in outcomes] == ["failed", "failed", "failed", "survived"]
    run = Run.of(1, outcomes, alike(), len(changes))
    assert (run.killed, run.counted, run.alike) == (3, 3, 1)
