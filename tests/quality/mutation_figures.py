"""The figures of mutation testing: shares with their intervals, and the survivors by module."""

import csv
import math
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import astuple, dataclass
from pathlib import Path

from tests.yaml_text import read_yaml

from .mutation_changes import PACKAGE
from .mutation_trial import Outcome

HERE = Path(__file__).parent
ALIKE = HERE / "mutation_alike.yml"
RUNS = HERE / "mutation_runs.csv"
HOW = {
    "failed": "a test failed",
    "hung": "a test took more than ten times as long",
    "broke": "the module could not be imported",
    "survived": "no test noticed",
    "unreached": "no test comes by the line",
}


@dataclass(frozen=True)
class Alike:
    """A change that provably makes no difference, and why."""

    module: str
    was: str
    now: str
    why: str

    def is_of(self, one: Outcome) -> bool:
        return (one.module, one.was, one.now) == (f"{PACKAGE.as_posix()}/{self.module}", self.was, self.now)


def alike(file: Path = ALIKE) -> list[Alike]:
    """The kept list of them."""
    return [Alike(**one) for one in read_yaml(file.read_text(encoding="utf-8")) or []]


def wilson(hits: int, number: int) -> tuple[float, float]:
    """The 95 % interval of a share by Wilson's score (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927, 209)."""
    if not number:
        return 0.0, 1.0
    z = 1.959964
    share, square = hits / number, z * z / number
    middle = (share + square / 2) / (1 + square)
    half = z / (1 + square) * math.sqrt(share * (1 - share) / number + square / (4 * number))
    return max(0.0, middle - half), min(1.0, middle + half)


@dataclass(frozen=True)
class Run:
    """One sample: its outcomes without those that change nothing, how many those were, and how many changes
    were drawn (more than were tried where the run was stopped).
    """

    seed: int
    outcomes: tuple[Outcome, ...]
    alike: int
    drawn: int

    @classmethod
    def of(cls, seed: int, outcomes: Iterable[Outcome], known: Sequence[Alike], drawn: int) -> "Run":
        """A run's outcomes; a change that was noticed counts, whatever the list says."""
        every = list(outcomes)
        counted = tuple(one for one in every if one.killed or not any(same.is_of(one) for same in known))
        return cls(seed, counted, len(every) - len(counted), drawn)

    @property
    def counted(self) -> int:
        return len(self.outcomes)

    @property
    def tried(self) -> int:
        return self.counted + self.alike

    @property
    def killed(self) -> int:
        return sum(one.killed for one in self.outcomes)

    @property
    def survivors(self) -> list[Outcome]:
        return [one for one in self.outcomes if not one.killed]


@dataclass(frozen=True)
class Line:
    """A run as the list of runs keeps it."""

    seed: int
    drawn: int
    tried: int
    alike: int
    killed: int


def keep_run(run: Run, file: Path = RUNS) -> list[Line]:
    """Adds a run to the list (in place of an earlier one of that seed) and gives the list."""
    lines = []
    if file.exists():
        with file.open(encoding="utf-8", newline="") as kept:
            lines = [Line(*map(int, row)) for row in list(csv.reader(kept))[1:]]
    lines = [line for line in lines if line.seed != run.seed]
    lines.append(Line(run.seed, run.drawn, run.tried, run.alike, run.killed))
    with file.open("w", encoding="utf-8", newline="") as kept:
        csv.writer(kept, lineterminator="\n").writerows(
            [("seed", "drawn", "tried", "alike", "killed"), *map(astuple, lines)]
        )
    return lines


def text(run: Run, runs: Sequence[Line]) -> str:
    """The section of README.md."""
    took = sorted(one.seconds for one in run.outcomes)
    how = Counter(one.how for one in run.outcomes).most_common()
    return "\n\n".join(
        [
            "`make mutants` changes one place of `notation/`, `fabric/` or `review/` at a time (the changes\n"
            "are those of the library mutmut) and runs the tests of the fast suites that come by it.\n"
            f"Seed {run.seed}: {run.drawn:,} changes, drawn from all modules by the places "
            f"that can be changed.\n{_stopped(run)}{run.alike} of them change nothing and aren't counted "
            "(`mutation_alike.yml`).\n"
            f"**Noticed: {_share(run.killed, run.counted)}.**\n"
            f"Half of the changes took less than {math.ceil(took[len(took) // 2])} s.",
            _table("room", run.outcomes, lambda one: one.module.split("/")[2]),
            _table("kind of change", run.outcomes, lambda one: one.kind),
            f"How it was noticed, or not: {', '.join(f'{HOW[name]} {number}' for name, number in how)}.",
            "Every sample so far. Tests were written for what an earlier one showed, so only a new seed\n"
            "says how good they are:",
            _runs(runs),
            "### Not noticed",
            _survivors(run.survivors) or "None.",
        ]
    )


def _stopped(run: Run) -> str:
    if run.tried == run.drawn:
        return ""
    return f"**The run was stopped: only {run.tried:,} of them, by chance, were tried.**\n"


def _runs(runs: Sequence[Line]) -> str:
    rows = [
        f"| {one.seed} | {one.drawn} | {one.tried} | {one.alike} "
        f"| {_share(one.killed, one.tried - one.alike)} |"
        for one in runs
    ]
    return "\n".join(
        ["| seed | drawn | tried | change nothing | noticed of the others |", "|---|---|---|---|---|", *rows]
    )


def _share(hits: int, number: int) -> str:
    low, high = wilson(hits, number)
    return f"{hits} of {number}, {100 * hits / max(number, 1):.1f} % ({100 * low:.1f} to {100 * high:.1f} %)"


def _table(head: str, outcomes: Iterable[Outcome], of: Callable[[Outcome], str]) -> str:
    groups: dict[str, list[Outcome]] = defaultdict(list)
    for one in outcomes:
        groups[of(one)].append(one)
    rows = [
        f"| {name} | {_share(sum(one.killed for one in some), len(some))} |"
        for name, some in sorted(groups.items())
    ]
    return "\n".join([f"| {head} | noticed (95 % interval) |", "|---|---|", *rows])


def _survivors(outcomes: Iterable[Outcome]) -> str:
    by_module: dict[str, list[Outcome]] = defaultdict(list)
    for one in outcomes:
        by_module[one.module].append(one)
    return "\n\n".join(
        f"`{module.removeprefix(f'{PACKAGE.as_posix()}/')}`\n\n"
        + "\n".join(f"- line {one.line}: {_code(one.was)} → {_code(one.now)}" for one in some)
        for module, some in sorted(by_module.items())
    )


def _code(code: str) -> str:
    """As code in Markdown, shortened; nothing where the line was dropped."""
    short = code if len(code) <= 100 else f"{code[:99]}…"
    return f"``{short}``" if short else "nothing"
