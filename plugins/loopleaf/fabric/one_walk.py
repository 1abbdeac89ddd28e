"""One walk along the edge, each place by its own kind: `sc in each dc and 2 sc in each ch-2 sp around`."""

from collections.abc import Callable

from ..notation.tree import Each, Group, Step, Work
from .edge import Found
from .hand import Hand
from .seek import Into, take

_BETWEEN_STITCHES = ("space", "loop", "corner")


Put = Callable[[Hand, Work | Group, Into], None]


def one_walk(hand: Hand, step: Step, follow: Step | None, put: Put) -> bool:
    """Work two steps in one walk, where the second names what the first passes by; False for any others.

    put: works a step into one place."""
    if not isinstance(step, Work) or not isinstance(follow, Work | Group):
        return False
    match step.places, follow.places:
        case (Each() as plain,), (Each() as between,) if step.counts is None and follow.counts is None:
            pass
        case _:
            return False
    if any(one.until.kind != "end" or one.every > 1 or one.remaining for one in (plain, between)):
        return False
    if any(target.kind != "stitch" or target.unworked for target in plain.targets):
        return False
    if any(target.kind not in _BETWEEN_STITCHES for target in between.targets) or hand.leaf is not None:
        return False
    edge = hand.edge
    if not any(edge.find(target, edge.pos) for target in between.targets):
        return False
    hand.begun = True
    while True:
        ways: list[tuple[Found, Work | Group]] = [
            (found, work)
            for work, place in ((follow, between), (step, plain))
            for target in place.targets
            if (found := edge.find(target, edge.pos)) is not None
        ]
        if not ways:
            return True
        found, work = min(ways, key=lambda way: way[0].at)
        put(hand, work, take(hand, [found])[0])
