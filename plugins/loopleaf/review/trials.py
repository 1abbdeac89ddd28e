"""What alone would put a round right: another number at a repeat, `inc` for `dec`, each tried in the pattern.

A slip is named only where the pattern works out with it, and with none of the others tried.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from ..fabric import PatternWork, RoundWork, work_pattern
from ..notation.tree import Line, Repeat
from ..pattern import Path, Pattern, Source
from .lines import within

_MOST_TRIALS = 24
"""In one file: past that it has so many errors that none stands alone."""

_MOST_STITCHES = 60_000
"""In all trials together: each works the whole pattern again."""

_NEAR = (-1, 1, -2, 2)
"""So far from the number written, what a slip of the finger or of the counting makes of it."""

_PASSES = re.compile(r"(\d+)(?=[^\d)\]}*]*$)")
"""The number of passes of a repeat: the last in its stretch, behind its bracket or asterisk."""

_SWAPPED = {"inc": "dec", "dec": "inc"}
_WORD = re.compile(r"\b(?:inc|dec)\b(?! (?:in|over|of|into)\b)", re.I)


@dataclass(frozen=True, slots=True)
class Mend:
    """Words put in place of a stretch of a round's line. passes: where it is a repeat's number, in all."""

    start: int
    end: int
    words: str
    passes: int | None = None

    def put_in(self, line: str) -> str:
        """The line with it."""
        return line[: self.start] + self.words + line[self.end :]


@dataclass
class Trials:
    """The trials of one file. done: how many there were; known: what came of each line."""

    source: Source
    work: PatternWork
    done: int = 0
    known: dict[Path, Mend | None] = field(default_factory=dict)

    def only_mend(self, round: RoundWork) -> Mend | None:
        """The one change in a round's line with which the pattern has no trouble there and no new one."""
        path = round.plan.work_path
        if path not in self.known:
            self.known[path] = self._only_mend(round)
        return self.known[path]

    def count_is_borne_out(self, round: RoundWork) -> bool:
        """Whether later rounds go wrong if the round's count gives way to its stitches."""
        pattern, path = self.source.pattern, round.plan.work_path
        if pattern is None or round.plan.stated_path != (*path[:-1], "count") or self.done >= self._most:
            return False
        self.done += 1
        other = _with(pattern, path, {"count": None})
        without = _troubled(work_pattern(replace(self.source, pattern=other))) if other is not None else set()
        return not without <= _troubled(self.work)

    @cached_property
    def _most(self) -> int:
        """How many trials there may be: fewer of a large pattern."""
        sizes = (size for piece in self.work.pieces for round in piece.rounds for size in round.sizes if size)
        made = sum(len(size.made) for size in sizes)
        return min(_MOST_TRIALS, _MOST_STITCHES // (made + 1))

    def _only_mend(self, round: RoundWork) -> Mend | None:
        pattern, line = self.source.pattern, round.line
        if pattern is None or line is None:
            return None
        before = {(name, path) for name, path in _troubled(self.work) if path != round.plan.work_path}
        fitting: list[Mend] = []
        slips = list(_slips(round, line))
        if self.done + len(slips) > self._most:
            return None
        for mend in slips:
            self.done += 1
            other = _with(pattern, round.plan.work_path, {"work": mend.put_in(round.plan.work)})
            if other is None:
                return None
            if _troubled(work_pattern(replace(self.source, pattern=other))) <= before:
                fitting.append(mend)
        return fitting[0] if len(fitting) == 1 else None


def _slips(round: RoundWork, line: Line) -> Iterator[Mend]:
    """What may have been meant instead, one thing at a time."""
    text = round.plan.work
    for repeat in dict.fromkeys(one.span for one in within(line, Repeat) if one.times is not None):
        found = _PASSES.search(text, repeat.start, repeat.end) if repeat is not None else None
        for by in _NEAR if found is not None else ():
            assert found is not None
            number = int(found[1]) + by
            if number > 0:
                more = "more" in text[found.end() : repeat.end] if repeat is not None else False
                yield Mend(found.start(), found.end(), str(number), number + more)
    for word in _WORD.finditer(text):
        yield Mend(word.start(), word.end(), _SWAPPED[word[0].lower()])


def _with(pattern: Pattern, path: Path, values: Mapping[str, object]) -> Pattern | None:
    """The pattern with other values in the entry of a line; None where the line isn't an entry's own."""
    match path:
        case ("pieces", str() as name, _, int() as at, "work") if name in pattern.pieces:
            piece = pattern.pieces[name]
            changed = piece.entries[at].model_copy(update=dict(values))
            entries = (*piece.entries[:at], changed, *piece.entries[at + 1 :])
            other = piece.model_copy(update={piece.entries_field: entries})
            return pattern.model_copy(update={"pieces": {**pattern.pieces, name: other}})
    return None


def _troubled(work: PatternWork) -> set[tuple[str, Path]]:
    """The lines that don't work out, or can't be read, each with its piece."""
    met = {
        (piece.name, round.plan.work_path)
        for piece in work.pieces
        for round in piece.rounds
        if round.troubles
    }
    return met | {(one.piece, one.path) for one in work.problems if one.problem.severity == "error"}
