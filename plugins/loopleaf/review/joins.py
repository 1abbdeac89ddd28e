"""Pieces that are joined round after round, whatever they are said to be worked in."""

from ..fabric import PieceWork, RoundWork
from ..notation.tree import ONE, ChainOf, FastenOff, First, Join, Marker, Tally, Turn, Work
from .subject import Subject

ENOUGH = 2
"""So many rounds, all but the last, make a habit: a last slip stitch may only level a spiral."""


def joined_throughout(subject: Subject, piece: PieceWork) -> list[RoundWork]:
    """The joined rounds of a piece in a spiral or in rows, where all of them are, the last one aside.

    [] where some aren't, or an error leaves open how they go.
    """
    worked = subject.pattern.pieces[piece.name].worked
    rounds = piece.rounds
    if worked not in ("spiral rounds", "rows") or any(not _is_read(round) for round in rounds):
        return []
    if not all(map(_is_joined, rounds[:-1])):
        return []
    joined = [round for round in rounds if _is_joined(round)]
    return joined if len(joined) >= ENOUGH else []


def _is_read(round: RoundWork) -> bool:
    return round.line is not None and all(one.rule == "turn-missing" for one in round.troubles)


def _is_joined(round: RoundWork) -> bool:
    """Whether a line ends by going back to its own beginning: `join`, `sl st in first st`."""
    steps = round.line.steps if round.line is not None else ()
    ends = (Turn, FastenOff, Marker, Tally)
    last = next((step for step in reversed(steps) if not isinstance(step, ends)), None)
    match last:
        case Join(place=None | First() | ChainOf(), how="" | "invisibly"):
            return True
        case Work(stitch=stitch, each=each, places=(First() | ChainOf() as place,)):
            return stitch.kind == "slip" and each == ONE == getattr(place, "count", ONE)
    return False
