"""Rings that leave an opening: of chains worked into one by one, as the neck of a yoke; of wire or cord."""

from math import tau

from ..fabric import Made, Ring
from .corner_knots import knots_of, moved_to
from .items import Spot
from .section import Polygon, Section
from .subject import Subject


def real_ring(subject: Subject) -> float:
    """The radius in mm of a ring of wire or cord that the first round is worked over: its stitches fill it,
    side by side. 0 for other starts.
    """
    start = subject.piece.starts[0] if subject.piece.starts else []
    if not any(isinstance(place, Ring) and place.kind == "ring" for place in start):
        return 0.0
    first = subject.sizes[0]
    return max(first.stitches * subject.scale.width_mm / tau - first.rise_mm, first.rise_mm)


def chains_in(subject: Subject) -> int:
    """How many chains the ring has; 0 where the first round goes into no single chain of one."""
    starts = subject.piece.starts[0] if subject.piece.starts else []
    ring = next((one for one in starts if isinstance(one, Ring)), None)
    return ring.chains if ring is not None and any(_places(subject)) else 0


def _places(subject: Subject) -> list[Made]:
    """The chains that the first round goes into, once a stitch."""
    return [
        place
        for made in subject.worked[0].made
        if isinstance(made, Made)
        for place in made.into
        if isinstance(place, Made) and place.role == "foundation"
    ]


def link_ends(subject: Subject, section: Section) -> list[float]:
    """Where the chains end, as shares of the way around, begun where the first one starts: evenly, those that
    a polygon's corners are worked into in its corners. [] for other starts.
    """
    whole = chains_in(subject)
    ends = [at / whole for at in range(whole + 1)] if whole else []
    knots = _corners(subject, whole, section.corners) if ends and isinstance(section, Polygon) else []
    return [*map(moved_to(knots), ends)] if knots else ends


def ring_spots(subject: Subject, section: Section) -> dict[int, Spot]:
    """Where the chains lie, by id; {} for other starts."""
    ends = link_ends(subject, section)
    return {
        id(place): Spot(ends[place.number - 1], ends[place.number])
        for place in _places(subject)
        if 0 < place.number < len(ends)
    }


def _corners(subject: Subject, whole: int, corners: int) -> list[float]:
    """The middles of the chains that the corners of the first round stand in."""
    middles: list[float] = []
    last: Made | None = None
    for made in subject.worked[0].made:
        if isinstance(made, Made):
            last = made if made.number and made.into else last
        elif made.corner and last is not None and isinstance(last.into[-1], Made):
            middles.append((last.into[-1].number - 0.5) / whole)
    return knots_of(middles, corners)
