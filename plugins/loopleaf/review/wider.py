"""A piece begun on more chains than its own: whether its repeats still come out even."""

from dataclasses import dataclass, replace

from ..fabric import PieceWork, RoundWork, Trouble, work_pattern
from ..pattern import Numbers, Piece
from .subject import Subject


@dataclass(frozen=True, slots=True)
class Uneven:
    """The first round whose repeat doesn't fit on a wider piece. each: the places that one pass uses."""

    round: RoundWork
    trouble: Trouble

    @property
    def each(self) -> int:
        return int(self.trouble.facts["each"])


def uneven_when_wider(subject: Subject, piece: PieceWork, by: int) -> Uneven | None:
    """The repeat that goes wrong with so many chains more, where nothing goes wrong as the piece is written.

    Counts are left out of both, since they hold for the width as written. None too where the first thing
    to go wrong is another: a line with fixed numbers is for one width.
    """
    model = subject.pattern.pieces[piece.name]
    as_written = _worked(subject, piece.name, model, 0)
    if as_written is None or any(round.troubles for round in as_written.rounds):
        return None
    wider = _worked(subject, piece.name, model, by)
    troubled = next((round for round in wider.rounds if round.troubles), None) if wider is not None else None
    if troubled is None or troubled.troubles[0].rule != "repeat-does-not-fit":
        return None
    return Uneven(troubled, troubled.troubles[0])


def _worked(subject: Subject, name: str, model: Piece, by: int) -> PieceWork | None:
    """The piece alone, without its counts, on so many chains more."""
    start = model.start
    if start is None or start.chain is None:
        return None
    chains = Numbers(tuple(None if one is None else one + by for one in start.chain.sizes))
    changed = model.model_copy(
        update={
            "start": start.model_copy(update={"chain": chains, "multiple": None}),
            model.entries_field: tuple(one.model_copy(update={"count": None}) for one in model.entries),
        }
    )
    pattern = subject.pattern.model_copy(update={"pieces": {name: changed}})
    return work_pattern(replace(subject.source, pattern=pattern)).piece(name)
