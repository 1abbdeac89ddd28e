"""A piece in the round with two longer and two shorter sides, as a yoke whose sleeves are narrow: a rectangle
about its opening.
"""

from collections.abc import Sequence
from dataclasses import replace

from ..fabric.long_sides import rectangle_of
from .items import Item
from .profile import FORESHORTENED, Ring, lying, reached
from .ring_chains import chains_in
from .section import Oblong
from .subject import Subject

OBLONG_CORNERS = 4


def oblong_of(subject: Subject) -> tuple[Oblong, list[Ring]] | None:
    """What such a piece lies on, and its rounds; None for others. It begins as long as its chains, and ends
    as long as its stitches make it: what cups is seen from above.
    """
    chains = chains_in(subject)
    sides = rectangle_of(subject.worked) if chains else None
    if sides is None:
        return None
    rings = lying(subject.sizes, 0.0)
    last = subject.sizes[sides.at].length_mm
    grown = (last - chains * subject.scale.width_mm) / 8  # at each end of each side
    share = max(grown / rings[sides.at].out1, FORESHORTENED)
    within = 2 * rings[sides.at].out1 * share
    wide, high = (max(last * side - within, 0.0) for side in (sides.long, sides.short))
    return Oblong(wide=wide, high=high), reached(rings, share)


def long_side_below(section: Oblong, subject: Subject, rounds: Sequence[Sequence[Item]]) -> Oblong:
    """Turned so that the side which its stitches make longer is the one that is drawn so."""
    sides = rectangle_of(subject.worked)
    if sides is None:
        return section
    many = [0, 0]
    for item in rounds[sides.at]:
        many[int(item.middle % 1.0 * section.corners) % 2] += not item.corner
    return replace(section, first=1) if many[1] > many[0] else section
