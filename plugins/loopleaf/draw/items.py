"""A round as items side by side: stitches and spaces with the share of the way that each takes."""

from dataclasses import dataclass
from math import pi, sin

from ..fabric import Made, Space, WorkedRound
from ..fabric.edge import Edge
from ..measure.gauge import Scale

CHAIN_SHARE = 0.8
"""A chain of a space takes about so much of a stitch's width; an arch leans over more."""


@dataclass(frozen=True, slots=True)
class Item:
    """One stitch or space: from `start` to `end` along the round (0 to 1), its height in mm, how it looks.

    number: the stitch's number in the round, 0 for a space. form: `stitch`, `space`.
    crown: the share of its height that shows: the outer stitches of a fan lean and reach less high.
    """

    start: float
    end: float
    height: float
    yarn: str
    kind: str
    form: str
    post: str
    loop: str
    number: int
    corner: bool
    crown: float = 1.0


def items_of(worked: WorkedRound, scale: Scale, last: bool = False) -> list[Item]:
    """The items of a round, in the order made. Slip stitches that join or travel take no room.

    last: nothing is worked into the round, so that its fans stand free."""
    corners = Edge(list(worked.edge)).corners() if worked.edge else set()
    things: list[tuple[float, Made | Space]] = []
    for made in worked.made:
        if isinstance(made, Space):
            if not made.back:
                things.append((made.chains * CHAIN_SHARE, made))
        elif made.number:
            things.append((1.0, made))
    crowns = _crowns(worked) if last else {}
    whole = sum(share for share, _ in things) or 1.0
    found: list[Item] = []
    at = 0.0
    for share, thing in things:
        end = at + share / whole
        if isinstance(thing, Space):
            found.append(Item(at, end, 0.0, thing.yarn, "chain", "space", "", "", 0, id(thing) in corners))
        else:
            height = scale.height_of(thing.kind, thing.post)
            corner = id(thing) in corners
            found.append(
                Item(
                    at,
                    end,
                    height,
                    thing.yarn,
                    thing.kind,
                    "stitch",
                    thing.post,
                    thing.loop,
                    thing.number,
                    corner,
                    crowns.get(id(thing), 1.0),
                )
            )
        at = end
    return found


def _crowns(worked: WorkedRound) -> dict[int, float]:
    """How high the stitches of each fan (four or more in one place) reach: the middle ones highest."""
    found: dict[int, float] = {}
    fan: list[Made] = []
    for made in [*(m for m in worked.made if isinstance(m, Made) and m.number), None]:
        if made is not None and fan and made.into == fan[0].into:
            fan.append(made)
            continue
        if len(fan) >= 4:
            for at, one in enumerate(fan):
                found[id(one)] = 0.6 + 0.4 * sin(pi * (at + 0.5) / len(fan))
        fan = [made] if made is not None else []
    return found


def with_corners_at(items: list[Item], corners: int) -> list[Item]:
    """The items moved along so that each corner lies where a polygon has one: sides are stretched evenly
    between them.
    """
    middles = [(item.start + item.end) / 2 for item in items if item.corner]
    if len(middles) != corners:
        return items
    first = middles[0]
    knots = [(m - first) % 1.0 for m in middles] + [1.0]

    def moved(at: float) -> float:
        turns, part = divmod(at - first, 1.0)
        for side in range(corners):
            low, high = knots[side], knots[side + 1]
            if low <= part <= high and high > low:
                return turns + (side + (part - low) / (high - low)) / corners
        return turns + part

    return [
        Item(
            moved(i.start),
            moved(i.end),
            i.height,
            i.yarn,
            i.kind,
            i.form,
            i.post,
            i.loop,
            i.number,
            i.corner,
            i.crown,
        )
        for i in items
    ]
