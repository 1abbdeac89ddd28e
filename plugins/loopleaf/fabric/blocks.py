"""Corner to corner: blocks, each worked into the chains that a block of the row below begins with."""

from collections.abc import Sequence
from dataclasses import replace

from ..notation.tree import Chain, CountsAs, FromHook, Line, Step, Turn, Work
from .worked import Made, Place, Space

FEWEST = 2
"""So many chains at least stand at a block's beginning."""


def into_block(kind: str, into: Sequence[Place]) -> bool:
    """Whether a stitch is the slip stitch that fastens a block; it is drawn, and no stitch of the row."""
    return kind == "slip" and len(into) == 1 and isinstance(into[0], Space) and into[0].block


def begins_block(last: Made | Space | None) -> bool:
    """Whether a chain made now is the beginning of a block."""
    return isinstance(last, Made) and last.role == "travel" and into_block(last.kind, last.into)


def blocks_made(made: Sequence[Made | Space]) -> int:
    """How many blocks a row made, each beginning with its chains; 0 for a row that isn't made of any."""
    return sum(1 for one in made if isinstance(one, Space) and one.block)


def chains_skipped(line: Line) -> int:
    """How many chains the line's first block passes; 0 where it begins with none."""
    for step in line.steps:
        match step:
            case Work(counts=CountsAs(space=space, skipped=True)) if space:
                return space
            case Work(places=(FromHook(number=number), *_)):
                return number - 1
    return 0


def counts_as_stitch(line: Line) -> bool:
    """Whether the line says that the chains which its first block skips count as a stitch."""
    said = (getattr(step, "counts", None) for step in line.steps)
    return any(one is not None and one.skipped and one.stitch is not None for one in said)


def chains_said(line: Line) -> Line:
    """The line with the chains that its first block skips said to be a space; the same line where it begins
    with none."""
    for at, step in enumerate(line.steps):
        match step:
            case Chain() | Turn():
                continue
            case Work(counts=None, places=(FromHook(number=number), *_)) if number > FEWEST:
                counts = CountsAs(space=number - 1, skipped=True)
                steps: tuple[Step, ...] = (replace(step, counts=counts),)
                return Line(line.steps[:at] + steps + line.steps[at + 1 :])
            case Work(
                counts=CountsAs(chains=0, space=0, skipped=True, nothing=False) as said,
                places=(FromHook(number=number), *_),
            ) if number > FEWEST:  # counted as a stitch, and worked into later all the same
                steps = (replace(step, counts=replace(said, space=number - 1)),)
                return Line(line.steps[:at] + steps + line.steps[at + 1 :])
        return line
    return line
