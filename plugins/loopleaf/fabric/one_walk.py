"""One walk along the edge, each place by its own kind.

`sc in each dc and 2 sc in each ch-2 sp around`, `sc in each sc and 2 sc in each dc around`.
"""

from collections.abc import Callable
from dataclasses import replace

from ..notation.tree import Each, Group, Step, Target, Work
from .edge import Found
from .hand import Hand
from .seek import Into, take

_BETWEEN_STITCHES = ("space", "loop")


Put = Callable[[Hand, Work | Group, Into], None]


def one_walk(hand: Hand, step: Step, follow: Step | None, put: Put) -> bool:
    """Work two steps in one walk, where each names what the other passes by; False for any others.

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
    if hand.leaf is not None or not _apart(plain, between):
        return False
    edge = hand.edge
    if not all(any(edge.find(target, edge.pos) for target in one.targets) for one in (plain, between)):
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


def each_apart(step: Step, follow: Step | None) -> tuple[Work, Work] | None:
    """`sc in same st and in each dc around, working 3 sc in each ch-2 sp`: what comes before the walk, and
    its step; None for any other."""
    match step, follow:
        case (
            Work(places=(_, *_, Each() as plain), counts=None) as work,
            Work(places=(Each() as between,)) | Group(places=(Each() as between,)),
        ) if _apart(plain, between):
            return replace(work, places=work.places[:-1]), replace(work, places=(plain,))
    return None


def _apart(one: Each, other: Each) -> bool:
    """Whether no place belongs to both: stitches and spaces, stitches of different kinds, spaces of different
    lengths. A corner that is one of the others' spaces is the corner's."""
    sorts = [{_sort(target) for target in each.targets} for each in (one, other)]
    if "" in sorts[0] | sorts[1] or sorts[0] & sorts[1]:
        return False
    spaces = [{sort for sort in found if sort.startswith("space")} for found in sorts]
    if all(spaces) and "space" in spaces[0] | spaces[1]:
        return False
    plain = [any(sort == "stitch" for sort in found) for found in sorts]
    kinds = [any(sort.startswith("stitch ") for sort in found) for found in sorts]
    return not (plain[0] and kinds[1]) and not (kinds[0] and plain[1])


def _sort(target: Target) -> str:
    """Which places a target takes: `space` (any), `space 2`, `corner`, `stitch` (any), `stitch single`; ""
    for what isn't told apart."""
    if target.kind == "corner":
        return "corner"
    if target.kind in _BETWEEN_STITCHES:
        return f"space {target.length}" if target.length else "space"
    if target.kind != "stitch" or target.unworked or target.round:
        return ""
    if target.stitch is None:
        return "stitch"
    return f"stitch {target.stitch.kind}" if target.stitch.kind and not target.stitch.form else ""
