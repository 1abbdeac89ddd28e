"""Where finishing steps, lengths and tails place things: piece, round and stitches by name and number."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..fabric import PieceWork, RoundWork
from ..pattern import Around, Path
from .subject import Subject


@dataclass(frozen=True, slots=True)
class Placing:
    """path: the step that places. piece: the piece placed. onto: the piece it goes on. stitches: as numbered.

    onto_field, field (`round`, `row` or `between`), stitches_field: where each of these stands, under path.
    """

    path: Path
    piece: str
    onto: str
    onto_field: str
    number: int | None
    field: str
    stitches: tuple[int, ...] = ()
    stitches_field: str = ""

    @property
    def word(self) -> str:
        """What the number is of: `round` or `row`."""
        return "row" if self.field == "row" else "round"

    @property
    def belongs(self) -> str:
        """The piece that a finding belongs to; what is put on or embroidered is none."""
        return "" if self.path[-1] in ("place", "embroider") else self.piece

    def round_of(self, subject: Subject) -> RoundWork | None:
        """The round or row that is named; the last one where none is; None where it isn't there."""
        work = subject.work.piece(self.onto)
        return round_numbered(work, self.number) if work else None


def round_numbered(work: PieceWork, number: int | None) -> RoundWork | None:
    """A piece's round by its number, its last one for None; None where there is none."""
    if number is None:
        return work.rounds[-1] if work.rounds else None
    return next((round for round in work.rounds if round.plan.number == number), None)


def posts(round: RoundWork, size: int) -> int:
    """How many stitches stand in a round, chains that count as one with them."""
    worked = round.sizes[size]
    return (
        sum(1 for made in worked.made if getattr(made, "number", 0) and hasattr(made, "role"))
        if worked
        else 0
    )


def placings(subject: Subject) -> Iterator[Placing]:
    """Everything that names a round of a piece, in the file's order."""
    for name, piece in subject.pattern.pieces.items():
        for field, length in (("length", piece.length), ("tail", piece.tail)):
            if isinstance(length, Around):
                onto = name if length.around == "self" else length.around
                path: Path = ("pieces", name, field)
                yield Placing(path, name, onto, "around", length.round or length.row, _field(length.row))
    for number, step in enumerate(subject.pattern.finishing):
        if step.sew and step.sew.to:
            sew = step.sew
            last = tuple(run.last or run.first for run in sew.stitches)
            path = ("finishing", number, "sew")
            yield Placing(
                path, sew.piece, sew.to, "to", sew.round or sew.row, _field(sew.row), last, "stitches"
            )
        mark = step.mark
        if mark is not None:
            last = tuple(run.last or run.first for run in mark.stitches)
            field = "between" if mark.between else _field(mark.row)
            path = ("finishing", number, step.kind)
            yield Placing(path, mark.what, mark.to, "to", mark.number, field, last, "stitches")
        if step.thread:
            thread = step.thread
            path = ("finishing", number, "thread")
            yield Placing(
                path, thread.piece, thread.through, "through", thread.round or thread.row, _field(thread.row),
                thread.from_, "from",
            )  # fmt: skip


def _field(row: int | None) -> str:
    return "row" if row else "round"
