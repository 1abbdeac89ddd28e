"""Broken files through the review: it must answer each, soon and in little memory, and never crash.

`make fuzz` tries 200,000 (`NUMBER=…` for another number) in worker processes and writes the figures.
"""

import argparse
import multiprocessing
import resource
import signal
import sys
import time
import traceback
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, field
from pathlib import Path
from types import FrameType

from loopleaf.cli import collect_seldom
from loopleaf.review import check

from .broken import broken
from .figures import write_section

SECONDS = 2.0
HANG = 20.0
MEGABYTES = 300
BATCH = 50
RENEWED = 40
"""Batches that a worker does before it is renewed."""

Job = tuple[int, int, int]


class TooLong(BaseException):
    """Not an Exception, so that nothing on the way can take it for a mistake in the file."""


@dataclass(frozen=True)
class Trouble:
    """A file that wasn't answered as it should be: what happened, and the number that makes it again."""

    number: int
    way: str
    what: str
    detail: str


@dataclass
class Batch:
    """What some files came to."""

    tried: int = 0
    ways: Counter[str] = field(default_factory=Counter)
    rules: Counter[str] = field(default_factory=Counter)
    slowest: float = 0.0
    peak: int = 0
    troubles: list[Trouble] = field(default_factory=list)

    def add(self, other: "Batch") -> None:
        self.tried += other.tried
        self.ways += other.ways
        self.rules += other.rules
        self.slowest = max(self.slowest, other.slowest)
        self.peak = max(self.peak, other.peak)
        self.troubles += other.troubles


def _stop(signal_: int, frame: FrameType | None) -> None:
    raise TooLong


def _peak() -> int:
    """The most memory that this process has held, in megabytes.

    Linux keeps two figures: what `getrusage` tells outlives an exec, so that a worker started by a large
    process would seem as large; the status file tells of this program alone.
    """
    status = Path("/proc/self/status")
    if status.exists():
        held = next(line for line in status.read_text().splitlines() if line.startswith("VmHWM:"))
        return int(held.split()[1]) // 1024
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most // (1024**2 if sys.platform == "darwin" else 1024)


def try_number(number: int, seed: int, batch: Batch) -> None:
    """One file under the clock (its own processor time, so that a busy machine doesn't count)."""
    way, data = broken(number, seed)
    batch.tried += 1
    batch.ways[way] += 1
    signal.signal(signal.SIGVTALRM, _stop)
    began = time.process_time()
    signal.setitimer(signal.ITIMER_VIRTUAL, HANG)
    try:
        findings = check(data, "broken.yml").findings
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        batch.rules.update({one.rule for one in findings})
        lines = data.count(b"\n") + data.count(b"\r") + 4
        astray = [one for one in findings if not 1 <= one.location.line <= lines or one.location.column < 1]
        if astray:
            batch.troubles.append(Trouble(number, way, "astray", f"{astray[0].rule} at {astray[0].location}"))
    except TooLong:
        batch.troubles.append(Trouble(number, way, "hang", f"over {HANG:.0f} s"))
    except MemoryError:
        batch.troubles.append(Trouble(number, way, "memory", f"over {MEGABYTES} MB"))
    except Exception as error:  # noqa: BLE001 - whatever it is, it is what we look for
        last = traceback.extract_tb(error.__traceback__)[-1]
        where = f"{last.filename.rpartition('loopleaf/')[2]}:{last.lineno}"
        batch.troubles.append(
            Trouble(number, way, "crash", f"{type(error).__name__} at {where}: {error}"[:300])
        )
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
    took = time.process_time() - began
    batch.slowest = max(batch.slowest, took)
    if SECONDS < took <= HANG:
        batch.troubles.append(Trouble(number, way, "slow", f"{took:.1f} s"))
    peak = _peak()
    if peak > max(batch.peak, MEGABYTES):
        batch.troubles.append(Trouble(number, way, "memory", f"{peak} MB in all"))
    batch.peak = max(batch.peak, peak)


def try_batch(given: Job) -> Batch:
    """The files from one number to before another."""
    first, end, seed = given
    batch = Batch()
    for number in range(first, end):
        try_number(number, seed, batch)
    return batch


def _limited() -> None:
    """In a worker: memory far past the limit for a file is refused rather than taken from the machine.

    As in the command, circles of objects are looked for seldom.
    """
    most = 4 * MEGABYTES * 1024 * 1024
    resource.setrlimit(resource.RLIMIT_AS, (most, most))
    sys.setrecursionlimit(1000)
    collect_seldom()


def try_all(number: int, seed: int, workers: int) -> Iterator[Batch]:
    """Batches in order. A worker that dies, or a batch that never comes back, is itself a trouble.

    The workers are renewed now and then, so that what one has kept isn't counted against a later file.
    """
    jobs = [(first, min(first + BATCH, number), seed) for first in range(0, number, BATCH)]
    for start in range(0, len(jobs), RENEWED * workers):
        yield from _by_the_same_workers(jobs[start : start + RENEWED * workers], workers)


def _by_the_same_workers(jobs: Sequence[Job], workers: int) -> Iterator[Batch]:
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(workers, context, initializer=_limited) as pool:
        waiting = [pool.submit(try_batch, job) for job in jobs]
        for job, answer in zip(jobs, waiting, strict=True):
            try:
                yield answer.result(timeout=600)
            except (TimeoutError, BrokenProcessPool) as error:
                what = "hang" if isinstance(error, TimeoutError) else "crash"
                lost = Trouble(job[0], "", what, f"files {job[0]} to {job[1]} never came back")
                yield Batch(tried=job[1] - job[0], troubles=[lost])
                for process in multiprocessing.active_children():
                    process.kill()


def report(whole: Batch, seed: int) -> str:
    """The figures as a section of README.md."""
    kinds = Counter(one.what for one in whole.troubles)
    lines = [
        f"{whole.tried} broken files (seed {seed}, `make fuzz`), through `review.check` in worker processes.",
        "",
        "| | number |",
        "|---|---|",
        *(f"| {name} | {kinds[name]} |" for name in ("crash", "hang", "slow", "memory", "astray")),
        "",
        f"*slow*: over {SECONDS:.0f} s of its own time; *hang*: stopped at {HANG:.0f} s; *memory*: a "
        f"worker's peak over {MEGABYTES} MB; *astray*: a finding outside its file. Slowest file "
        f"{whole.slowest:.2f} s, largest worker {whole.peak} MB. {len(whole.rules)} rules spoke.",
        "",
        "Made by: " + ", ".join(f"{name} ({number})" for name, number in sorted(whole.ways.items())) + ".",
    ]
    return "\n".join(lines)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=200_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--show", type=int, help="print the file of that number, and try it here")
    parser.add_argument("--no-write", action="store_true", help="leave README.md as it is")
    given = parser.parse_args()
    if given.show is not None:
        way, data = broken(given.show, given.seed)
        print(f"# {way}", data.decode("utf-8", "backslashreplace"), sep="\n")
        check(data, "broken.yml")
        return
    whole = Batch()
    for batch in try_all(given.number, given.seed, given.workers):
        whole.add(batch)
        for trouble in batch.troubles:
            print(f"{trouble.number} ({trouble.way}): {trouble.what}: {trouble.detail}", flush=True)
    text = report(whole, given.seed)
    print(text)
    if not given.no_write:
        write_section("Broken files", text)
    raise SystemExit(bool(whole.troubles))


if __name__ == "__main__":
    main()
