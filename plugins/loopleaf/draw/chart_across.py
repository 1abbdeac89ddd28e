"""How the stitches of one round of a chart come to rest along its way."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise
from math import atan2, cos, sin, tau

from ..fabric import Space
from ..fabric.worked import Place
from .chart_ground import Bends, Ground, Inward, Sector, Straight, is_closed
from .chart_lines import Top
from .chart_mitred import Mitred
from .chart_things import Thing, groups_of, shared, wide_of
from .crossed import uncrossed
from .relax import kept_apart, settle
from .section import Half, Oval, Polygon, Rectangle
from .valleys import passed_over, valleys

PULL, PULL_IN_ROWS, PULL_ABOUT, PULL_IN_WAVES, PULL_IN_HALF = 1.0, 0.3, 0.1, 0.05, 0.002
"""How strongly a stitch is drawn above its place, where the distance from its neighbours holds with 1: along
the sides of a polygon and of a chain; in rows; about a middle, where even spacing is what the eye looks for;
in rows that both grow and shrink, which would else grow wider than they are; and in half a polygon, which its
rows fill from end to end.
"""

OVER_THEIR_PLACES, OVER_THEIR_PLACES_FAR = 6.0, 200.0
"""Stitches drawn together are drawn so much more strongly above theirs, else their legs would lie down; most
on the far side of a ball, where places lie far apart.
"""

HARDLY = 1e-4
CORNER_PULL = 1000.0
LOOSE = 0.15
"""A chain gives."""

PAIR_SHARE, FAN_SHARE = 0.75, 0.08
"""What room is left over goes between two stitches of one place, and of a fan, only so much."""

SIDE_BY_SIDE = 0.8
"""Stitches drawn together, one beside the other, stand so far apart, of their places' distance."""

CLOSEST = 0.8
"""Neighbours stand at least so close, of their widths."""


@dataclass(frozen=True)
class Across:
    """A round along its way, `level` out. into: the places of each thing, as far as the chart has them;
    `below`: those that its head lies above, which are others where stitches cross.
    corners: the things that lie in a polygon's corners. firm: it is worked around a chain.
    room: how wide a straight row is laid at least. around: the place that all of a first row goes into.
    wides: how much of the way each thing takes, where that isn't its own width.
    """

    ground: Ground
    things: Sequence[Thing]
    into: Sequence[Sequence[Top]]
    level: float
    corners: frozenset[int]
    firm: bool
    room: float
    around: Place | None = None
    wides: Sequence[float] | None = None

    def settled(self) -> tuple[list[float], list[float | None]]:
        """Where along the way each thing comes to rest, in units; and where the middle of its feet lies, None
        for those that cross.
        """
        wides = self.wides or [wide_of(thing) for thing in self.things]
        groups = groups_of(self.things, [bool(tops) for tops in self.below], self.around)
        feet = [self._foot(tops) for tops in self.below]
        rests = self._rests(wides, groups, feet)
        even = [0.0, *accumulate(rests)]
        places, pulls = self._pulled(wides, groups, feet, even)
        self._to_the_corners(places, pulls)
        springs = [
            LOOSE if isinstance(a, Space) or isinstance(b, Space) else 1.0 for a, b in pairwise(self.things)
        ]
        close = [CLOSEST * (a + b) / 2 for a, b in pairwise(wides)]
        if self.closed:
            rests.append(-even[-1])
            springs.append(1.0)
        found = settle(places, pulls, rests, springs)
        found = kept_apart(
            found, close, self.way - CLOSEST * (wides[0] + wides[-1]) / 2 if self.closed else None
        )
        footing = [
            None if foot is None or own is not above else self._near(foot * self.way, x)
            for foot, x, own, above in zip(feet, found, self.into, self.below, strict=True)
        ]
        return [self._evenly(x) for x in found], [None if x is None else self._evenly(x) for x in footing]

    @cached_property
    def below(self) -> Sequence[Sequence[Top]]:
        """The places that each thing's head lies above."""
        return uncrossed(self.into)

    @cached_property
    def _valleys(self) -> frozenset[int]:
        """What closes over places passed, by the thing before it: only in rows."""
        if self.closed:
            return frozenset()
        return valleys(self.things, passed_over([[top.order for top in tops] for tops in self.below]))

    @cached_property
    def closed(self) -> bool:
        """Whether the last thing stands beside the first."""
        return is_closed(self.ground)

    @cached_property
    def way(self) -> float:
        """The length of the way."""
        return self.ground.way(self.level)

    def _near(self, x: float, other: float) -> float:
        """The same place on a closed way, no further than half of it from another."""
        return x + round((other - x) / self.way) * self.way if self.closed else x

    def _by_length(self, along: float) -> float:
        """A share of the way as its length has it: a rectangle counts each of its sides evenly."""
        return self.ground.by_length(self.level, along) if isinstance(self.ground, Rectangle) else along

    def _evenly(self, x: float) -> float:
        """How far along the way, as the ground counts it, lies what is so far along its length."""
        if not isinstance(self.ground, Rectangle):
            return x
        return self.ground.evenly(self.level, x / self.way) * self.way

    def _foot(self, tops: Sequence[Top]) -> float | None:
        """The share of the way straight above the middle of some places."""
        if not tops:
            return None
        shares = [self._by_length(top.carried(self.level)) for top in tops]
        if self.closed:
            shares = [share - round(share - shares[0]) for share in shares]
        return sum(shares) / len(shares)

    # ---- how far apart they would be -------------------------------------------------------------

    def _rests(
        self, wides: Sequence[float], groups: Sequence[range], feet: Sequence[float | None]
    ) -> list[float]:
        """How far each thing would be from the next, undisturbed: their widths, what lies between their
        places where some are passed over, and what room is left over, shared evenly.
        """
        rests = [(a + b) / 2 for a, b in pairwise(wides)]
        if isinstance(self.ground, Sector):
            return [rest * self.way / sum(wides) for rest in rests]
        shares = [1.0] * len(rests)
        around = [groups[-1], groups[0]] if self.closed else []
        extra, beyond = (wides[0] + wides[-1]) / 2, 1.0
        for one, other in [*pairwise(groups), *([tuple(around)] if around else [])]:
            a, b = feet[one[0]], feet[other[0]]
            at = one[-1]
            free, wider = 0.0, 1.0
            if a is not None and b is not None:
                apart = self._near((b - a) * self.way, 0.0)
                wider = self._wider(self.below[one[0]][0], self.below[other[0]][0])
                wider *= max(self._steps(one[-1], other[0]), 1.0)
                if self._both_gathered(one[-1], other[0]):
                    free = max(SIDE_BY_SIDE * apart - (wides[one[-1]] + wides[other[0]]) / 2, 0.0)
                elif self._passes(one[-1], other[0]) and one[-1] not in self._valleys:
                    free = max(apart - sum(self._inwards(wides, group) for group in (one, other)), 0.0)
            if at < len(rests):
                shares[at] = wider
                rests[at] += free
            else:
                extra, beyond = extra + free, wider
        if not self.closed:
            self._as_wide_as_below(rests, wides, groups, feet)
        if isinstance(self.ground, Straight | Bends | Mitred):
            more = max(self.room - sum(rests) - (wides[0] + wides[-1]) / 2, 0.0) / max(len(rests), 1)
            return [rest + more for rest in rests]
        if self.closed and len(groups) > 1 and self._first_fan(groups):
            beyond = 0.0
        usual = max(beyond, *(shares[one[-1]] for one in groups[:-1])) if len(groups) > 1 else 1.0
        for end, beside in ((0, 1), (-1, -2)) if not self.closed and len(shares) > 2 else ():
            if feet[end] is None:  # a chain that counts as a stitch stands as far from the next as others
                shares[end] = shares[beside]
        for group in groups:
            inner = usual * (PAIR_SHARE if len(group) == 2 else FAN_SHARE)
            inner = 1.0 if isinstance(self.ground, Rectangle) else inner
            shares[group.start : group.stop - 1] = [inner] * (len(group) - 1)
        if isinstance(self.ground, Half):  # what its rows are too short for lies between all of them
            shares = [1.0] * len(shares)
        slack = self.way - sum(rests) - extra
        parts = sum(shares) + (beyond if self.closed else 0.0) or 1.0
        return [rest + slack * share / parts for rest, share in zip(rests, shares, strict=True)]

    def _as_wide_as_below(
        self, rests: list[float], wides: Sequence[float], groups: Sequence[range],
        feet: Sequence[float | None],
    ) -> None:  # fmt: skip
        """In rows, a chain reaches over what lies between the places of the stitches on both sides of it."""
        standing = [group for group in groups if feet[group[0]] is not None]
        for one, other in pairwise(standing):
            a, b = feet[one[0]], feet[other[0]]
            steps = range(one[-1], other[0])
            if a is None or b is None or len(steps) < 2:
                continue
            halves = sum(self._inwards(wides, group) for group in (one, other))
            free = (b - a) * self.way - halves - sum(wides[k] for k in steps[1:])
            for at in steps:
                rests[at] += max(free, 0.0) / len(steps)

    def _inwards(self, wides: Sequence[float], group: range) -> float:
        """How far a group reaches from its place: half its width; that of a fan at the end of a row, which
        passes over the places beside it, from its outermost stitch inwards.
        """
        whole, last = sum(wides[k] for k in group), len(self.things) - 1
        if type(self.ground) is not Straight or len(group) < 2 or (group[0] > 0) == (group[-1] < last):
            return whole / 2
        outermost = 0 if not group[0] else last
        beside = (group[-1], group[-1] + 1) if not group[0] else (group[0] - 1, group[0])
        return whole - wides[outermost] / 2 if self._passes(*beside) else whole / 2

    def _passes(self, one: int, other: int) -> bool:
        """Whether places lie between those of two neighbours."""
        lasts, firsts = (sorted(top.order for top in self.below[at]) for at in (one, other))
        return bool(lasts and firsts) and lasts[-1] + 1 < firsts[0]

    def _both_gathered(self, one: int, other: int) -> bool:
        """Whether two neighbours both draw several places together: each stands above its own."""
        return len(self.below[one]) > 1 and len(self.below[other]) > 1

    def _steps(self, one: int, other: int) -> float:
        """How many places further on, in the mean, one of two neighbours stands than the other."""
        means = [sum(top.order for top in self.below[at]) / len(self.below[at]) for at in (one, other)]
        return means[1] - means[0]

    def _wider(self, one: Top, other: Top) -> float:
        """How much wider the way is between two places than it was in their round; hardly at all on the
        straight sides of an oval.
        """
        if isinstance(self.ground, Rectangle):
            return 1.0
        before = abs(one.along - other.along)
        before = abs(before - round(before)) if self.closed else before
        was = before * self.ground.way(one.level)
        now = abs(self._near((one.carried(self.level) - other.carried(self.level)) * self.way, 0.0))
        return min(max(abs(now / was - 1), 0.02), 1.0) if was > 1e-6 else 1.0

    # ---- where they are pulled -------------------------------------------------------------------

    def _pulled(
        self,
        wides: Sequence[float],
        groups: Sequence[range],
        feet: Sequence[float | None],
        even: Sequence[float],
    ) -> tuple[list[float], list[float]]:
        """Where each thing is pulled to, and how strongly: a fan's stitches to both sides of their place."""
        wanted: dict[int, float] = {}
        for group in self._around(groups):
            foot = feet[group[0]]
            if foot is None:
                continue
            inwards = self._inwards(wides, range(group[0], group[-1] + 1))
            reached = -inwards if group[-1] == len(wides) - 1 else inwards - sum(wides[at] for at in group)
            for at in group:
                wanted[at] = foot * self.way + reached + wides[at] / 2
                reached += wides[at]
        places = list(even)
        waves = any(len(group) > 1 for group in groups) and any(len(tops) > 1 for tops in self.below)
        waves = waves or bool(self._valleys)
        pull = PULL_ABOUT if self.closed else PULL_IN_WAVES if waves else PULL_IN_ROWS
        if (self.firm or isinstance(self.ground, Polygon)) and not isinstance(self.ground, Rectangle):
            pull = PULL_IN_HALF if isinstance(self.ground, Half) else PULL
        if isinstance(self.ground, Sector):
            pull = PULL_IN_HALF
        if self.closed:
            turn = mean_turn([(wanted[at] - even[at]) / self.way for at in wanted]) * self.way
            places = [place + turn for place in places]
        elif not wanted and not isinstance(self.ground, Straight | Bends | Mitred):
            places = [place + (self.way - even[-1]) / 2 for place in places]
        for at, place in wanted.items():
            places[at] = self._near(place, places[at])
        over = OVER_THEIR_PLACES_FAR if isinstance(self.ground, Inward) else OVER_THEIR_PLACES
        own = [1.0 if waves else over if len(tops) > 1 else 1.0 for tops in self.below]
        return places, [pull * own[at] if at in wanted else HARDLY for at in range(len(even))]

    def _around(self, groups: Sequence[range]) -> list[list[int]]:
        """The groups, a fan that the round's beginning parts put together again."""
        found = [list(group) for group in groups]
        if self.closed and len(found) > 1 and self._first_fan(groups):
            found[0] = [*found.pop(), *found[0]]
        return found

    def _first_fan(self, groups: Sequence[range]) -> bool:
        """Whether the last group and the first share their place."""
        first, last = self.things[groups[0][0]], self.things[groups[-1][0]]
        return bool(self.below[groups[0][0]]) and shared(first) is not None and shared(first) == shared(last)

    def _to_the_corners(self, places: list[float], pulls: list[float]) -> None:
        """A round's corners are pulled to those of its polygon."""
        found = [at for at, thing in enumerate(self.things) if id(thing) in self.corners]
        if isinstance(self.ground, Half) and len(found) == self.ground.corners - 1:
            for k, at in enumerate(found, start=1):
                places[at], pulls[at] = k / self.ground.corners * self.way, CORNER_PULL
        if not self.closed or not isinstance(self.ground, Polygon) or len(found) != self.ground.corners:
            return
        many = self.ground.corners
        first = round(
            mean_turn([self._evenly(places[at]) / self.way - k / many for k, at in enumerate(found)]) * many
        )
        for k, at in enumerate(found):
            places[at] = self._near(self._by_length((first + k) / many) * self.way, places[at])
            pulls[at] = CORNER_PULL


def mean_turn(differences: Sequence[float]) -> float:
    """The mean of differences that are known but for whole turns."""
    return atan2(sum(sin(tau * d) for d in differences), sum(cos(tau * d) for d in differences)) / tau


def room_for(
    ground: Ground,
    things: Sequence[Thing],
    corners: frozenset[int],
    gap: float,
    wides: Sequence[float] | None = None,
) -> float:
    """How long a round's way must be to hold its things and the gap at its start; all sides of a polygon are
    as long as the fullest, both ends of an oval as long as the one with the gap. A rectangle grows by as much
    on each side as the fullest for its length needs, begun along either of its two lengths. wides: how much
    of the way each thing takes, where that isn't its own width.
    """
    wides = wides or [wide_of(thing) for thing in things]
    found = [at for at, thing in enumerate(things) if id(thing) in corners]
    if isinstance(ground, Half) and len(found) == ground.corners - 1:
        before = [0.0, *(sum(wides[:at]) + wides[at] / 2 for at in found), sum(wides)]
        return max(b - a for a, b in pairwise(before)) * ground.corners
    if not is_closed(ground):
        return sum(wides)
    if not isinstance(ground, Polygon) or len(found) != ground.corners:
        return sum(wides) + gap * (2 if isinstance(ground, Oval) and ground.spine else 1)
    sides = [sum(wides[a:b]) + (wides[b] - wides[a]) / 2 for a, b in pairwise(found)]
    sides.append(sum(wides) + gap - sum(sides))
    if isinstance(ground, Rectangle):
        over = [
            max(side - longs[at % 2] for at, side in enumerate(sides))
            for longs in ((ground.wide, ground.high), (ground.high, ground.wide))
        ]
        return ground.way(0.0) + ground.corners * min(over)
    return max(sides) * ground.corners
