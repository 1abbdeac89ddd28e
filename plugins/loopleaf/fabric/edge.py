"""The edge: the places that a round or row can be worked into, in order, with a cursor on them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import attrgetter

from ..notation.tree import Stitch, Target
from .begun_groups import begun_groups
from .worked import Made, Place, Ring, Space, Trouble

_ROLE = attrgetter("role")
_STITCHES = {Made}
_SOLID = 3


class Stuck(Exception):
    """The hand can't go on: the trouble says why. Caught by repeats, which may simply be done, and by the
    round."""

    def __init__(self, trouble: Trouble) -> None:
        super().__init__(trouble.rule)
        self.trouble = trouble


@dataclass(frozen=True, slots=True)
class Found:
    """A place on the edge: the place itself, where it begins, and where the cursor stands after it."""

    place: Place
    at: int
    after: int


def is_named(place: Made, stitch: Stitch) -> bool:
    """Whether a stitch bears a name: `next dc` finds plain, post and gathered ones; `next FPdc` only
    those, `next post st` either."""
    if stitch.kind == "special" and not (stitch.form or stitch.post):
        return place.special == stitch.name
    if stitch.kind and place.kind != (stitch.name or stitch.kind):
        return False
    if stitch.form and place.form != stitch.form and not _goes_by(place, stitch):
        return False
    return not stitch.post or place.post == stitch.post or (stitch.post == "around" and bool(place.post))


def _is_own_picot(place: Made, stitch: Stitch | None) -> bool:
    """Whether a picot goes by the name that the author gave it; one in words goes by any that says picot."""
    if stitch is None or stitch.kind != "special" or stitch.form or stitch.post:
        return False
    return place.special == stitch.name or (not place.special and "picot" in stitch.name.lower())


def _goes_by(place: Made, stitch: Stitch) -> bool:
    """Whether a group goes by that form's name too: a shell of any stitches, `first cluster` and
    `3-dc cluster` for a dc3tog."""
    if stitch.form == "cluster":
        return place.form == "tog" and (not stitch.kind or stitch.number in (0, place.legs))
    return stitch.form == "shell" and bool(place.unit)


class Edge:
    """Places in working order, and the cursor.

    places: stitch tops, spaces, the ring, foundation chains, picots (found by name alone). pos: the next
    place.
    limit: where a repeat that ends `to last 2 sts` must stop; else the end. circle: the edge closes. marked:
    places (by identity) that are corners because of the piece's own form.
    counted: chains of spaces are places of their own, as in patterns whose counts include them. opened: they
    are places for lines that name single chains, and for nothing else. sided: the edge has sides, with
    corners at their ends, because of the piece's own form. between: those stand between the sides.
    """

    __slots__ = (
        "places",
        "pos",
        "limit",
        "circle",
        "plain",
        "counted",
        "opened",
        "sided",
        "between",
        "_at_first",
        "_begun",
        "_corners",
    )

    def __init__(
        self,
        places: list[Place],
        circle: bool = False,
        counted: bool = False,
        marked: frozenset[int] = frozenset(),
        opened: bool = False,
    ) -> None:
        if counted or opened:
            places = [loop for place in places for loop in _opened(place)]
        self.places = places
        self.pos = 0
        self.limit = len(places)
        self.circle = circle
        self.counted = counted
        self.opened = opened
        self.plain = not opened and set(map(type, places)) <= _STITCHES and "picot" not in map(_ROLE, places)
        self.sided = bool(marked)
        self.between = bool(marked) and not any(getattr(one, "role", "") == "row-end" for one in places)
        self._at_first = places
        self._begun: Mapping[str, int] | None = {} if circle else None
        self._corners: set[int] | None = set(marked) or None

    def lay(self, places: list[Place], corners: frozenset[int] = frozenset()) -> None:
        """Other places than before: the hand begins at the first of them. corners: which of them are."""
        self.places = places
        self.pos = 0
        self.limit = len(places)
        self.plain = set(map(type, places)) <= _STITCHES and "picot" not in map(_ROLE, places)
        self._corners = set(corners) or None
        self.between = False
        self.sided = bool(corners)
        self._begun = {}

    @property
    def begun(self) -> Mapping[str, int]:
        """See `begun_groups`: of the whole edge, wherever the hand begins on it."""
        if self._begun is None:
            self._begun = begun_groups(self._at_first)
        return self._begun

    def keep(self, end: int) -> None:
        """Leave all from a place on out of reach: the edge ends there, and closes no more."""
        self.places = self.places[:end]
        self.limit = end
        self.circle = False
        self._begun = {}

    def find(self, target: Target, start: int, limit: int | None = None) -> Found | None:
        """The first place of the target's kind at or after `start`; None when there is none before the
        limit."""
        end = self.limit if limit is None else limit
        places = self.places
        if target.kind in ("space", "loop") and (self.counted or self.opened):
            return self._find_counted_space(target, start, end)
        for at in range(start, end):
            if self.matches(places[at], target):
                return Found(places[at], at, at + 1)
        return None

    def _find_counted_space(self, target: Target, start: int, end: int) -> Found | None:
        for at in range(start, end):
            loop = self.places[at]
            if type(loop) is Made and loop.role == "loop" and not (self.opened and self._cut(at)):
                space = loop.into[0]
                if isinstance(space, Space) and (not target.length or space.chains == target.length):
                    return Found(space, at, at + space.chains - loop.number + 1)
        return None

    def begins(self, at: int, target: Target) -> bool:
        """Whether a place of the target's kind stands here; a space whose chains lie open begins with its
        first."""
        place = self.places[at]
        if type(place) is Made and place.role == "loop" and place.number > 1:
            return target.kind == "chain"
        return self.find(target, at, at + 1) is not None

    def matches(self, place: Place, target: Target) -> bool:
        """Whether one place is of the target's kind."""
        kind = target.kind
        if kind in ("stitch", "edge", "group"):
            if type(place) is not Made or place.role == "picot":
                return type(place) is Made and _is_own_picot(place, target.stitch)
            if place.role == "loop" and (self.opened or target.unworked):
                return False
            if place.role == "row-end" and target.unworked:
                return False
            below = self.sided and place.role == "foundation"  # `next 8 dc` of the other side: those above it
            return target.stitch is None or is_named(place, target.stitch) or below
        if kind == "chain":
            if isinstance(place, Space):
                return place.chains == 1
            if self.opened and type(place) is Made and place.role == "turning":
                return True
            return type(place) is Made and place.kind == "chain" and place.role != "picot"
        if kind == "space":
            if isinstance(place, Space):
                return not target.length or place.chains == target.length
            return bool(target.length) and self._is_closed_loop(place, target.length)
        if kind == "loop":
            return isinstance(place, Space) or self._is_closed_loop(place, 0)
        if kind == "corner":
            long = target.length and isinstance(place, Space) and place.chains != target.length
            return id(place) in self.corners() and not long
        if kind == "picot":
            return type(place) is Made and place.role == "picot"
        return type(place) is Made and place.role == "row-end"

    def _is_closed_loop(self, place: Place, length: int) -> bool:
        """Whether chains closed on themselves (`ch 6, sl st in 6th ch from hook`) are meant by `ch-6 loop`:
        nothing else here goes by that name. length: 0 where not said."""
        if type(place) is not Made or place.role != "picot" or length not in (0, place.chains):
            return False
        return not any(isinstance(one, Space) and length in (0, one.chains) for one in self.places)

    def side_end(self) -> int:
        """Where the side of the edge ends that the hook works along: at the limit, or where stitches change
        with row ends; before the next corner of pieces laid out."""
        if not self.sided or self.pos >= self.limit:
            return self.limit
        if self.between:
            later = range(self.pos + 1, self.limit)
            return next((at for at in later if id(self.places[at]) in self.corners()), self.limit)
        along = getattr(self.places[self.pos], "role", "") == "row-end"
        at = self.pos
        while at < self.limit and (getattr(self.places[at], "role", "") == "row-end") == along:
            at += 1
        return at

    def corners(self) -> set[int]:
        """The corner places: spaces inside a group of one place (the longest such); else the longest
        spaces; in solid
        work the middle stitch of three or more in one place."""
        if self._corners is None:
            self._corners = _corners(self.places)
        return self._corners

    def rest(self, spaces: bool = False) -> int:
        """How many stitches stand between the cursor and the limit; with `spaces`, chain spaces too."""
        if self.plain:
            return self.limit - self.pos
        return self.count(self.pos, self.limit, spaces)

    def count(self, start: int, end: int, spaces: bool = False) -> int:
        """How many stitches (with `spaces`, spaces too) stand in a stretch of the edge."""
        if self.opened:
            return sum(self._counts_opened(at, spaces) for at in range(start, end))
        return sum(
            1
            for p in self.places[start:end]
            if (type(p) is Made and p.role != "picot") or (spaces and isinstance(p, Space))
        )

    def kinds_of(self, start: int, end: int) -> tuple[int, ...]:
        """What stands in a stretch of the edge: for each place the chains of a space, 0 for a stitch."""
        return tuple(p.chains if isinstance(p, Space) else 0 for p in self.places[start:end])

    def rotate(self, at: int) -> None:
        """Begin the circle at another place; what lay before it comes round again at the end."""
        self.places = self.places[at:] + self.places[:at]
        self.pos = 0

    def _cut(self, at: int) -> bool:
        """Whether a chain isn't the first of an arch that lies whole before the hook."""
        loop = self.places[at]
        assert isinstance(loop, Made)
        last = at + getattr(loop.into[0], "chains", 1) - 1
        whole = last < len(self.places) and getattr(self.places[last], "into", ()) == loop.into
        return loop.number != 1 or not whole

    def _counts_opened(self, at: int, spaces: bool) -> bool:
        """Whether a place of an opened edge is a stitch, or begins a space where those count."""
        place = self.places[at]
        if not isinstance(place, Made) or place.role == "picot":
            return False
        return place.role != "loop" or (spaces and not self._cut(at))

    def describe(self) -> list[str]:
        """What kinds of places there are, as neutral keys: `single`, `space 2`, `ring`."""
        seen: dict[str, None] = {}
        for place in self.places:
            if isinstance(place, Space):
                seen[f"space {place.chains}"] = None
            elif isinstance(place, Ring):
                seen["ring"] = None
            else:
                seen["picot" if place.role == "picot" else place.kind] = None
        return list(seen)


def _opened(place: Place) -> list[Place]:
    if not isinstance(place, Space):
        return [place]
    return list(loops_of(place))


def loops_of(space: Space) -> list[Made]:
    """The single chains of a space, numbered from 1."""
    return [
        Made("chain", (space,), space.round, space.yarn, "loop", number)
        for number in range(1, space.chains + 1)
    ]


def is_of(place: Place, whole: Place) -> bool:
    """Whether a place is that one, or one of its chains."""
    return place is whole or (isinstance(place, Made) and place.role == "loop" and place.into == (whole,))


def _corners(places: list[Place]) -> set[int]:
    spaces = [p for p in places if isinstance(p, Space)]
    if spaces:
        grouped = [p for p in spaces if p.corner] or spaces
        longest = max(p.chains for p in grouped)
        begun = [p for at, p in enumerate(places) if isinstance(p, Space) and _begins_a_corner(places, at)]
        return {id(p) for p in (*grouped, *begun) if p.chains == longest}
    return {id(run[len(run) // 2]) for run in solid_corners(places)}


def _begins_a_corner(places: Sequence[Place], at: int) -> bool:
    """Whether a space stands in a corner though no bracket says so, as where a round begins: `ch 5 …, 3 dc in
    same sp`, `3 sc in same sp, ch 3, 3 sc in same sp`."""
    before, after = places[at - 1], places[(at + 1) % len(places)]
    if not isinstance(before, Made) or not isinstance(after, Made) or before is after:
        return False
    return bool(before.into) and before.into == after.into and not isinstance(before.into[0], Ring)


def solid_corners(places: Sequence[Place]) -> list[list[Made]]:
    """Three stitches and more in one place each, side by side: they make a corner where no space does."""
    found: list[list[Made]] = []
    run: list[Made] = []
    for place in [*places, None]:
        if type(place) is Made and run and place.into and place.into == run[0].into:
            run.append(place)
            continue
        if len(run) >= _SOLID:
            found.append(run)
        run = [place] if type(place) is Made else []
    return found
