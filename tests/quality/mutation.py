"""Mutation testing: small changes of the engine's code, and how many of them a test notices.

    python -m tests.quality.mutation --number 640 --seed 1

works on a copy of the tree. It runs the fast suites once to learn which test comes by which line, draws a
seeded sample spread over the modules of notation, fabric and review, tries each change in a process of its
own, and writes the figures and the survivors to README.md.
"""

import argparse
import json
import os
import shutil
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
    """A module of this folder, run in the copy and with the copy's engine."""
    known = os.environ | {"PYTHONPATH": f"{tree / 'plugins'}{os.pathsep}{tree}"}
    command = [sys.executable, "-m", f"tests.quality.{module}", *map(str, arguments)]
    return subprocess.Popen(command, cwd=tree, env=known)


def tried(tree: Path, changes: Sequence[Change], workers: int) -> list[Outcome]:
    """What became of the changes; ends the program where a test fails without any."""
    reach = tree.parent / "reach.json"
    if started(tree, "mutation_reach", reach).wait():
        sys.exit("The tests fail as they are; nothing can be said about changes.")
    running = []
    for worker in range(workers):
        mine, to = tree.parent / f"changes{worker}.json", tree.parent / f"outcomes{worker}.jsonl"
        mine.write_text(json.dumps([asdict(one) for one in changes[worker::workers]]), encoding="utf-8")
        running.append((started(tree, "mutation_trial", mine, reach, to), to))
    ended = [process.wait() for process, _ in running]
    if any(ended):
        sys.exit("The trial itself failed; nothing was written.")
    lines = [line for _, to in running for line in to.read_text(encoding="utf-8").splitlines()]
    return sorted((Outcome(**json.loads(line)) for line in lines), key=lambda one: (one.module, one.line))


def main(arguments: Sequence[str] | None = None) -> None:
    """Try a sample and write what came out."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0] if __doc__ else "")
    asked.add_argument("--number", type=int, default=640, help="about how many changes")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--workers", type=int, default=1)
    given = asked.parse_args(arguments)
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        outcomes = tried(tree, list(sample(tree, given.number, given.seed)), given.workers)
    run = Run.of(given.seed, outcomes, alike())
    write_section(TITLE, text(run, keep_run(run)))
    print(f"{run.killed} of {run.counted} noticed")


if __name__ == "__main__":
    main()
