"""How a piece in the round stands or lies before the viewer."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import cos, pi, sin, tau

from ..fabric import Made, Space
from ..fabric.layers import step_down
from ..measure.gauge import ring_radius
from ..measure.polygon import POLYGONS, corners_of
from ..measure.size import RoundSize
from ..pattern import AtStitches, Mark
from .border import bordered, rectangle_of, spots_of
from .canvas import Point
from .chart_things import place_key
from .items import Item, Spot, items_of_rounds
from .layers import last_layer
from .oblong import OBLONG_CORNERS, long_side_below, oblong_of
from .once import once
from .openings import begun_in_rows, openings_of
from .profile import Ring, as_long_as_counted, is_flat, lying, standing, stuffed
from .ring_chains import chains_in, real_ring, ring_spots
from .section import Oblong, Oval, Polygon, Section, outward, turned_to_the_reader
from .subject import Subject
from .worked_back import lie_around

LOOKING_DOWN = 20 * pi / 180
"""The viewer looks down at a standing piece by so much."""

ASKEW = 0.42
"""An oval that stands is turned by so many radians, so that an end of it shows as well as a side."""

FRONT = 0.75
"""Where along the way around a standing piece faces the viewer, begun at the right."""

PETALS = 1
"""So many rounds upon a layer make its petals."""


@dataclass(frozen=True)
class Stand:
    """How a piece stands before the viewer: its cross-section, rounds and slant (pi / 2: seen from above).

    A right-hander works to the left with the right side before her. What lies has that side up, and its
    rounds go counter-clockwise; what stands has it outside, growing upwards, and they go to the left in
    front: clockwise, seen from above (from first principles; common practice, no source).
    """

    section: Section
    rings: Sequence[Ring]
    slant: float

    @cached_property
    def _tilt(self) -> tuple[float, float]:
        return (cos(self.slant), sin(self.slant))

    @property
    def from_above(self) -> bool:
        """Whether the piece lies and is seen from above."""
        return self.slant >= pi / 2

    def across(self, out: float, along: float) -> Point:
        """Where a point of the fabric lies as seen from above: to the right, and away."""
        x, y = self.section.at(max(out, 0.0), along)
        return (x, y) if self.from_above else (-x, y)

    def outside(self, ring: Ring, along: float) -> Point:
        """The direction that the outside faces there as seen from above."""
        x, y = outward(self.section, (ring.out0 + ring.out1) / 2, along)
        return (x, y) if self.from_above else (-x, y)

    def point(self, out: float, high: float, along: float) -> Point:
        """Where a point of the fabric lies in the drawing."""
        x, y = self.across(out, along)
        up, away = self._tilt
        return (x, high * up + y * away)

    def facing(self, ring: Ring, along: float) -> float:
        """How squarely the outside faces the viewer there: 1 wholly, below 0 it is turned away."""
        if self.from_above:
            return 1.0
        up, away = self._tilt
        _, ny = self.outside(ring, along)
        outside, upward = lean(ring)
        return outside * -ny * up + upward * away

    def light(self, ring: Ring, along: float) -> float:
        """Light on the outside from the upper left, so that the round shape shows."""
        if self.from_above:
            return 1.0
        nx, ny = self.outside(ring, along)
        outside, upward = lean(ring)
        return 0.72 + 0.4 * max(outside * (-0.45 * nx - 0.7 * ny) + 0.55 * upward, -0.2)

    def light_inside(self, ring: Ring) -> float:
        """Light on the inside: a floor has more of it than a wall."""
        return 0.54 + 0.14 * max(-lean(ring)[1], 0.0)

    @property
    def is_open(self) -> bool:
        """Whether one looks into it, over the rim of its last round."""
        return bool(self.rings) and not self.from_above and self.rings[-1].out1 > 1.0

    def hidden_by_the_rim(self, ring: Ring, along: float) -> bool:
        """Whether the inside of a round lies lower in the drawing than any part of the near rim."""
        return self.point(ring.out1, ring.high1, along)[1] < self._near_rim

    @cached_property
    def _near_rim(self) -> float:
        rim = self.rings[-1]
        return min(self.point(rim.out0, rim.high0, i / 48)[1] for i in range(48))


BESIDE, BEHIND = 0.2, 0.29
"""A thumb stands at the side of a piece, so much of the way around: a little towards the viewer where it
points upwards, and a little away where one would look into it from behind.
"""

WIDE, ASIDE = 0.3, 0.15
"""Rows on more of a round than this would hide that it is open behind them: they stand so far to its side."""

LEAF_ROUNDS = 2
"""So few rounds about a chain make a leaf or a strip, which lies: they are too low for a vessel."""


def lean(ring: Ring) -> tuple[float, float]:
    """How far the outside of a round faces outwards, and upwards."""
    length = ring.rise or 1.0
    return ((ring.high1 - ring.high0) / length, (ring.out0 - ring.out1) / length)


@once
def stand_of(subject: Subject) -> tuple[Stand, list[list[Item]]]:
    """How a piece stands or lies, from its start, its corners and the length of its rounds; and the items of
    each round.
    """
    first_out = (
        _opening(subject) or real_ring(subject) or ring_radius(subject.piece, 0, subject.scale.width_mm)
    )
    section, rings, slant = _form(subject, first_out)
    whole = bordered(subject)
    if whole is not None:
        base = spots_of(whole, subject)
    else:
        base = base_spots(subject, section, 0.0) or ring_spots(subject, section)
    rounds = items_of_rounds(subject.worked, subject.scale, section, rings, base)
    if slant < pi / 2 and isinstance(section, Oval):
        section = Oval(
            section.spine, -ASKEW if section.spine else tau * (FRONT - _faced(subject, rounds, rings))
        )
    elif isinstance(section, Oblong):
        section = long_side_below(section, subject, rounds)
    elif slant >= pi / 2 and (sewn := sewn_at(subject, rounds)) is not None:
        section = turned_to_the_reader(section, sewn)
    return Stand(section, rings, slant), rounds


def _opening(subject: Subject) -> float:
    """The radius in mm of the edge or the opening of another piece that this one begins around; 0 for other
    starts.
    """
    start = subject.work.pattern.pieces[subject.piece.name].start
    if start is None or start.edge is None:
        return 0.0
    stitches = [made for made in subject.worked[0].made if isinstance(made, Made) and made.number]
    places = {place_key(place): place for made in stitches for place in made.into}
    wide = sum(place.chains if isinstance(place, Space) else 1 for place in places.values())
    return wide * subject.scale.width_mm / tau


def lying_flat(subject: Subject) -> tuple[Stand, list[list[Item]]]:
    """A round piece pressed flat, as where it is sewn on; and the items of each round."""
    section = Oval()
    rings = lying(subject.sizes, 0.0)
    rounds = items_of_rounds(subject.worked, subject.scale, section, rings, {})
    return Stand(section, rings, pi / 2), rounds


def is_leaf(subject: Subject) -> bool:
    """Whether it is a leaf or a strip: a few rounds about a chain."""
    return not subject.in_rows and spine_of(subject) > 0 and len(subject.worked) <= LEAF_ROUNDS


def is_layer_upon_layer(subject: Subject) -> bool:
    """Whether a piece begun in the round ends with the petals of a layer, as a flower does."""
    layer = last_layer(subject.worked)
    return not spine_of(subject) and 0 <= layer >= len(subject.worked) - 1 - PETALS


def lies(subject: Subject) -> bool:
    """Whether a round piece lies flat by itself."""
    return stand_of(subject)[0].from_above


def _corners(sizes: Sequence[RoundSize]) -> int:
    """How many corners the outermost round has, told by itself, or by those within it where it goes around
    them without chains in its corners. A shorter one draws them in.
    """
    if sizes[-1].corners or len(sizes) < 2 or sizes[-1].length_mm < sizes[-2].length_mm:
        return sizes[-1].corners
    return corners_of(sizes) if sizes[-2].corners else 0


def _form(subject: Subject, first_out: float) -> tuple[Section, list[Ring], float]:
    if is_layer_upon_layer(subject):
        downs = [step_down(one) for one in subject.worked]
        return Oval(), lying(subject.sizes, first_out, downs), pi / 2
    whole = bordered(subject)
    if whole is not None:
        return rectangle_of(whole, subject.scale.width_mm), lying(subject.sizes, 0.0), pi / 2
    corners = _corners(subject.sizes)
    oblong = oblong_of(subject) if corners == OBLONG_CORNERS else None
    if oblong is not None:
        return *oblong, pi / 2
    if corners in POLYGONS:
        polygon = Polygon(corners)
        inside = polygon.out_for(tau * first_out) if chains_in(subject) else first_out
        return polygon, as_long_as_counted(lying(subject.sizes, inside), polygon, subject.sizes), pi / 2
    section = Oval(spine_of(subject))
    pressed = standing(subject.sizes, section, first_out, range(len(subject.sizes)))
    around = lie_around(subject.worked, subject.sizes[-1].length_mm, subject.scale)
    if (is_flat(pressed) and not subject.stuffed) or is_leaf(subject) or around:
        return section, lying(subject.sizes, first_out), pi / 2
    runs = subject.work.pattern.pieces[subject.piece.name].lies_flat
    flat = [at for at, r in enumerate(subject.piece.rounds) if any(r.plan.number in run for run in runs)]
    if subject.stuffed:
        base = next((at for at in range(len(subject.sizes)) if at not in flat), 0)
        return section, stuffed(subject.sizes, section, first_out, base), LOOKING_DOWN
    return section, standing(subject.sizes, section, first_out, flat), LOOKING_DOWN


def spine_of(subject: Subject) -> float:
    """The length in mm between the two ends of an oval; 0 for a piece that doesn't begin on both sides of a
    chain.
    """
    return max(len(chains_of(subject)) - 1, 0) * subject.scale.width_mm


def base_spots(subject: Subject, section: Section, out: float) -> dict[int, Spot]:
    """Where the chains of an oval's start lie, as shares of the way around so far out: side by side along
    one straight side and back along the other, the two end ones in the middle of the rounded ends.
    """
    numbers = chains_of(subject)
    if len(numbers) < 2:
        return {}
    ends = len(numbers) - 1
    straight = section.carried(0.5 - 1e-9, 0.0, out)
    near = {id(place) for place in subject.piece.starts[0]}
    spots: dict[int, Spot] = {}
    for made in subject.worked[0].made:
        for place in made.into:
            if not isinstance(place, Made) or place.number not in numbers:
                continue
            at = numbers.index(place.number)
            if at in (0, ends):
                middle, half = 0.75 + straight / 2 - (0.5 if at else 0.0), (0.5 - straight) / 2
            else:
                middle = at / ends * straight if id(place) in near else 0.5 + (1 - at / ends) * straight
                half = straight / ends / 2
            spots[id(place)] = Spot(middle - half, middle + half)
    return spots


def chains_of(subject: Subject) -> list[int]:
    """The numbers of the chains that an oval's first round goes into; none for other starts. Some patterns
    only say in the round itself that it goes back along the chain's other side.
    """
    start = subject.work.pattern.pieces[subject.piece.name].start
    if start is None or start.kind not in ("both sides", "chain") or subject.in_rows:
        return []
    numbers = [
        place.number
        for made in subject.worked[0].made
        for place in made.into
        if isinstance(place, Made) and place.role == "foundation"
    ]
    turns = any(b > a for a, b in pairwise(numbers)) and any(b < a for a, b in pairwise(numbers))
    return sorted(set(numbers)) if turns or start.kind == "both sides" else []


def middle_of(
    subject: Subject, rounds: Sequence[Sequence[Item]], step: AtStitches
) -> tuple[int, float] | None:
    """The round that a part is sewn to, by its index, and where along it the part's middle lies, of several
    copies the first one's; of marks, such as eyes, the middle of all. None where the step doesn't say.
    """
    at = next((i for i, r in enumerate(subject.piece.rounds) if r.plan.number == step.number), None)
    if at is None or not step.stitches:
        return None
    runs = step.stitches if isinstance(step, Mark) else step.stitches[:1]
    wanted = {number for run in runs for number in run.numbers}
    under = [i.middle for i in rounds[at] if isinstance(i.thing, Made) and i.thing.number in wanted]
    return (at, sum(under) / len(under)) if under else None


def sewn_at(subject: Subject, rounds: Sequence[Sequence[Item]]) -> float | None:
    """Where along its way around the first part that is sewn to a piece lies, else what is put on it; None
    without either.
    """
    steps = subject.work.pattern.finishing
    for one in (*(step.sew for step in steps), *(step.mark for step in steps)):
        if one is not None and one.to == subject.piece.name:
            found = middle_of(subject, rounds, one)
            if found is not None:
                return (
                    found[1]
                    if isinstance(one, Mark)
                    else _middle_of_pair(subject, rounds, one.piece, found[1])
                )
    return None


def _middle_of_pair(subject: Subject, rounds: Sequence[Sequence[Item]], name: str, along: float) -> float:
    """Halfway between the first two places of a part in rows, as of a strap; else its own place."""
    part, ends = subject.work.pattern.pieces.get(name), ends_sewn(subject, rounds).get(name, [])
    if part is None or not part.worked.startswith("rows") or len(ends) < 2:
        return along
    return ends[0][1] + ((ends[1][1] - ends[0][1] + 0.5) % 1.0 - 0.5) / 2


def ends_sewn(subject: Subject, rounds: Sequence[Sequence[Item]]) -> dict[str, list[tuple[int, float]]]:
    """Where each piece is sewn to this one, by its name, run after run: the round, by its index, and how far
    along it the run's middle lies.
    """
    found: dict[str, list[tuple[int, float]]] = {}
    for step in subject.work.pattern.finishing:
        if step.sew is None or step.sew.to != subject.piece.name:
            continue
        at = next((i for i, r in enumerate(subject.piece.rounds) if r.plan.number == step.sew.number), None)
        for run in step.sew.stitches if at is not None else ():
            under = [i.middle for i in rounds[at or 0] if isinstance(i.thing, Made) and i.thing.number in run]
            if under:
                found.setdefault(step.sew.piece, []).append((at or 0, sum(under) / len(under)))
    return found


def narrows(rings: Sequence[Ring]) -> bool:
    """Whether the end of a piece is narrower than its beginning: a thumb points that way."""
    return rings[-1].out1 < rings[0].out0


def _faced(subject: Subject, rounds: Sequence[Sequence[Item]], rings: Sequence[Ring]) -> float:
    """Which part of the way around faces the viewer: where something is sewn or put on, else what lies beside
    an opening that another piece begins at, else what rows begin on, else the half away from the join.
    """
    sewn = sewn_at(subject, rounds)
    if sewn is not None:
        return sewn
    for opening in openings_of(subject, rounds):
        return opening.along + (BESIDE if narrows(rings) else BEHIND)
    flaps = [*begun_in_rows(subject, rounds, around=True)]
    if len(flaps) > 1:
        return flaps[0].along + ((flaps[1].along - flaps[0].along + 0.5) % 1.0 - 0.5) / 2
    if flaps:
        return flaps[0].along + (ASIDE if flaps[0].wide > WIDE else 0.0)
    return next((row[0].start for row in reversed(rounds) if row), 0.0) + 0.5
