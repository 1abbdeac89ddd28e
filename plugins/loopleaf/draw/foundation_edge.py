"""The edge that rows begin at: as long as its chains, however many stitches the first row makes in them."""

from ..fabric import Made
from .items import foundation
from .subject import Subject

ALIKE = 0.04
"""A first row whose length differs by less than this share is as long as what it was worked into."""


def foot_mm(subject: Subject) -> float:
    """How long the foot of the first row is, in mm: the chains that it was worked into, where it grew out of
    them; else its own length.
    """
    first = subject.sizes[0].length_mm
    start = subject.piece.starts[0] if subject.piece.starts else []
    if not any(isinstance(place, Made) and place.role == "foundation" for place in start):
        return first
    spots = foundation(subject.worked[0], start, mirrored=False)
    if not spots:
        return first
    spot = next(iter(spots.values()))
    chains = round(1 / (spot.end - spot.start)) * subject.scale.width_mm
    return chains if chains < first * (1 - ALIKE) else first
