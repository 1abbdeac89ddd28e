"""Where rows widen: at their ends, so that they stay straight and the edges lean, or along them, so that they
bend into an arc.
"""

from collections.abc import Sequence
from itertools import groupby, pairwise

from ..fabric import Made, WorkedRound
from .chart_things import shared
from .subject import Subject

AT_AN_END = 2
"""Increases in so many of a row's first or last places are at its end."""

ALONG = 0.25
"""Where more than this share of what rows gain is gained along them, they bend."""


def widens_at_ends(subject: Subject) -> bool:
    """Whether rows of stitches side by side gain (nearly) all that they gain at their ends."""
    if not all(isinstance(made, Made) for one in subject.worked for made in one.made):
        return False
    rows = [stitches_of(one) for one in subject.worked]
    gained = sum(max(len(after) - len(before), 0) for before, after in pairwise(rows))
    return gained > 0 and sum(map(_along, rows[1:])) <= ALONG * gained


def stitches_of(worked: WorkedRound) -> list[Made]:
    """The counted stitches of a row."""
    return [made for made in worked.made if isinstance(made, Made) and made.number]


def _along(stitches: Sequence[Made]) -> int:
    """How many stitches more than places a row has along it, away from its ends."""
    places = [len([*run]) for _, run in groupby(stitches, key=lambda made: shared(made) or id(made))]
    return sum(many - 1 for many in places[AT_AN_END:-AT_AN_END])
