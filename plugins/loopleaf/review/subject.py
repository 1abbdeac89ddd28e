"""What a rule looks at: a pattern file with its stitches worked, and what the fabric met on the way."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from ..fabric import PatternWork, PieceWork, RoundWork, Trouble
from ..measure import Measured
from ..notation.tree import Span
from ..pattern import Location, Pattern, Source
from .trials import Mend, Trials

_QUOTED_AT_MOST = 72
_CUTS = re.compile(r"[,;] ")
_SPACES = re.compile(" ")


@dataclass(frozen=True, slots=True)
class Met:
    """One thing that the fabric met, in every size that met it.

    piece, round: where it was met, None where it belongs to the whole file or the whole piece.
    troubles: one a size (a single one where there are no sizes), the smallest size first.
    """

    subject: "Subject"
    piece: PieceWork | None
    round: RoundWork | None
    troubles: tuple[Trouble, ...]

    @property
    def facts(self) -> dict[str, Any]:
        """The facts of the first size that met it."""
        return self.troubles[0].facts

    @property
    def piece_name(self) -> str:
        return self.piece.name if self.piece else ""

    @property
    def label(self) -> str:
        """The round's label, "" outside a round."""
        return self.round.plan.label if self.round else ""

    @property
    def where(self) -> str:
        """`round 7`, `row 2`, or `the piece “pouch”`."""
        if self.round:
            return f"{self.round.plan.word} {self.round.plan.label}"
        return f"the piece “{self.piece_name}”" if self.piece else "this pattern"

    @property
    def below(self) -> str:
        """What the round is worked into, by name: `round 6`, or `the start`."""
        if not self.piece or not self.round:
            return "the start"
        index = self.facts.get("along", self.piece.rounds.index(self.round) - 1)
        if index < 0:
            return "the start"
        plan = self.piece.rounds[index].plan
        return f"{plan.word} {plan.label}"

    @property
    def location(self) -> Location:
        """The smallest stretch of the file that it is about."""
        source = self.subject.source
        path = self.facts.get("path")
        span = self.troubles[0].span
        if path is not None:
            return source.locate(path, span.start, span.end) if span else source.locate(path)
        if self.round:
            return self.subject.stretch(self.round, span)
        return source.locate((*self.piece.path, "start") if self.piece else ())

    @property
    def quoted(self) -> str:
        """The author's words that it is about, as typed, in quotation marks; a long stretch is cut."""
        return self.quoted_at(self.troubles[0].span)

    def quoted_at(self, span: Span | None) -> str:
        """A stretch of the line as typed, in quotation marks; the whole line without one."""
        work = self.round.plan.work if self.round else ""
        text = work[span.start : span.end] if span else work
        return quote(text)

    @property
    def stated_at(self) -> Location | None:
        """Where the author's count of this round stands."""
        if not self.round:
            return None
        plan = self.round.plan
        if plan.in_line:
            return self.subject.source.locate(plan.work_path, *plan.in_line)
        return self.subject.source.locate(plan.stated_path) if plan.stated_path else None

    @property
    def below_at(self) -> Location | None:
        """Where the line of the round below stands."""
        if not self.piece or not self.round:
            return None
        index = self.facts.get("along", self.piece.rounds.index(self.round) - 1)
        if index < 0:
            return self.subject.source.locate((*self.piece.path, "start"))
        return self.subject.source.locate(self.piece.rounds[index].plan.work_path)

    @property
    def only_mend(self) -> Mend | None:
        """The one slip in the round's line without which the pattern works out, as its counts say."""
        return self.subject.trials.only_mend(self.round) if self.round else None

    def at_mend(self, mend: Mend) -> Location | None:
        """Where the words stand that it would replace."""
        return self.subject.stretch(self.round, Span(mend.start, mend.end)) if self.round else None

    def in_size(self, message: str) -> str:
        """The message with the sizes named, where only some of them met it."""
        sizes = self.subject.sizes
        if len(sizes) < 2 or len(self.troubles) == len(sizes):
            return message
        named = ", ".join(sizes[trouble.size] for trouble in self.troubles)
        return f"In size{'' if len(self.troubles) == 1 else 's'} {named}: {message[0].lower()}{message[1:]}"


def quote(text: str) -> str:
    """The author's words in quotation marks, cut in the middle where they are long: at commas, else between
    words."""
    text = " ".join(text.split())
    if len(text) > _QUOTED_AT_MOST:
        half = _QUOTED_AT_MOST // 2
        ends = [found.end() for found in _CUTS.finditer(text[:half])] or [
            found.end() for found in _SPACES.finditer(text[:half])
        ]
        begins = _CUTS.search(text, len(text) - half) or _SPACES.search(text, len(text) - half)
        text = f"{text[: ends[-1] if ends else half].rstrip()} … {text[begins.end() if begins else -half :]}"
    return f"“{text}”"


@dataclass(frozen=True)
class Subject:
    """A file that could be read as a pattern, worked and measured."""

    source: Source
    work: PatternWork
    measured: Measured

    @property
    def pattern(self) -> Pattern:
        pattern = self.source.pattern
        assert pattern is not None, "only a file that holds a pattern is worked"
        return pattern

    @property
    def sizes(self) -> tuple[str, ...]:
        """The names of the sizes, () where there is just one."""
        return tuple(str(size) for size in self.pattern.sizes or ())

    def known(self, piece: str, round: RoundWork | None = None) -> bool:
        """Whether a piece's rounds are in order, and what a round of it makes isn't left open by an error."""
        in_order = all(name != piece or one.rule != "rounds-out-of-order" for name, one in self.work.plans)
        return in_order and (round is None or round.sound)

    def stretch(self, round: RoundWork, span: Span | None = None) -> Location:
        """A stretch of a round's line in the file; the whole line without a span."""
        if span is None:
            return self.source.locate(round.plan.work_path)
        return self.source.locate(round.plan.work_path, span.start, span.end)

    def text_at(self, at: Location) -> str:
        """The file's text at a stretch of one line; "" where it runs over several."""
        if at.line != at.end_line:
            return ""
        lines = self.source.text.split("\n")
        return lines[at.line - 1][at.column - 1 : at.end_column - 1]

    def replacement(self, at: Location, old: str, new: str) -> str | None:
        """What to put in place of `old` so that the file says `new`; None where the stretch holds more."""
        there = self.text_at(at)
        if there == old:
            return f'"{new}"' if "," in new else new
        if len(there) > 1 and there[0] == there[-1] and there[0] in "\"'" and there[1:-1] == old:
            return f"{there[0]}{new}{there[0]}"
        return None

    @cached_property
    def trials(self) -> Trials:
        """What can be tried on this file to put a round right."""
        return Trials(self.source, self.work)

    def rounds(self) -> Iterator[tuple[PieceWork, RoundWork]]:
        """Every round of every piece, in the file's order."""
        for piece in self.work.pieces:
            for round in piece.rounds:
                yield piece, round

    def met(self, rule: str) -> Iterator[Met]:
        """What the fabric met under a rule's name; the same stretch of the file is told once."""
        told: set[Location] = set()
        for piece, round, troubles in self.troubled:
            for group in _by_stretch(trouble for trouble in troubles if trouble.rule == rule):
                met = Met(self, piece, round, group)
                if met.location not in told:
                    told.add(met.location)
                    yield met

    @cached_property
    def troubled(self) -> tuple[tuple[PieceWork, RoundWork | None, Sequence[Trouble]], ...]:
        """The pieces (None for the round) and rounds that met any trouble, in the file's order."""
        places: list[tuple[PieceWork, RoundWork | None, Sequence[Trouble]]] = []
        for piece in self.work.pieces:
            places.append((piece, None, piece.troubles))
            places += [(piece, round, round.troubles) for round in piece.rounds]
        return tuple(place for place in places if place[2])


def _by_stretch(troubles: Iterator[Trouble]) -> Iterator[tuple[Trouble, ...]]:
    """Troubles of one stretch in several sizes together."""
    groups: dict[Any, dict[int, Trouble]] = {}
    for trouble in troubles:
        key = (trouble.span, trouble.facts.get("path"), trouble.facts.get("kind"))
        groups.setdefault(key, {}).setdefault(trouble.size, trouble)
    for group in groups.values():
        yield tuple(group[size] for size in sorted(group))
