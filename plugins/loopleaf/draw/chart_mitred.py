"""The ground of a chart whose rows have a right-angled corner in their middle, as the cloth has."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import copysign, hypot

from ..fabric import Made
from ..fabric.worked import Place
from .canvas import Point
from .chart_things import ROOM, lowest_height
from .mitre import mitre_of
from .signs import UNIT
from .subject import Subject

TURNS = 0.4 * UNIT
"""So near to the corner, along the way, a stitch grows aslant."""


CLOSER = 0.3
"""The chains around an outer corner lie only so much of a row's pitch inside of its stitches: else they
would lie upon each other.
"""


@dataclass(frozen=True, slots=True)
class Mitred:
    """Rows around a corner, laid as the picture lays them: down the left side and along the lower one where
    they grow inwards, else along the upper side and down the right one. Their way has no end: a share is a
    unit. corner: where along the way. pitch: how far apart rows lie, and the stitches of a row: then each has
    one fewer or more on either side. The first row, as long as what it goes into, lies straight above that.
    """

    corner: float
    pitch: float
    inward: bool

    def at(self, out: float, along: float) -> Point:
        """The point on one of the two sides, which lie so far out."""
        leg = along - self.corner
        below = max(self.pitch - out, 0.0) * self._beside(leg)
        far = out + below * (1.0 if self.inward else CLOSER)
        far += abs(leg) if self.inward else -abs(leg)
        return (far, out) if (leg > 0) == self.inward else (out, far)

    def _beside(self, leg: float) -> float:
        """0 in the corner, 1 on the sides."""
        return min(abs(leg) / TURNS, 1.0)

    def way(self, out: float) -> float:
        """A unit."""
        return 1.0

    def out_for(self, way: float) -> float:
        """Anywhere."""
        return 0.0

    def carried(self, along: float, out: float, to: float) -> float:
        """Straight above on its side: nearer to the corner further inside, further from it outside."""
        leg, by = along - self.corner, max(to, self.pitch) - max(out, self.pitch)
        further = (-by if self.inward else by) * self._beside(leg)
        return self.corner + copysign(max(abs(leg) + further, 0.0), leg)

    def outward(self, point: Point, upright: bool = False) -> Point:
        """The direction that stitches grow in: to the right or up; aslant in the corner, unless upright."""
        x, y = point
        if abs(x - y) < 1.0 and not upright:
            return (1 / hypot(1, 1), 1 / hypot(1, 1))
        return (0.0, 1.0) if (x > y) == self.inward else (1.0, 0.0)


def mitred(subject: Subject) -> Mitred | None:
    """What the rows of a piece with a mitred corner lie on; the corner above the middle of what its first row
    goes into. None for any other piece.
    """
    mitre = mitre_of(subject)
    start: Sequence[Place] = subject.piece.starts[0] if subject.piece.starts else ()
    chains = [place for place in start if isinstance(place, Made) and place.role == "foundation"]
    into = {id(place) for made in subject.worked[0].made for place in made.into}
    used = [at for at, place in enumerate(chains) if id(place) in into]
    if mitre is None or not used:
        return None
    backward = subject.piece.rounds[0].side != "WS"
    middle = (used[0] + used[-1] + 1) / 2
    talls = sorted(lowest_height(one.made) for one in subject.worked)
    pitch = talls[len(talls) // 2] + ROOM
    return Mitred((len(chains) - middle if backward else middle) * pitch, pitch, mitre.inward)
