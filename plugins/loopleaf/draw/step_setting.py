"""What a technique is drawn on: its ground, with what is there before the first move."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from .step_moves import Ground, State
from .strands import Solid, Strand

Fabric = Callable[[State], Iterator[Strand | Solid]]


@dataclass(frozen=True, slots=True)
class Setting:
    """A ground with what is there before the first move. foot: how far down the drawing shows it."""

    ground: Ground
    start: State
    fabric: Fabric
    foot: float
