"""A round as items side by side: stitches and spaces, where each one's top lies and what it stands on."""

from collections import Counter
from collections.abc import Hashable, Iterator, Mapping, Sequence
from itertools import pairwise
from math import atan2, cos, sin, tau
from typing import NamedTuple

from ..fabric import Made, Space, WorkedRound
from ..fabric.edge import Edge
from ..fabric.spikes import depths
from ..fabric.worked import Place
from ..measure.gauge import Scale
from .chart_things import begun_in
from .corner_knots import knots_below, knots_of, moved_to
from .layers import is_layer
from .petals import petals_of, rooms_at
from .picots import picots_of
from .profile import Ring
from .section import Oblong, Polygon, Rectangle, Section
from .valleys import CLOSE, closed_over

CHAIN_SHARE = 0.8
"""A chain of a space takes about so much of a stitch's width; an arch leans over more."""

EASED = (0.6, 1.3)
"""Where a chain is about as long as what it passes over is wide, that keeps its width: a net."""

AS_TALL = 0.7
"""Stitches of at least this share of the tallest one's height are drawn as tall: the cloth evens them out."""

WIDEST_FOOT = 1.3
"""A stitch takes so much of a chain space at most, of its own width."""

NARROWEST_FOOT = 0.6
"""However many stitches share a place, the yarn of each is so wide at its foot, in stitch widths."""


class Spot(NamedTuple):
    """Where a place lies on the round it was made in: from and to, as shares of that round's way, and the
    share of the round's height that it reaches.
    """

    start: float
    end: float
    top: float = 1.0


class Item(NamedTuple):
    """One stitch or space, `start` to `end` along its round.

    foot: from where to where it stands, along the round below. floor: how high it stands there, as a share
    of that round's height. tops: the share of its own round's height that its two upper corners reach.
    picots: the chains of each picot made after it; after: the side that they are on, 1 the right one.
    upright: chains that stand beside a stitch, as a petal's side.
    """

    thing: Made | Space
    start: float
    end: float
    foot: tuple[float, float] = (0.0, 0.0)
    floor: float = 1.0
    tops: tuple[float, float] = (1.0, 1.0)
    corner: bool = False
    picots: tuple[int, ...] = ()
    after: float = 1.0
    upright: bool = False

    @property
    def middle(self) -> float:
        """The middle of its top, along the round."""
        return (self.start + self.end) / 2


def items_of_rows(
    rows: Sequence[WorkedRound], mirrored: Sequence[bool], scale: Scale, base: Sequence[Place]
) -> list[list[Item]]:
    """The items of rows, from left to right as the right side shows them.

    mirrored: for each row, whether it was made from right to left. base: what the first row goes into.
    """
    spots = foundation(rows[0], base, mirrored[0]) if rows else {}
    found: list[list[Item]] = []
    rooms: dict[int, float] = {}
    for items, back in zip(rows_of_items(rows, mirrored, scale, rooms), mirrored, strict=True):
        feet = dict(feet_of(items, spots, back))
        for key, (left, right) in closed_over([item.thing for item in items], feet).items():
            feet[key] = feet[key]._replace(start=left, end=right)
        standing = _on_their_feet(items, feet, spots, rooms)
        first = not found and begun_in(rows[0]) is not None
        found.append(_around_one(standing) if first else standing)
    return found


def rows_of_items(
    rows: Sequence[WorkedRound], mirrored: Sequence[bool], scale: Scale, rooms: dict[int, float]
) -> Iterator[list[Item]]:
    """The items of rows, from left to right as the right side shows them, before they stand on anything.

    rooms: what each of their spaces takes is added, by its id.
    """
    for at, (row, back) in enumerate(zip(rows, mirrored, strict=True)):
        items = _side_by_side(row, scale, at == len(rows) - 1, rooms)
        yield [_mirrored(item) for item in reversed(items)] if back else items


def items_of_rounds(
    rounds: Sequence[WorkedRound],
    scale: Scale,
    section: Section,
    rings: Sequence[Ring],
    base: Mapping[int, Spot],
) -> list[list[Item]]:
    """The items of rounds, each round turned so that its stitches stand on the places they went into.

    A polygon's corners get the round's corners. base: where the places of the start lie, by id.
    """
    corners = section.corners if isinstance(section, Polygon) else 0
    spots = dict(base)
    found: list[list[Item]] = []
    rooms: dict[int, float] = {}
    for at, one in enumerate(rounds):
        free = at == len(rounds) - 1 or is_layer(rounds[at + 1], one)
        items = _side_by_side(one, scale, free, rooms)
        feet = dict(feet_of(items, spots, mirrored=False, around=True))
        knots = knots_of([item.middle for item in items if item.corner], corners) if corners else []
        if isinstance(section, Rectangle) and not (isinstance(section, Oblong) and knots):
            knots = knots_below([*_stood(items, feet)], corners) or knots
        if knots:
            moved = moved_to(knots)
            items = [item._replace(start=moved(item.start), end=moved(item.end)) for item in items]
        turn = _turn(items, feet, section, rings[at])
        if corners:
            turn = round(turn * corners) / corners
        found.append(_on_their_feet(items, feet, spots, rooms, turn))
    return found


def _around_one(items: Sequence[Item]) -> list[Item]:
    """A first row with the feet of all its stitches side by side on the one place that it goes around."""
    wide = 1 / len(items) ** 2
    low = 0.5 - len(items) * wide / 2
    return [item._replace(foot=(low + wide * at, low + wide * (at + 1))) for at, item in enumerate(items)]


def _stood(items: Sequence[Item], feet: Mapping[int, Spot]) -> Iterator[tuple[float, float]]:
    """The middles of each item's top and of what it stands on."""
    for item in items:
        if (spot := feet.get(id(item.thing))) is not None:
            yield item.middle, (spot.start + spot.end) / 2


def foundation(row: WorkedRound, base: Sequence[Place], mirrored: bool) -> dict[int, Spot]:
    """The chains of a foundation from the first to the last that the row uses, side by side; chains passed
    before a first stitch on the hook stand under it.
    """
    used = {id(place) for made in row.made for place in made.into}
    places = [at for at, place in enumerate(base) if id(place) in used]
    if not places:
        return {}
    first = row.made[0]
    ahead = int(isinstance(first, Made) and first.number > 0 and not first.into)
    low, whole = places[0] - ahead, places[-1] - places[0] + 1 + ahead
    spots: dict[int, Spot] = {}
    for at in range(places[0], places[-1] + 1):
        start, end = (at - low) / whole, (at - low + 1) / whole
        spots[id(base[at])] = Spot(1 - end, 1 - start) if mirrored else Spot(start, end)
    return spots


def _side_by_side(worked: WorkedRound, scale: Scale, last: bool, rooms: dict[int, float]) -> list[Item]:
    """In the order made, from 0 to 1. Slip stitches that join or travel take no room; fans of the last round
    stand free.

    rooms: of each space below, by its id, how many stitch widths it takes; this round's are added.
    """
    corners = Edge(list(worked.edge)).corners() if worked.edge else set()
    petals = petals_of(worked) if last else []
    wide = rooms_at(worked, petals)
    things: list[tuple[float, Made | Space]] = []
    for made in worked.made:
        if isinstance(made, Space):
            if not made.back:
                rooms[id(made)] = wide.get(id(made)) or _room_of(made, rooms)
                things.append((rooms[id(made)], made))
        elif made.number:
            things.append((wide.get(id(made), 1.0), made))
    deep = depths(worked, posts=True)
    stitches = [made for _, made in things if isinstance(made, Made)]
    heights = {look: scale.height_of(*look) for look in {(made.kind, made.post) for made in stitches}}
    level = [heights[made.kind, made.post] for made in stitches if id(made) not in deep]
    tallest = max(level, default=1.0)
    crowns = _crowns(worked) if last else {}
    rounded = {key: tops for petal in petals for key, tops in petal.tops()}
    picots = picots_of(worked)
    whole = sum(share for share, _ in things) or 1.0
    found: list[Item] = []
    at = 0.0
    for share, thing in things:
        end = at + share / whole
        tops = (1.0, 1.0)
        if isinstance(thing, Made):
            height = heights[thing.kind, thing.post] / tallest
            left, right = (rounded or crowns).get(id(thing), (1.0, 1.0))
            height = 1.0 if height >= AS_TALL or id(thing) in deep else height
            tops = (height * left, height * right)
        elif id(thing) in rounded:
            tops = rounded[id(thing)]
        floor = 1.0 - deep.get(id(thing), 0)
        corner, small = id(thing) in corners, picots.get(id(thing), ())
        upright = isinstance(thing, Space) and id(thing) in rounded
        found.append(
            Item(thing, at, end, tops=tops, corner=corner, floor=floor, picots=small, upright=upright)
        )
        at = end
    return found


def _room_of(space: Space, rooms: Mapping[int, float]) -> float:
    """How many stitch widths a space takes: in a net each mesh is as wide as what it stands over."""
    own = space.chains * CHAIN_SHARE
    passed = sum(rooms.get(id(place), 0.0) if isinstance(place, Space) else 1.0 for place in space.into)
    return passed if EASED[0] * own <= passed <= EASED[1] * own else own


def _crowns(worked: WorkedRound) -> dict[int, tuple[float, float]]:
    """How high the two sides of each stitch of a fan (four or more in one place) reach: a scallop. In a
    corner with chains the two sides go on straight; what is all in one place is a ring, no fan.
    """
    found: dict[int, tuple[float, float]] = {}
    whole = sum(isinstance(made, Made) and made.number > 0 for made in worked.made)
    fan: list[Made] = []
    parted = False
    for made in [*worked.made, None]:
        if isinstance(made, Space):
            parted |= made.corner
            continue
        if made is not None and not made.number:
            continue
        if made is not None and fan and made.into == fan[0].into:
            fan.append(made)
            continue
        if len(fan) >= 4 and not parted and len(fan) < whole:
            sides = [1 - 0.6 * (2 * at / len(fan) - 1) ** 2 for at in range(len(fan) + 1)]
            found.update({id(one): pair for one, pair in zip(fan, pairwise(sides), strict=True)})
        fan, parted = [made] if made is not None else [], False
    return found


def _mirrored(item: Item) -> Item:
    tops = (item.tops[1], item.tops[0])
    return item._replace(start=1 - item.end, end=1 - item.start, tops=tops, after=1 - item.after)


# ---- what they stand on --------------------------------------------------------------------------


def _on_their_feet(
    items: Sequence[Item], feet: Mapping[int, Spot], spots: dict[int, Spot], rooms: Mapping[int, float],
    turn: float | None = None,
) -> list[Item]:  # fmt: skip
    """The items with their feet on the places they went into; then their tops are places themselves.

    rooms: of each space, in stitch widths. turn: how far a round is turned first; None for a row.
    """
    by = turn or 0.0
    whole = sum(rooms.get(id(item.thing), 1.0) for item in items) or 1.0
    found: list[Item] = []
    for item in items:
        start, end, spot = item.start + by, item.end + by, feet.get(id(item.thing))
        foot, floor = (start, end), item.floor
        if spot is not None:
            middle = (spot.start + spot.end) / 2
            half = max(spot.end - spot.start, NARROWEST_FOOT / whole) / 2
            if turn is not None:
                middle += round((start + end) / 2 - middle)
            foot, floor = (middle - half, middle + half), min(item.floor, spot.top)
        found.append(item._replace(start=start, end=end, foot=foot, floor=floor))
    found = _beside_them(found)
    if turn is None:
        found = _eased(found)
    for item in found:
        spots[id(item.thing)] = Spot(item.start, item.end, min(item.tops))
    return found


def _beside_them(items: list[Item]) -> list[Item]:
    """Chains that stand upright have their foot at that of the stitch beside them."""
    found = list(items)
    for at, item in enumerate(items):
        if item.upright:
            after = at + 1 < len(items) and item.tops[1] > item.tops[0]
            edge = items[at + 1].foot[0] if after else items[at - 1].foot[1]
            found[at] = item._replace(foot=(edge, edge), floor=items[at + 1 if after else at - 1].floor)
    return found


def _eased(items: list[Item]) -> list[Item]:
    """A row drawn halfway back above what it stands on, so that a rib goes on smoothly where the row widens.

    Only where every stitch stands beside its neighbour: nothing is passed over, no space made.
    """
    if any(abs(one.foot[1] - other.foot[0]) > CLOSE for one, other in pairwise(items)):
        return items
    return [
        item._replace(start=(item.start + item.foot[0]) / 2, end=(item.end + item.foot[1]) / 2)
        for item in items
    ]


def feet_of(
    items: Sequence[Item], spots: Mapping[int, Spot], mirrored: bool, around: bool = False
) -> Iterator[tuple[int, Spot]]:
    """Where each stitch stands: its part of the place, or all its places together where it gathers them.

    around: the places lie around a piece, as shares of its way.
    """
    stitches = [item for item in items if isinstance(item.thing, Made)]
    sharers = Counter(_key(place) for item in stitches for place in item.thing.into)
    come: Counter[Hashable] = Counter()
    for item in stitches:
        parts: list[Spot] = []
        for place in item.thing.into:
            spot, key = _spot(place, spots, mirrored), _key(place)
            many = sharers[key]
            if spot is not None and isinstance(place, Space):
                spot = _narrowed(spot, WIDEST_FOOT * many * (item.end - item.start))
            if spot is not None and many == 1:
                parts.append(spot)
            elif spot is not None:
                wide = (spot.end - spot.start) / many
                low = spot.start + wide * come[key]
                parts.append(Spot(low, low + wide, spot.top))
                come[key] += 1
        if parts:
            yield id(item.thing), parts[0] if len(parts) == 1 else _together(parts, around)


def _narrowed(spot: Spot, widest: float) -> Spot:
    """The middle of a spot, no wider than this: what is worked into a wide arch draws its chains together."""
    middle, half = (spot.start + spot.end) / 2, min(spot.end - spot.start, widest) / 2
    return spot._replace(start=middle - half, end=middle + half)


def _together(parts: Sequence[Spot], around: bool) -> Spot:
    """From the first to the last of several spots, also where a round's beginning lies between them."""
    turns = [round(part.start - parts[0].start) if around else 0 for part in parts]
    start = min(part.start - turn for part, turn in zip(parts, turns, strict=True))
    end = max(part.end - turn for part, turn in zip(parts, turns, strict=True))
    return Spot(start, end, min(part.top for part in parts))


def _key(place: Place) -> Hashable:
    """One chain of a space is another object each time: known by its space and number."""
    if isinstance(place, Made) and place.role == "loop":
        return (id(place.into[0]), place.number)
    return id(place)


def _spot(place: Place, spots: Mapping[int, Spot], mirrored: bool) -> Spot | None:
    """Where a place lies. mirrored: it is worked into from right to left, its chains counted that way."""
    if isinstance(place, Made) and place.role == "loop":
        space = place.into[0]
        whole = spots.get(id(space))
        if whole is None or not isinstance(space, Space):
            return None
        wide = (whole.end - whole.start) / space.chains
        passed = space.chains - place.number if mirrored else place.number - 1
        return Spot(whole.start + wide * passed, whole.start + wide * (passed + 1), whole.top)
    return spots.get(id(place))


def _turn(items: Sequence[Item], feet: Mapping[int, Spot], section: Section, ring: Ring) -> float:
    """How far a round must be turned for its stitches to stand above their places, in the mean."""
    away, across = 0.0, 0.0
    middles = {id(item.thing): item.middle for item in items}
    for key, spot in feet.items():
        below = section.carried((spot.start + spot.end) / 2, ring.out0, ring.out1)
        angle = tau * (below - middles[key])
        away += sin(angle)
        across += cos(angle)
    return atan2(away, across) / tau
