"""What measuring adds to checking: all demo patterns, in a process that has kept nothing of them."""

import multiprocessing
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from statistics import median

from loopleaf.cli import collect_seldom
from loopleaf.measure import measure
from loopleaf.review import check
from tests.benchmarks.timing import Result

RUNS = 5


def _once(project: Path) -> tuple[float, float]:
    """Seconds of this process for checking every demo pattern without measuring, and for measuring them."""
    without = measuring = 0.0
    for path in sorted((project / "patterns").glob("*.yml")):
        data = path.read_bytes()
        begun = time.process_time()
        checked = check(data, path.name)
        whole = time.process_time() - begun
        assert checked.work is not None
        begun = time.process_time()
        measure(checked.work)
        taken = time.process_time() - begun
        measuring += taken
        without += whole - taken
    return without, measuring


def measuring_of_the_demo(project: Path) -> Iterator[Result]:
    context = multiprocessing.get_context("spawn")
    runs = []
    for _ in range(RUNS):
        with ProcessPoolExecutor(1, context, initializer=collect_seldom) as pool:
            runs.append(pool.submit(_once, project).result())
    without, measuring = (median(run[at] for run in runs) for at in (0, 1))
    because = f"{1000 * measuring:.0f} ms and {1000 * without:.0f} ms, median of {RUNS}"
    yield Result("Measuring the demo ÷ checking it without", measuring / without, most=0.25, because=because)
