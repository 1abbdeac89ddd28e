"""What the first round or row of a diagram goes into: a ring, or the chains of a foundation.

Foundation chains carry round 0 and their own number.
"""

from ..fabric import Made, Ring
from .chart_places import Places, Rows
from .items import foundation
from .pen import Mark, Pen
from .signs import CHAIN_LONG, MAGIC_RING, UNIT
from .subject import Subject


def draw_start(pen: Pen, subject: Subject, places: Places, chain: str) -> None:
    """What the first round goes into: a ring, or the chains of a foundation."""
    start = subject.piece.starts[0] if subject.piece.starts else []
    if isinstance(places, Rows):
        _foundation_row(pen, subject, places, chain)
        return
    first = start[0] if start else None
    if isinstance(first, Ring):
        if not first.chains:
            pen.ring(MAGIC_RING - 2)
        for at in range(first.chains):
            middle, after = (
                places.section.at(MAGIC_RING - 1, (at + ahead) / first.chains) for ahead in (0, 0.01)
            )
            pen.chain(
                (middle[0], -middle[1]),
                (after[0] - middle[0], middle[1] - after[1]),
                Mark(chain, "0", at + 1),
            )
        return
    chains = [place for place in start if isinstance(place, Made) and place.role == "foundation"]
    for at, place in enumerate(chains):
        x = ((len(chains) - 1) / 2 - at) * UNIT
        pen.chain((x, 0.0), (1.0, 0.0), Mark(chain, "0", place.number))


def _foundation_row(pen: Pen, subject: Subject, rows: Rows, chain: str) -> None:
    start = subject.piece.starts[0] if subject.piece.starts else []
    spots = foundation(subject.worked[0], start, rows.leftward[0])
    ahead = 0
    for place in start:
        if not isinstance(place, Made) or place.role != "foundation":
            continue
        spot = spots.get(id(place))
        if spot is not None:
            middle = rows.point(0, (spot.start + spot.end) / 2, -CHAIN_LONG * 0.4)
            pen.chain(middle, (1.0, 0.0), Mark(chain, "0", place.number))
        elif not spots or _stands_beside(subject):
            middle = rows.before(0, 0.78, CHAIN_LONG * (ahead + 0.1))
            pen.chain(middle, (0.0, 1.0), Mark(chain, "0", place.number))
            ahead += 1


def _stands_beside(subject: Subject) -> bool:
    """Whether chains passed at the start of the first row stand beside it and count as nothing."""
    first = subject.worked[0].made[0]
    return not (isinstance(first, Made) and first.role == "turning")
