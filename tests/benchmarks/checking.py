"""`loopleaf check` on the demo, as a whole command, compiled as it is wherever it has run once."""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks.timing import Result, in_turn

RUNS = 5


def check_of_the_demo(project: Path) -> Iterator[Result]:
    command = [str(Path(sys.executable).with_name("loopleaf")), "check"]

    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}

    def run() -> None:
        done = subprocess.run(command, cwd=project, capture_output=True, text=True, timeout=120, env=kept)
        if done.returncode:
            raise SystemExit(f"The demo doesn't check:\n{done.stdout}{done.stderr}")

    (taken,) = in_turn([run], RUNS)
    yield Result("`loopleaf check` on the demo, median of five", taken, " s", most=1.0)
