"""Room for the leaves of a round: chains that stand out from it, with stitches on the next one's side."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import tau

from ..fabric import Made, Space, WorkedRound
from .chart_things import Thing
from .signs import CHAIN_LONG, height_of

BESIDE = 4.0
"""From a leaf's tallest stitch to the next leaf's chain, at least; and from its own chain to their feet."""


def wide_at_first(worked: WorkedRound) -> float:
    """How wide the leaf is that rises before a round's first stitch; 0 without one."""
    return next((wide for on, wide in _leaves(worked) if not on), 0.0)


def room_for_leaves(worked: WorkedRound, things: Sequence[Thing], gap: float) -> float:
    """How long a round's way must be, at least, so that none of its leaves lies on the next: a chain further
    out, where their stitches begin. things: along the way, evenly. gap: the room at the start.
    """
    many = max(len(things), 1)
    leaves = list(_leaves(worked))
    ends = [*leaves, (leaves[0][0] + many, 0.0)] if leaves else []
    steps = [(after - on, wide) for (on, wide), (after, _) in pairwise(ends)]
    return max((wide * many / step + gap - tau * CHAIN_LONG for step, wide in steps if step), default=0.0)


def _leaves(worked: WorkedRound) -> Iterator[tuple[int, float]]:
    """Of each leaf, in the order made, how many counted things lie before it, and how wide it is."""
    on, wide = 0, 0.0
    for made in worked.made:
        if isinstance(made, Made) and made.role == "back":
            wide = max(wide, height_of(made.kind) + 2 * BESIDE)
            continue
        if wide:
            yield on, wide
            wide = 0.0
        on += (not made.back) if isinstance(made, Space) else bool(made.number)
    if wide:
        yield on, wide
