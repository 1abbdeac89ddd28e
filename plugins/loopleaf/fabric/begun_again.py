"""A foundation chain said again where row 1 begins, as books print it: `Ch 12, sc in 2nd ch from hook`."""

from collections.abc import Sequence
from dataclasses import replace

from ..notation.tree import Chain, ChainOf, First, FromHook, Join, Line, Step, Stitch, Work
from ..pattern import Start
from .borne_out import ReadRound
from .worked import PieceWork


def without_the_chain(
    lines: Sequence[ReadRound], start: Start | None, size_count: int
) -> list[ReadRound] | None:
    """The lines, the first without the chain (and the slip stitch that joins it) that the piece starts with;
    None where it doesn't begin with one just as long.
    """
    line = lines[0].line if lines else None
    if line is None or start is None or start.chain is None:
        return None
    again = _steps_of_the_chain(line.steps, start.kind == "chain ring")
    if not again or not isinstance(chain := line.steps[0], Chain):
        return None
    if any(chain.length.of(size) != start.chain.of(size) for size in range(size_count)):
        return None
    return [replace(lines[0], line=Line(line.steps[again:])), *lines[1:]]


def _steps_of_the_chain(steps: tuple[Step, ...], ring: bool) -> int:
    """How many steps make a foundation chain; 0 where the line begins with none."""
    match steps:
        case (Chain(counts=None), Work(places=(FromHook(number=number), *_), stitch=stitch), *_) if (
            not ring and number and stitch.kind != "slip"
        ):
            return 1
        case (Chain(counts=None), Join(how="") | Work(stitch=Stitch(kind="slip")) as closed, _, *_) if ring:
            place = closed.place if isinstance(closed, Join) else closed.places[0] if closed.places else None
            return 2 if place is None or isinstance(place, First | FromHook | ChainOf) else 0
    return 0


def begins_well(work: PieceWork) -> bool:
    """Whether the first round comes out."""
    return not work.rounds[0].troubles
