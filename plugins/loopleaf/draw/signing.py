"""One round or row of the chart: a sign for every stitch that the hand made, where the layout has it."""

from collections.abc import Callable, Hashable, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from functools import cache, cached_property
from itertools import groupby
from math import hypot

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .chart_beside import first_chains, join_spot
from .chart_crossing import Gap, broken, broken_way
from .chart_ground import outward
from .chart_layers import bow
from .chart_lines import Layout, Line
from .chart_things import ROOM, STACKED, Thing, place_key, shared
from .colour import ink_on_light
from .pen import Mark, Pen
from .signs import CHAIN_LONG, CHAIN_THICK, UNIT, Sign, height_of, is_cross
from .spike_stems import Passed, own_part
from .subject import Subject

UNDER_A_DOT = 0.2
"""What marks a slip stitch's loop stands so much of its room above its foot."""

OTHER_SIDE = {"front": "back", "back": "front"}

TRAVELS = 0.36
"""A slip stitch that only travels over a chain lies so much of its width before its middle."""

ON_A_CHAIN, CROSS_ON_A_CHAIN = 2.4, 1.3
"""So far beside the middle of a chain worked back on its stitches begin; a cross doesn't fill its height."""

ON_ITS_CHAIN = 3.9
"""One that goes into a single chain lies so far above its middle."""

ON_A_HEAD = 0.35
"""A slip stitch that travels lies so much of the room above a stitch's bar: later feet stand there too."""


@dataclass
class Round:
    """Draws the signs of one round. at: its index; label: its number as the pattern gives it. kind_of: a
    stitch's plain kind in the file's own terms. reverse: its wrong side faced the maker. again: what only
    repeats. passed: what the stems of its spikes pass.
    """

    pen: Pen
    layout: Layout
    at: int
    label: str
    kind_of: Callable[[str], str]
    reverse: bool
    again: Set[int]
    passed: Passed
    _passed: int = field(default=0)
    _counted: int = field(default=0)

    @property
    def _line(self) -> Line:
        return self.layout.lines[self.at]

    def draw(self, worked: WorkedRound, subject: Subject) -> None:
        """All that the round made, in the order made. What it counts is numbered in that order, single chains
        too where the pattern counts them.
        """
        counted = subject.work.pattern.chain_spaces == "counted"
        self.pen.round, self.pen.faint = self.label, False
        for middle, along in self._line.chains:
            self.pen.chain(down(middle), down(along), self._mark("chain"))
        for made in worked.made:
            self.pen.faint = id(made) in self.again
            self.pen.yarn(made.yarn, ink_on_light(subject.colours[made.yarn]))
            if isinstance(made, Space):
                self._leaf_chain(made) if made.back else self._space(made, counted)
            elif made.number:
                self._turning(made) if made.role == "turning" else self._stitch(made)
            elif made.role == "back":
                self._leaf_stitch(made)
            elif made.role == "picot":
                self._picot(made)
            elif made.role == "chain":
                self._uncounted(made)
            else:
                self._slip(made)

    def _number(self) -> int:
        """The next number in the round."""
        self._counted += 1
        return self._counted

    def _mark(self, kind: str, number: int = 0, counts_as: str = "") -> Mark:
        return Mark(self.kind_of(kind), number, counts_as and self.kind_of(counts_as))

    def _stitch(self, made: Made) -> None:
        feet, head = self._line.feet[id(made)], self._line.heads[id(made)]
        mark = self._mark(made.kind, self._number())
        for place in self._line.leads.get(id(made), ()):
            start = self._upright(head)[0] if is_cross(made.kind) else feet[0]
            self.pen.lead(down(start), down(bow(start, place)), down(place))
        if made.kind == "slip":
            self.pen.dot(down(between(feet[0], head, 0.5)), mark)
            if made.loop or made.post:
                foot = between(feet[0], head, UNDER_A_DOT)
                self.pen.grip(sign_of(made, self.reverse), down(foot), down(head))
        elif made.form and len(feet) > 1:
            ends, up = [down(foot) for foot in feet], down(self._outward(head))
            self.pen.gathered(sign_of(made, self.reverse), ends, down(head), up, mark)
        else:
            sign = sign_of(made, self.reverse)
            if id(made) in self._line.deep and self._spike(made, sign, feet[0], head, mark):
                return
            gaps = self._broken.get(id(made))
            if gaps is not None:
                way = broken_way(sign, hypot(head[0] - feet[0][0], head[1] - feet[0][1]), gaps)
                self.pen.form(way, down(feet[0]), down(feet[0]), down(head), mark)
                return
            foot, head = self._upright(head) if is_cross(made.kind) else (feet[0], head)
            bare = replace(sign, loop="") if id(made) in self._shares_a_loop else sign
            self.pen.stitch(bare, down(foot), down(head), mark)

    def _spike(self, made: Made, sign: Sign, foot: Point, head: Point, mark: Mark) -> bool:
        """The stem of a spike, which is led beside what stands between; of a tall stitch also its own sign,
        where it has another form then. Whether that is drawn.
        """
        cross = is_cross(made.kind)
        stem = self.passed.stem(self.at, head, foot)
        if cross and not stem.aside:
            self.pen.line(down(between(*self._upright(head), 0.5)), down(foot))
        elif cross:
            self.pen.form(stem.path(UNIT / 2), down(head), down(foot), down(head))
        elif stem.aside and not made.form:
            low = between(head, foot, stem.begins / stem.long)
            self.pen.form(own_part(made.kind, stem.begins), down(low), down(low), down(head), mark)
            self.pen.form(stem.path(stem.begins), down(head), down(foot), down(head))
            if sign.loop or sign.post:
                self.pen.grip(sign, down(foot), down(head))
            return True
        return False

    @cached_property
    def _broken(self) -> Mapping[int, Sequence[Gap]]:
        """The gaps in the legs of stitches that cross."""
        return broken(self._line, self.reverse)

    @cached_property
    def _shares_a_loop(self) -> Set[int]:
        """The tall stitches, by their ids, whose feet meet in one loop with others': one mark stands for all,
        under the one in the middle.
        """
        found: set[int] = set()
        for _, run in groupby(self._line.things, key=lambda thing: _loop_of(thing) or id(thing)):
            fan = [*run]
            if len(fan) > 2:
                found |= {id(thing) for thing in fan} - {id(fan[len(fan) // 2])}
        return found

    def _upright(self, head: Point) -> tuple[Point, Point]:
        """Where a cross stands, from its lower to its upper edge: below its head, wherever its foot is, and
        on a polygon's sides square to them: slanting, it would be another sign.
        """
        along, up = self._outward(head), outward(self._line.ground, head, upright=True)
        half = height_of("single") / 2
        x, y = head[0] - along[0] * half, head[1] - along[1] * half
        return (x - up[0] * half, y - up[1] * half), (x + up[0] * half, y + up[1] * half)

    def _outward(self, at: Point) -> Point:
        return outward(self._line.ground, at)

    def _turning(self, made: Made) -> None:
        """A chain that counts: a stack of chains as tall as its stitch."""
        chains = max(made.chains, 1)
        foot, head = self._line.feet[id(made)][0], self._line.heads[id(made)]
        along = (head[0] - foot[0], head[1] - foot[1])
        long = min(hypot(*along) / chains, CHAIN_LONG)
        for at in range(chains):
            last = at == chains - 1
            mark = self._mark("chain", self._number() if last else 0, made.kind if last else "")
            self.pen.chain(down(between(foot, head, (at + 0.5) / chains)), down(along), mark, long)

    def _uncounted(self, made: Made) -> None:
        """A first chain that counts as nothing stands before the first stitch."""
        for middle, along in first_chains(self._line, made.chains):
            self.pen.chain(down(middle), down(along), self._mark("chain"), CHAIN_LONG * STACKED)

    def _space(self, space: Space, counted: bool) -> None:
        """Chains in an arch from the stitch before to the stitch after."""
        beads = self._line.arches[id(space)].beads
        stacked = any(space in whole.things for whole in self._line.petals)
        long = CHAIN_LONG * (STACKED if stacked else 1.0)
        for bead in reversed(beads) if self._line.backward else beads:
            mark = self._mark("chain", self._number() if counted else 0)
            self.pen.chain(down(bead.middle), down(bead.along), mark, long)

    def _slip(self, made: Made) -> None:
        """A join beside the first stitch's top; one that travels on what it goes into, at the near end of a
        chain, where it leaves room for what is worked there next.
        """
        top = self.layout.tops.get(place_key(made.into[0])) if made.into else None
        chain = self._chain_of_an_arch(made)
        if chain is not None:
            middle = chain
        elif made.role == "join" or top is None:
            self._passed += 1
            away = self._line.gap * 0.5 + 4.0 * self._passed
            middle = join_spot(self._line) if made.role == "join" else self._line.before(away, 1.0)
        elif top.arch is not None:
            near = TRAVELS * top.arch.wide * (1 if self._line.backward else -1)
            middle = top.arch.at(near, CHAIN_THICK)
        else:
            below = made.into[0]
            bar = isinstance(below, Made) and not is_cross(below.kind)
            middle = top.point(top.out + ROOM * (ON_A_HEAD if bar else 1.0))
        self.pen.dot(down(middle), self._mark(made.kind))

    def _chain_of_an_arch(self, made: Made) -> Point | None:
        """Above the chain of an arch that a slip stitch goes into; None where it goes into none."""
        place = made.into[0] if made.into and made.role != "join" else None
        if not isinstance(place, Made) or place.role != "loop":
            return None
        space = place.into[0]
        top = self.layout.tops.get(id(space))
        if top is None or top.arch is None or not isinstance(space, Space):
            return None
        at = space.chains - place.number if self._line.backward else place.number - 1
        return top.arch.above(at, ON_ITS_CHAIN)

    # ---- what stands on the round -------------------------------------------------------------------

    def _below(self, made: Made | Space) -> Point:
        """The top of the last thing before this one that the round has in its line."""
        before = made.previous
        while isinstance(before, Made | Space):
            found = self.layout.top(place_key(before))
            if id(before) in self._line.heads or id(before) in self._line.arches:
                return found or (0.0, 0.0)
            before = before.previous
        leaf = self._line.leaf if isinstance(made, Space) or made.role == "back" else 0.0
        return self._line.before(leaf or self._line.gap * 0.5, 1.0)

    def _picot(self, made: Made) -> None:
        foot = self._below(made)
        self.pen.picot(down(foot), down(self._outward(foot)), made.chains or 3, Mark("picot"))

    def _leaf_chain(self, space: Space) -> None:
        """A chain that is worked back on, rising from the stitch before it."""
        foot = self._below(space)
        out = self._outward(foot)
        for at in range(space.chains):
            up = CHAIN_LONG * (at + 0.7)
            self.pen.chain(
                down((foot[0] + out[0] * up, foot[1] + out[1] * up)), down(out), self._mark("chain")
            )

    def _leaf_stitch(self, made: Made) -> None:
        """On its chain, across it, on the side that the work goes to."""
        below = self._below(made)
        out = self._outward(below)
        under = made.into[0] if made.into else None
        up = CHAIN_LONG * ((under.number if isinstance(under, Made) else 1) - 0.3)
        start, way = CROSS_ON_A_CHAIN if is_cross(made.kind) else ON_A_CHAIN, -1 if self.reverse else 1
        foot, head = (
            (below[0] + out[0] * up - out[1] * aside, below[1] + out[1] * up + out[0] * aside)
            for aside in (way * start, way * (start + height_of(made.kind)))
        )
        if made.kind == "slip":
            self.pen.dot(down(between(foot, head, 0.3)), self._mark(made.kind))
        else:
            self.pen.stitch(sign_of(made, self.reverse), down(foot), down(head), self._mark(made.kind))


def _loop_of(thing: Thing) -> Hashable:
    """The loop that a tall stitch goes into, None for others."""
    if isinstance(thing, Space) or not thing.loop or is_cross(thing.kind) or thing.kind == "slip":
        return None
    return (shared(thing), thing.loop) if shared(thing) is not None else None


def down(point: Point) -> Point:
    """The same point where y runs down."""
    return (point[0], -point[1])


def between(one: Point, other: Point, share: float) -> Point:
    """A point on the way from one to the other."""
    return (one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share)


def sign_of(made: Made, reverse: bool) -> Sign:
    """The sign of a stitch as the right side shows it: a front post or loop of a wrong-side row is a back
    one there.
    """
    several = bool(made.form) and len(made.into) > 1
    return _sign(made.kind, made.form, 0 if several else made.legs, made.loop, made.post, reverse)


@cache
def _sign(kind: str, form: str, legs: int, loop: str, post: str, reverse: bool) -> Sign:
    return Sign(
        kind,
        form if form not in ("shell", "v-stitch") else "",
        legs,
        OTHER_SIDE.get(loop, loop) if reverse else loop,
        OTHER_SIDE.get(post, post) if reverse else post,
    )
