"""One entry with a wrong number among entries that are in order but for it."""

from dataclasses import dataclass

from .pieces import Piece
from .values import Run


@dataclass(frozen=True, slots=True)
class Slip:
    """An entry whose number was mistaken. numbers: those that it must have been meant to have.

    twice: numbers that it has and another entry too. lacking: numbers that no entry has.
    """

    entry: int
    numbers: range
    twice: list[int]
    lacking: list[int]


def one_slip(piece: Piece) -> Slip | None:
    """The one entry that, numbered otherwise, puts all in order; None where none does, or where several
    could.

    Only where a later entry has a number of its too: a missing number alone may be a round that was
    forgotten, and an entry that repeats an earlier number is told as such. Pieces whose rounds follow `every`
    or `until` have other ways of being in order.
    """
    numbered = [(at, entry) for at, entry in enumerate(piece.entries) if entry.run]
    runs = [run for _, entry in numbered if (run := entry.run)]
    if any(entry.every or entry.until for _, entry in numbered):
        return None
    if any(run.last is None for run in runs[:-1]) or _follow(piece, runs):
        return None
    found: list[tuple[Slip, bool]] = []
    for at, run in enumerate(runs):
        before, after = runs[:at], runs[at + 1 :]
        first = before[-1].last + 1 if before and before[-1].last is not None else 1
        last = after[0].first - 1 if after else first + len(run.numbers) - 1
        if last < first or not _follow(piece, [*before, Run(first, last), *after]):
            continue
        numbers, others = range(first, last + 1), {n for one in (*before, *after) for n in one.numbers}
        twice = [number for number in run.numbers if number in others]
        lacking = [number for number in numbers if number not in run.numbers]
        later = any(number in one.numbers for one in after for number in twice)
        found.append((Slip(numbered[at][0], numbers, twice, lacking), later))
    return found[0][0] if len(found) == 1 and found[0][1] else None


def _follow(piece: Piece, runs: list[Run]) -> bool:
    """Whether the runs come one after the other, from 1 on (from any number on another piece's edge)."""
    on_an_edge = piece.start is not None and piece.start.kind == "edge"
    expected = runs[0].first if runs and on_an_edge else 1
    for run in runs:
        if run.first != expected:
            return False
        expected = (run.last if run.last is not None else run.first) + 1
    return True
