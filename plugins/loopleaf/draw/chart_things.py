"""What a round of a chart holds side by side, and how much room each thing needs."""

from collections.abc import Hashable, Sequence

from ..fabric import Made, Ring, Space, WorkedRound
from ..fabric.worked import Place
from .signs import CHAIN_LONG, SLIP_HEIGHT, UNIT, height_of

Thing = Made | Space


class Whole(Space):
    """Some things of a round that are laid along its way as one. wide: how much of it they take."""

    __slots__ = ("things", "wide")

    def __init__(self, things: Sequence[Thing], wide: float) -> None:
        super().__init__(0, things[0].round, things[0].yarn)
        self.things = things
        self.wide = wide


SLIP_WIDE, LOOPED_WIDE, LOOPED_HIGH = 6.0, 8.4, 7.6
GATHERED_WIDE = 12.0
"""A slip stitch, one with a mark for its loop below it, and what is drawn together in one place, in units."""

ARCH_LEAST = 3.0
ARCH_CHAIN = 4.4
"""An arch takes so much room, and so much more for each chain: its ends can stand close together."""

NUMBER_ROOM, FIRST_ROOM = 13.0, 8.0
"""Room at the start of a round for its number, and for a first chain or a join beside it."""

JOIN_ROOM, DIGIT_ROOM = 3.0, 6.0
"""Room for a join before a chain that counts as a stitch, twice as much behind chains; and for a number's
second digit: such a round's sides are long.
"""

FEWEST_AROUND = 3
"""So few stitches in one place are a first row that goes around it."""

STACKED = 0.75
"""A chain in a stack that stands for a stitch is so tall, of its length."""

ROOM = 2.6
"""Between a place and the foot that stands on it."""


def things_of(worked: WorkedRound, backward: bool) -> list[Thing]:
    """The counted stitches and the spaces of a round, along its way. backward: made against the way."""
    found = [made for made in worked.made if (bool(made.number) if isinstance(made, Made) else not made.back)]
    return found[::-1] if backward else found


def begun_in(first: WorkedRound) -> Place | None:
    """The one chain or ring that all of a first row goes into; None where it goes into several, or where it
    is too short to go around one.
    """
    stitches = [made for made in first.made if isinstance(made, Made) and made.number]
    places = {place_key(place): place for made in stitches for place in made.into}
    if len(places) != 1 or len(stitches) < FEWEST_AROUND:
        return None
    place = next(iter(places.values()))
    foundation = isinstance(place, Made) and place.role == "foundation"
    return place if foundation or isinstance(place, Ring) else None


def gap_of(worked: WorkedRound, cornered: bool = False, digits: int = 1) -> float:
    """How much room the start of a round takes. cornered: of a polygon's, whose number (so many digits) is
    put where there is room: a wide gap would push the stitches of that side askew.
    """
    beside = {made.role for made in worked.made if isinstance(made, Made)} & {"chain", "join", "travel"}
    if cornered:
        last = next((made for made in reversed(worked.made) if isinstance(made, Space) or made.number), None)
        return (
            JOIN_ROOM * (1 + isinstance(last, Space))
            + FIRST_ROOM * ("chain" in beside)
            + DIGIT_ROOM * (digits - 1)
        )
    return NUMBER_ROOM + FIRST_ROOM * bool(beside)


def wide_of(thing: Thing) -> float:
    """How much of its round a thing takes."""
    if isinstance(thing, Whole):
        return thing.wide
    if isinstance(thing, Space):
        return ARCH_LEAST + ARCH_CHAIN * thing.chains
    if thing.kind == "slip":
        return LOOPED_WIDE if thing.loop else SLIP_WIDE
    return GATHERED_WIDE if thing.form in ("bobble", "popcorn", "puff") else UNIT


def tall_of(thing: Thing) -> float:
    """How tall a thing is drawn; an arch rises by what it is too long for."""
    if isinstance(thing, Space):
        return UNIT
    tall = LOOPED_HIGH if thing.kind == "slip" and thing.loop else height_of(thing.kind)
    return max(tall, STACKED * CHAIN_LONG * thing.chains) if thing.role == "turning" else tall


def lowest_height(things: Sequence[Thing]) -> float:
    """The height of a round that has no stitches of its own."""
    return max((tall_of(thing) for thing in things if isinstance(thing, Made)), default=SLIP_HEIGHT)


def place_key(place: Place) -> Hashable:
    """One chain of a space is another object each time: known by its space and number."""
    if isinstance(place, Made) and place.role == "loop":
        return (id(place.into[0]), place.number)
    return id(place)


def shared(thing: Thing) -> Hashable:
    """What the stitches of a fan have in common: their one place. None for all others and on a ring."""
    if isinstance(thing, Space) or len(thing.into) != 1 or isinstance(thing.into[0], Ring):
        return None
    return place_key(thing.into[0])


def groups_of(things: Sequence[Thing], placed: Sequence[bool], around: Hashable = None) -> list[range]:
    """The runs of things that belong to one place, with the spaces among them; single things alone.

    placed: of each, whether its place lies in the chart. around: the place that all of a first row goes into.
    """
    stand = [on for on, thing in zip(placed, things, strict=True) if isinstance(thing, Made)]
    if around is not None and all(stand):
        return [range(len(things))]
    found: list[range] = []
    at = 0
    while at < len(things):
        key, end = shared(things[at]) if placed[at] else None, at + 1
        if key is not None:
            for ahead in range(at + 1, len(things)):
                if isinstance(things[ahead], Space):
                    continue
                if shared(things[ahead]) != key:
                    break
                end = ahead + 1
        found.append(range(at, end))
        at = end
    return found
