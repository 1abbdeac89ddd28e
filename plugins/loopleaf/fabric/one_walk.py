"""One walk along the edge, each place by its own kind.

`sc in each dc and 2 sc in each ch-2 sp around`, `FPdc around each FPdc and BPdc around each BPdc around`.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace

from ..notation.tree import Each, Group, Step, Target, Work
from .edge import Found
from .hand import Hand
from .seek import Into, take

_BETWEEN_STITCHES = ("space", "loop")


Put = Callable[[Hand, Work | Group, Into], None]


def one_walk(hand: Hand, steps: Sequence[Step], put: Put) -> int:
    """Work the first steps in one walk, where each names what the others pass by.

    Returns how many of them; 0 where the first doesn't begin such a walk. put: works a step into one place.
    """
    walked: list[tuple[Work | Group, Each]] = []
    for step in steps:
        each = _walks(step, walked)
        if each is None:
            break
        assert isinstance(step, Work | Group)
        walked.append((step, each))
    edge = hand.edge
    if len(walked) < _SEVERAL or hand.leaf is not None:
        return 0
    if not all(any(edge.find(target, edge.pos) for target in each.targets) for _, each in walked):
        return 0
    hand.begun = True
    while True:
        ways: list[tuple[Found, Target, Work | Group]] = [
            (found, target, step)
            for step, each in reversed(walked)
            for target in each.targets
            if (found := edge.find(target, edge.pos)) is not None
        ]
        if not ways:
            return len(walked)
        # `dc in each dc, FPdc around each FPdc`: a post stitch is a dc too, and the other names it closer
        found, _, step = min(ways, key=lambda way: (way[0].at, not _is_post(way[1])))
        put(hand, step, take(hand, [found])[0])


_SEVERAL = 2


def _walks(step: Step, before: Sequence[tuple[Work | Group, Each]]) -> Each | None:
    """Its `each`, if the step can be one more of such a walk."""
    if not isinstance(step, Work if not before else Work | Group):
        return None
    match step.places:
        case (Each(every=1, remaining=False) as each,) if step.counts is None and each.until.kind == "end":
            return each if all(_apart(other, each) for _, other in before) else None
    return None


def _is_post(target: Target) -> bool:
    return target.stitch is not None and bool(target.stitch.post)


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
    """Which places a target takes: `space` (any), `space 2`, `corner`, `stitch` (any), `stitch single`,
    `stitch double front`; "" for what isn't told apart."""
    if target.kind == "corner":
        return "corner"
    if target.kind in _BETWEEN_STITCHES:
        return f"space {target.length}" if target.length else "space"
    if target.kind != "stitch" or target.unworked or target.round:
        return ""
    if target.stitch is None:
        return "stitch"
    kind, post = target.stitch.kind, target.stitch.post
    return f"stitch {kind} {post}".rstrip() if kind and not target.stitch.form else ""
