"""One round or row of the diagram: a sign for every stitch that the hand made."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from itertools import groupby
from math import pi, sin

from ..fabric import Made, Space, WorkedRound
from .canvas import Point
from .chart_places import Places
from .colour import outline_of
from .items import Item
from .pen import Mark, Pen
from .signs import CHAIN_LONG, Sign, height_of, is_cross
from .subject import Subject

TOGETHER = 0.4
"""The feet of stitches in one place stand so much closer than the place is wide."""

LEAN = 1.1
"""A sign's head lies at most so much of its height aside from its foot; wide fans are drawn narrower."""

OTHER_SIDE = {"front": "back", "back": "front"}


@dataclass(slots=True)
class Round:
    """Draws the signs of one round. at: its index; label: its number as the pattern gives it. kind_of: a
    stitch's plain kind in the file's own terms. reverse: its wrong side faced the maker. items, legs: of each
    thing made, by its id (`legs_of`).
    """

    pen: Pen
    places: Places
    at: int
    label: str
    kind_of: Callable[[str], str]
    reverse: bool
    items: Mapping[int, Item]
    legs: Mapping[int, tuple[float, float]]
    travelled: int = 0

    def draw(self, worked: WorkedRound, subject: Subject) -> None:
        """All that the round made, in the order made."""
        for made in worked.made:
            self.pen.colour(outline_of(subject.colours[made.yarn]))
            if isinstance(made, Space):
                self._leaf_chain(made) if made.back else self._space(made)
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

    def _mark(self, kind: str, number: int = 0, counts_as: str = "") -> Mark:
        return Mark(self.kind_of(kind), self.label, number, counts_as and self.kind_of(counts_as))

    def _stitch(self, made: Made) -> None:
        item, tall = self.items[id(made)], height_of(made.kind)
        sign = sign_of(made, self.reverse)
        mark = self._mark(made.kind, made.number)
        reach = LEAN * tall / self.places.lines[self.at].wide
        if made.form and len(made.into) > 1:
            wide = min((item.foot[1] - item.foot[0]) / len(made.into), 2 * reach / len(made.into))
            feet = [item.middle + wide * (leg + 0.5 - len(made.into) / 2) for leg in range(len(made.into))]
            places = [self.places.point(self.at, foot, 0.0) for foot in feet]
            self.pen.gathered(sign, places, self.places.point(self.at, item.middle, tall), mark)
            return
        foot, top = self.legs[id(made)]
        if is_cross(made.kind):
            foot = top = foot + (top - foot) * 0.65
        low, high = self.places.point(self.at, foot, 0.0), self.places.point(self.at, top, tall)
        self.pen.stitch(sign, low, high, mark)

    def _turning(self, made: Made) -> None:
        """A chain that counts: an upright stack as tall as its stitch."""
        chains = max(made.chains, 1)
        step = max(height_of(made.kind), 0.75 * CHAIN_LONG * chains) / chains
        foot, top = self.legs[id(made)]
        for at in range(chains):
            up = step * (at + 0.5)
            along = foot + (top - foot) * (at + 0.5) / chains
            last = at == chains - 1
            mark = self._mark("chain", made.number if last else 0, made.kind if last else "")
            self._upright(partial(self.places.point, self.at, along), up, step, mark)

    def _uncounted(self, made: Made) -> None:
        for at in range(made.chains):
            self._upright(
                partial(self.places.before, self.at, 0.78), 6.4 * (at + 0.6), 6.4, self._mark("chain")
            )

    def _upright(self, way: Callable[[float], Point], up: float, long: float, mark: Mark) -> None:
        (x0, y0), (x1, y1) = way(up - 1), way(up + 1)
        self.pen.chain(way(up), (x1 - x0, y1 - y0), mark, min(long, CHAIN_LONG))

    def _space(self, space: Space) -> None:
        """Ovals in an arch from the stitch before to the stitch after."""
        item = self.items[id(space)]
        tall = self.places.lines[self.at].tall
        wide = item.end - item.start

        def way(share: float) -> Point:
            return self.places.point(
                self.at, item.start + wide * share, tall * 0.8 + 2.5 * sin(pi * share) * space.chains**0.5
            )

        for at in range(space.chains):
            share = (at + 0.5) / space.chains
            (x0, y0), (x1, y1) = way(share - 0.05), way(share + 0.05)
            self.pen.chain(way(share), (x1 - x0, y1 - y0), self._mark("chain"))

    def _slip(self, made: Made) -> None:
        if made.role == "join":
            self.pen.dot(
                self.places.before(self.at, 0.1, self.places.lines[self.at].tall), self._mark(made.kind)
            )
            return
        self.pen.dot(self.places.before(self.at, 0.3 + 0.12 * self.travelled, 0.0), self._mark(made.kind))
        self.travelled += 1

    # ---- what stands on the round -------------------------------------------------------------------

    def _below(self, made: Made | Space) -> float:
        """Where along the round the last counted thing before this one lies."""
        before = made.previous
        while isinstance(before, Made | Space) and id(before) not in self.items:
            before = before.previous
        return self.items[id(before)].middle if id(before) in self.items else 0.0

    def _picot(self, made: Made) -> None:
        along, tall = self._below(made), self.places.lines[self.at].tall
        (x0, y0), (x1, y1) = (self.places.point(self.at, along, up) for up in (tall, tall + 1))
        mark = Mark("picot", self.label)
        self.pen.picot((x0, y0), (x1 - x0, y1 - y0), made.chains or 3, mark)

    def _leaf_chain(self, space: Space) -> None:
        """A chain that is worked back on, rising from the stitch before it."""
        along, tall = self._below(space), self.places.lines[self.at].tall
        for at in range(space.chains):
            up = tall + CHAIN_LONG * (at + 0.7)
            self._upright(partial(self.places.point, self.at, along), up, CHAIN_LONG, self._mark("chain"))

    def _leaf_stitch(self, made: Made) -> None:
        along, tall = self._below(made), self.places.lines[self.at].tall
        under = made.into[0] if made.into else None
        number = under.number if isinstance(under, Made) else 1
        up = tall + CHAIN_LONG * (number - 0.3)
        (x0, y0), (x1, y1) = (self.places.point(self.at, along, height) for height in (up, up + 1))
        reach = height_of(made.kind)
        top = (x0 - (y1 - y0) * (reach + 2), y0 + (x1 - x0) * (reach + 2))
        foot = (x0 - (y1 - y0) * 2, y0 + (x1 - x0) * 2)
        self.pen.stitch(sign_of(made, self.reverse), foot, top, self._mark(made.kind))


def sign_of(made: Made, reverse: bool) -> Sign:
    """The sign of a stitch as the right side shows it: a front post or loop of a wrong-side row is a back
    one there.
    """
    several = bool(made.form) and len(made.into) > 1
    return Sign(
        made.kind,
        made.form if made.form not in ("shell", "v-stitch") else "",
        0 if several else made.legs,
        OTHER_SIDE.get(made.loop, made.loop) if reverse else made.loop,
        OTHER_SIDE.get(made.post, made.post) if reverse else made.post,
    )


def legs_of(places: Places, at: int) -> dict[int, tuple[float, float]]:
    """Of each thing made in a round, by its id, where along the round its foot and its head lie.

    Those that share a place stand close together, and fan out no further than a sign may lean.
    """
    line = places.lines[at]
    legs: dict[int, tuple[float, float]] = {}
    for _, sharing in groupby(line.items, key=lambda item: [id(place) for place in item.thing.into]):
        group = list(sharing)
        feet = [places.carried(at, (item.foot[0] + item.foot[1]) / 2) for item in group]
        centre = sum(feet) / len(feet)
        together = TOGETHER if len(group) > 1 and group[0].thing.into else 1.0
        feet = [centre + (foot - centre) * together for foot in feet]
        leans = [item.middle - foot for item, foot in zip(group, feet, strict=True)]
        tall = max((height_of(i.thing.kind) for i in group if isinstance(i.thing, Made)), default=line.tall)
        most = max(max(abs(lean) for lean in leans), 1e-9)
        less = min(1.0, LEAN * tall / line.wide / most)
        for item, foot, lean in zip(group, feet, leans, strict=True):
            legs[id(item.thing)] = (foot, foot + lean * less)
    return legs
