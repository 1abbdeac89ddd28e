"""The author's view of counts that the file doesn't state: round by round, as the stitches make them."""

from collections.abc import Iterator
from itertools import groupby

from ..fabric import PieceWork, RoundWork
from ..review import Checked
from .terminal import SHOWN_PER_FILE, Paint, plain


def worked_out(checked: Checked, paint: Paint = plain) -> str:
    """A block for a pattern that leaves counts unstated, a line for each run of rounds alike; "" for none.

    A count that can't be read has a finding of its own, and a row repeated has the count of the one that it
    repeats.
    """
    lines = [line for piece in checked.work.pieces for line in _lines(piece)] if checked.work else []
    if not lines:
        return ""
    more = len(lines) - SHOWN_PER_FILE
    told = [
        f"{checked.source.file}: these counts are worked out from the stitches; the file states none there.",
        *(f"  {line}" for line in lines[:SHOWN_PER_FILE]),
        *([f"  and {more} more."] if more > 0 else []),
    ]
    return "\n".join([*(paint(line, "quiet") for line in told), "\n"])


def _lines(piece: PieceWork) -> Iterator[str]:
    """`pouch, rounds 7-16: 48`."""
    stated = {round.plan.label for round in piece.rounds if round.plan.stated is not None}

    def unstated(round: RoundWork) -> str:
        known = round.plan.label in stated or round.plan.again in stated
        return "" if known else _count(round)

    for count, run in groupby(piece.rounds, unstated):
        if count:
            labels = [round.plan.label for round in run]
            word = piece.rounds[0].plan.word
            which = f"{word} {labels[0]}" if len(labels) == 1 else f"{word}s {labels[0]}-{labels[-1]}"
            yield f"{piece.name}, {which}: {count}"


def _count(round: RoundWork) -> str:
    """One number, or one a size with the others in brackets; "" where no stitch is counted."""
    counts = ["-" if size is None else str(size.count) for size in round.sizes]
    if set(counts) <= {"0", "-"}:
        return ""
    return counts[0] if len(set(counts)) == 1 else f"{counts[0]} ({', '.join(counts[1:])})"
