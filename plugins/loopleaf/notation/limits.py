"""Keeps a line within what hands can make: repeats within repeats mustn't multiply beyond all sense."""

from collections.abc import Iterable

from .lexer import LARGEST
from .problem import Problem
from .tree import Amount, Chain, Group, Next, Over, Passage, Repeat, Skip, Span, Step, Together, Work


def too_many(steps: Iterable[Step], length: int) -> Problem | None:
    """The problem where one line would make more than LARGEST stitches and chains by its numbers alone; else
    None.

    What `around` and other open ends add depends on the round below and isn't known here.
    """
    for step in steps:
        total = _made(step)
        if total > LARGEST:
            return Problem(
                "number-too-large",
                "error",
                step.span or Span(0, length),
                "These steps make more stitches than any round can hold.",
                f"By their numbers they come to {total:,}; a line may hold {LARGEST:,}.",
            )
    return None


def _made(step: Step) -> int:
    """How many stitches, chains or passed places a step's own numbers come to, in its largest size."""
    if isinstance(step, Repeat):
        inside = sum(map(_made, step.steps))
        return inside * (_largest(step.times) if step.times is not None else 1) + sum(map(_made, step.ending))
    if isinstance(step, Work):
        return _largest(step.each) * sum(
            _largest(place.count) if isinstance(place, (Next, Over)) else 1
            for place in step.places or (None,)
        )
    if isinstance(step, Group):
        places = sum(_largest(place.count) if isinstance(place, Next) else 1 for place in step.places)
        return sum(map(_made, step.steps)) * places
    if isinstance(step, Passage | Together):
        return sum(map(_made, step.steps))
    if isinstance(step, Chain):
        return _largest(step.length)
    return _largest(step.count) if isinstance(step, Skip) else 1


def _largest(amount: Amount) -> int:
    if amount.variable:
        return 1
    return max((size for size in amount.sizes if size is not None), default=0)
