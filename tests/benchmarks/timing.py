"""Taking times fairly: what is compared runs in turn, and the median counts."""

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median

Work = Callable[[], object]


@dataclass(frozen=True, slots=True)
class Result:
    """One line of the report. value: a ratio, or seconds where unit is ` s`. most: the budget."""

    name: str
    value: float
    unit: str = ""
    most: float | None = None
    because: str = ""

    @property
    def kept(self) -> bool:
        return self.most is None or self.value <= self.most

    def __str__(self) -> str:
        budget = "" if self.most is None else f"  (at most {self.most:g}{self.unit})"
        verdict = "" if self.kept else "  OVER"
        return f"{self.name:<58}{self.value:>7.2f}{self.unit}{budget}{verdict}  {self.because}".rstrip()


def seconds(work: Work) -> float:
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def in_turn(works: Sequence[Work], times: int) -> list[float]:
    """The median seconds of each work, all run in turn so many times: a busy moment hits all alike."""
    taken: list[list[float]] = [[] for _ in works]
    for _ in range(times):
        for work, runs in zip(works, taken, strict=True):
            runs.append(seconds(work))
    return [median(runs) for runs in taken]
