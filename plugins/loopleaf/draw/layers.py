"""Layers: rounds worked behind the one before, into the stitches of an earlier one (rows of petals)."""

from collections.abc import Sequence

from ..fabric import WorkedRound
from ..fabric.layers import step_down


def is_layer(worked: WorkedRound) -> bool:
    """Whether all stitches of a round stand on rounds before the one that was made last."""
    return step_down(worked) > 1


def layers_of(rounds: Sequence[WorkedRound]) -> list[int]:
    """The layer that each round belongs to, from 0 in front."""
    found: list[int] = []
    for one in rounds:
        found.append((found[-1] if found else 0) + is_layer(one))
    return found


def last_layer(rounds: Sequence[WorkedRound]) -> int:
    """The last round that is a layer, by its index; -1 without one."""
    return max((at for at, one in enumerate(rounds) if is_layer(one)), default=-1)
