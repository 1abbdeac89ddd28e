"""The corners of a chart's rounds: what stands in them, how many a piece has, which round has them first."""

from collections.abc import Sequence
from itertools import pairwise

from ..fabric import Made, WorkedRound
from ..fabric.edge import Edge
from ..measure.polygon import POLYGONS
from .chart_things import place_key
from .layers import last_layer
from .stand import PETALS, chains_of
from .subject import Subject

PLAIN_EDGE = 1
"""So many last rounds may go plainly around a piece with corners."""


def corners_of(worked: WorkedRound) -> frozenset[int]:
    """What stands in the corners of a round, by its ids."""
    return frozenset(Edge(list(worked.edge)).corners()) if worked.edge else frozenset()


def corner_count(subject: Subject) -> int:
    """How many corners a piece in rounds has; 0 for none and for unusually many. The petals on a layer's
    arches are none.
    """
    layer = last_layer(subject.worked)
    after = layer + 1 + PETALS if layer >= 0 else 0
    last = [one.corners for one in subject.sizes[after:][: -2 - PLAIN_EDGE : -1]]
    corners = next((number for number in last if number), 0) or _solid(subject.worked[after:])
    return corners if corners in POLYGONS else 0


def _solid(rounds: Sequence[WorkedRound]) -> int:
    """How many corners of three and more stitches in one place stand each in one of the round below."""
    for below, one in list(pairwise(rounds))[: -2 - PLAIN_EDGE : -1]:
        lower, upper = corners_of(below), corners_of(one)
        bearing = {
            place_key(place)
            for made in one.made
            if isinstance(made, Made) and id(made) in upper
            for place in made.into
        }
        if lower and len(upper) == len(lower) and bearing == lower:
            return len(lower)
    return 0


def first_with_corners(subject: Subject, corners: int) -> int:
    """The first round that has all the piece's corners, by its index: those before it lie in circles. 0 where
    none has them, and where rounds go about a chain.
    """
    if len(chains_of(subject)) > 1:
        return 0
    return next((at for at, one in enumerate(subject.worked) if len(corners_of(one)) == corners), 0)
