"""Stitches that cross: worked in another order than their places lie, with their heads side by side."""

from collections.abc import Iterator, Sequence

from .chart_lines import Top

MOST = 12
"""So many stitches cross at most: six over six. More in another order are no crossing."""


def uncrossed(below: Sequence[Sequence[Top]]) -> list[Sequence[Top]]:
    """The places that the heads of a round lie above: of stitches that cross, the same places in their order
    along the way, for their heads stand side by side while their legs lie across each other.

    below: the places of each thing, none for a space.
    """
    found = list(below)
    standing = [at for at, tops in enumerate(below) if tops]
    for block in _blocks([min(top.order for top in below[at]) for at in standing]):
        crossing = [standing[at] for at in block]
        if 2 <= len(crossing) <= MOST and _side_by_side([below[at] for at in crossing]):
            ordered = sorted((below[at] for at in crossing), key=lambda tops: tops[0].order)
            for at, tops in zip(crossing, ordered, strict=True):
                found[at] = tops
    return found


def _blocks(orders: Sequence[int]) -> Iterator[range]:
    """The shortest runs of which none has a number below one of the runs before it."""
    least = list(orders)
    for at in range(len(orders) - 2, -1, -1):
        least[at] = min(least[at], least[at + 1])
    start, most = 0, -1
    for at, order in enumerate(orders):
        most = max(most, order)
        if at + 1 == len(orders) or most <= least[at + 1]:
            yield range(start, at + 1)
            start = at + 1


def _side_by_side(places: Sequence[Sequence[Top]]) -> bool:
    """Whether each stitch has one place, no two the same, all in one round."""
    return (
        all(len(tops) == 1 for tops in places)
        and len({tops[0].order for tops in places}) == len(places)
        and len({tops[0].level for tops in places}) == 1
    )
