"""What a round is made of, counted once.

Every measure reads these numbers instead of going through the stitches again.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from ..fabric.spikes import depths
from ..fabric.worked import NUMBERED, Made, Place, Role, SortKey, Space, WorkedRound, sort_of

_COUNTED = (*NUMBERED, "foundation")


class Sort(NamedTuple):
    """A sort of stitch: as in Made, without its place. counted: it is one of the round's stitches."""

    kind: str
    form: str
    legs: int
    loop: str
    post: str
    role: Role
    chains: int
    yarn: str
    counted: bool


@dataclass(frozen=True, slots=True)
class SpaceSort:
    """A sort of chain space.

    passed: stitch widths of the edge below that it bridges, 0 where it bridges none.

    leaf: a chain worked back on, which is no space.
    """

    chains: int
    passed: float
    leaf: bool
    corner: bool
    yarn: str


@dataclass(frozen=True, slots=True)
class Contents:
    """Stitches and spaces of a round by sort, with how often each was made. spikes: of its counted stitches,
    those that begin further down than the others; kept only where stitches of other kinds stand beside them.
    """

    stitches: Counter[Sort]
    spaces: Counter[SpaceSort]
    spikes: Counter[Sort] = field(default_factory=Counter)

    @property
    def counted(self) -> int:
        """Stitches of the round, without spaces."""
        return sum(number for sort, number in self.stitches.items() if sort.counted)

    @property
    def standing(self) -> dict[Sort, int]:
        """The counted stitches that stand on the round below, which make its height. However long a spike is,
        its head lies beside those of its neighbours (common practice, no source).
        """
        return {
            sort: number - self.spikes[sort]
            for sort, number in self.stitches.items()
            if sort.counted and number > self.spikes[sort]
        }

    @property
    def gaps(self) -> dict[SpaceSort, int]:
        """The chain spaces, without chains that are worked back on."""
        return {sort: number for sort, number in self.spaces.items() if not sort.leaf}


def contents(worked: WorkedRound, below: Sequence[Place] = ()) -> Contents:
    """A worked round, counted. below: the edge that it was worked into, for what its spaces bridge."""
    stitches = _sorted(worked.sorts)
    if worked.sorts.total() == len(worked.made):
        return Contents(stitches, Counter(), _spikes(worked, stitches))
    bridges = _Bridges(worked.made, below)
    found = Counter(
        SpaceSort(one.chains, bridges.passed(at), one.back, one.corner, one.yarn)
        for at, one in enumerate(worked.made)
        if type(one) is Space
    )
    return Contents(stitches, found, _spikes(worked, stitches))


def _spikes(worked: WorkedRound, stitches: Counter[Sort]) -> Counter[Sort]:
    if len({(sort.kind, sort.post) for sort in stitches if sort.counted}) < 2:
        return Counter()
    deep = depths(worked, posts=True)
    return _sorted(Counter(sort_of(one) for one in worked.made if type(one) is Made and id(one) in deep))


def start_contents(places: Sequence[Place]) -> Contents:
    """What a start holds: the chains of a foundation."""
    return Contents(_sorted(Counter(map(sort_of, [one for one in places if type(one) is Made]))), Counter())


def _sorted(sorts: Mapping[SortKey, int]) -> Counter[Sort]:
    return Counter({_sort(key): number for key, number in sorts.items()})


@lru_cache
def _sort(key: SortKey) -> Sort:
    return Sort(*key, key[5] in _COUNTED)


class _Bridges:
    """What lies on the edge below between the stitch before a space and the stitch after it."""

    def __init__(self, made: Sequence[Place], below: Sequence[Place]) -> None:
        self.middle: dict[int, float] = {}
        self.half: dict[int, float] = {}
        along = 0.0
        for place in below:
            width = _width(place)
            self.middle[id(place)] = along + width / 2
            self.half[id(place)] = 0.5 if isinstance(place, Made) else 0.0
            along += width
        self.around = along
        feet = [self._foot(one) for one in made]
        self.before = _last_before(feet)
        middles = [self.middle[foot] for foot in feet if foot is not None]
        steps = [b - a for a, b in pairwise(middles) if a != b]
        self.way = 1 if sum(step > 0 for step in steps) * 2 >= len(steps) else -1
        first = next((foot for foot in feet if foot is not None), None)
        self.after = [foot if foot is not None else first for foot in reversed(_last_before(feet[::-1]))]

    def _foot(self, one: Place) -> int | None:
        place = one.into[-1] if isinstance(one, Made) and one.number and one.into else None
        return id(place) if place is not None and id(place) in self.middle else None

    def passed(self, at: int) -> float:
        """Widths between the feet on either side of a space.

        After the last stitch comes the round's first.
        """
        before, after = self.before[at], self.after[at]
        if before is None or after is None or before == after:
            return 0.0
        apart = (self.middle[after] - self.middle[before]) * self.way
        apart = apart if apart > 0 else apart + self.around
        return max(round(apart - self.half[before] - self.half[after], 1), 0.0)


def _last_before(feet: Sequence[int | None]) -> list[int | None]:
    """For each thing made the last foot before it, None where there is none."""
    last: int | None = None
    found: list[int | None] = []
    for foot in feet:
        found.append(last)
        last = foot if foot is not None else last
    return found


def _width(place: Place) -> float:
    """Stitch widths of a place on an edge: one a stitch, one a chain of a space."""
    if isinstance(place, Made):
        return 0.0 if place.role == "picot" else 1.0
    return float(place.chains)
