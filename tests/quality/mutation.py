"""Mutation testing: small changes of the engine's code, and how many of them a test notices.

    python -m tests.quality.mutation --number 640 --seed 1

works on a copy of the tree. It runs the fast suites once to learn which test comes by which line, draws a
seeded sample spread over the modules of notation, fabric and review, tries each change in a process of its
own, and writes the figures and the survivors to README.md. The order is by chance: what a run that is stopped
(Ctrl-C) has tried so far is a sample too, a smaller one, and is written as that.
"""

import argparse
import json
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path

from .figures import write_section
from .mutation_changes import Change, sample
from .mutation_figures import Run, alike, keep_run, text
from .mutation_trial import Outcome

ROOT = Path(__file__).resolve().parents[2]
TITLE = "Changes of the code"
COPIED = ("plugins", "tests", "patterns", "theme_overrides", "*.*", ".pre-commit-hooks.yaml")
"""What a copy of the tree holds; what was built, and what tools keep, isn't among it."""


def copied(to: Path) -> Path:
    """The project copied to a new folder."""
    tree = to / "tree"
    tree.mkdir()
    for file in (file for name in COPIED for file in ROOT.glob(name)):
        if file.is_dir() and not file.name.startswith("."):
            shutil.copytree(file, tree / file.name, ignore=shutil.ignore_patterns("__pycache__"))
        elif file.is_file():
            shutil.copy(file, tree)
    return tree


def started(tree: Path, module: str, *arguments: Path) -> subprocess.Popen[bytes]:
    """A module of this folder, run in the copy and with the copy's engine, out of reach of a Ctrl-C."""
    known = os.environ | {"PYTHONPATH": f"{tree / 'plugins'}{os.pathsep}{tree}"}
    command = [sys.executable, "-m", f"tests.quality.{module}", *map(str, arguments)]
    return subprocess.Popen(command, cwd=tree, env=known, process_group=0)


def ended(processes: Sequence[subprocess.Popen[bytes]]) -> bool:
    """Waits for them, and whether they came to their end; a Ctrl-C ends them and what they started."""
    try:
        codes = [process.wait() for process in processes]
    except KeyboardInterrupt:
        for process in processes:
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGKILL)
                process.wait()
        return False
    if any(codes):
        sys.exit("The tests fail as they are, or the trial itself failed: nothing was written.")
    return True


def tried(tree: Path, changes: Sequence[Change], workers: int) -> list[Outcome]:
    """What became of the changes, of fewer if stopped; ends the program where a test fails without any."""
    reach = tree.parent / "reach.json"
    if not ended([started(tree, "mutation_reach", reach)]):
        return []
    running, kept = [], []
    for worker in range(workers):
        mine, to = tree.parent / f"changes{worker}.json", tree.parent / f"outcomes{worker}.jsonl"
        mine.write_text(json.dumps([asdict(one) for one in changes[worker::workers]]), encoding="utf-8")
        running.append(started(tree, "mutation_trial", mine, reach, to))
        kept.append(to)
    ended(running)
    lines = [line for to in kept if to.exists() for line in to.read_text(encoding="utf-8").splitlines()]
    return sorted((Outcome(**json.loads(line)) for line in lines), key=lambda one: (one.module, one.line))


def main(arguments: Sequence[str] | None = None) -> None:
    """Try a sample and write what came out."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0] if __doc__ else "")
    asked.add_argument("--number", type=int, default=640, help="how many changes, at the most")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--workers", type=int, default=1)
    given = asked.parse_args(arguments)
    for stop in (signal.SIGINT, signal.SIGTERM):
        signal.signal(stop, signal.default_int_handler)
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        drawn = list(sample(tree, given.number, given.seed))
        random.Random(given.seed).shuffle(drawn)
        drawn = drawn[: given.number]
        outcomes = tried(tree, drawn, given.workers)
    if not outcomes:
        sys.exit("Stopped before any change was tried: nothing was written.")
    run = Run.of(given.seed, outcomes, alike(), len(drawn))
    write_section(TITLE, text(run, keep_run(run)))
    print(f"{run.killed} of {run.counted} noticed; {run.tried} of the {run.drawn} drawn were tried")


if __name__ == "__main__":
    main()
