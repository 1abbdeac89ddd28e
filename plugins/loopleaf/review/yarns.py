"""Which yarns a pattern takes up, and where."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..pattern import Location
from .lines import yarns_named
from .subject import Subject


@dataclass(frozen=True, slots=True)
class YarnUse:
    """One place that takes up a yarn."""

    yarn: str
    location: Location
    piece: str
    round: str = ""


def yarns_used(subject: Subject) -> Iterator[YarnUse]:
    """Every place that takes up a yarn; a piece that names none uses the first listed."""
    source = subject.source
    listed = list(subject.pattern.materials.yarns)
    for name, piece in subject.pattern.pieces.items():
        at = ("pieces", name)
        if piece.yarn:
            yield YarnUse(piece.yarn, source.locate((*at, "yarn")), name)
        elif listed:
            yield YarnUse(listed[0], source.locate(at), name)
        for number, entry in enumerate(piece.entries):
            if entry.yarn:
                label = str(entry.run.first) if entry.run else ""
                yield YarnUse(
                    entry.yarn, source.locate((*at, piece.entries_field, number, "yarn")), name, label
                )
        if piece.grid:
            for sign, yarn in piece.grid.key.items():
                if yarn in listed or len(yarn) == 1:
                    yield YarnUse(yarn, source.locate((*at, "grid", "key", sign)), name)
    for work, round in subject.rounds():
        if round.line:
            for yarn, span in yarns_named(round.line):
                yield YarnUse(yarn, subject.stretch(round, span), work.name, round.plan.label)
