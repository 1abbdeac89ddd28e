"""Whether a piece makes a ball, and where it turns.

A ball is drawn in at both ends, has no waist, and stands as high as it is across: the sphere's own way from
pole to pole is half of its way around. Its diameter lies between the least and the most height that a stuffed
piece may have (`filled`), give or take a fifth (chosen here: makers' balls are a little pointed, and a round
more or less is a twelfth of a small one).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

from .filled import CLOSED_BELOW, filled_height
from .size import RoundSize

_ABOUT = 0.2
_HAIR = 1e-6
"""Rounds that differ by less of the widest are as wide."""


@dataclass(frozen=True, slots=True)
class Ball:
    """first, last: labels of its widest rounds. turns: of the first round that draws in."""

    first: str
    last: str
    turns: str


def ball_of(rounds: Sequence[RoundSize], start_mm: float | None) -> Ball | None:
    """The ball that rounds make; None where they make none.

    start_mm: length of the edge below them, None where they begin on an edge as long as their first round.
    """
    if not rounds:
        return None
    lengths = [one.length_mm for one in rounds]
    widest = max(lengths)
    begins = lengths[0] if start_mm is None else start_mm
    if not widest or max(begins, lengths[-1]) >= CLOSED_BELOW * widest:
        return None
    high, across = filled_height(rounds, start_mm), widest / pi
    if high is None or not high.low * (1 - _ABOUT) <= across <= high.high * (1 + _ABOUT):
        return None
    same = [at for at, length in enumerate(lengths) if length >= widest - _HAIR * widest]
    turns = rounds[same[-1] + 1 : same[-1] + 2]
    return Ball(rounds[same[0]].label, rounds[same[-1]].label, turns[0].label) if turns else None
