"""Layers: rounds worked behind the one before, into the stitches of an earlier one (rows of petals)."""

from collections.abc import Sequence
from itertools import pairwise

from ..fabric import WorkedRound
from ..fabric.layers import step_down


def is_layer(worked: WorkedRound, before: WorkedRound | None) -> bool:
    """Whether all of a round stands on rounds before the one made last (a size may lack some between)."""
    if before is None or not worked.made or not before.made:
        return False
    return step_down(worked) > worked.made[0].round - before.made[0].round


def layers_of(rounds: Sequence[WorkedRound]) -> list[int]:
    """The layer that each round belongs to, from 0 in front."""
    found: list[int] = []
    for at, one in enumerate(rounds):
        found.append((found[-1] if found else 0) + is_layer(one, rounds[at - 1] if at else None))
    return found


def last_layer(rounds: Sequence[WorkedRound]) -> int:
    """The last round that is a layer, by its index; -1 without one."""
    found = layers_of(rounds)
    return max((at for at, (one, after) in enumerate(pairwise(found), 1) if after > one), default=-1)
