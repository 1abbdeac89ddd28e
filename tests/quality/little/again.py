"""A round worked before, in the same way over an edge that is the same in every cell, isn't worked again.

Of thousands of files that differ in one word each, nearly all rounds are the same.
"""

from collections.abc import Callable, Hashable

from .cells import Edge, Misfit
from .rounds import After

MOST_KEPT = 1_000
"""Rounds kept: about as many as the mistakes of one pattern need at a time."""

_kept: dict[Hashable, After | Misfit] = {}


def once(key: Hashable, edge: Edge, work: Callable[[], After]) -> After:
    """What `work` gives, or gave for the same key and edge. Raises the Misfit that it raised then.

    key: all but the edge that the round depends on.
    """
    whole = (key, _like(edge))
    known = _kept.get(whole)
    if known is None:
        if len(_kept) >= MOST_KEPT:
            _kept.clear()
        try:
            known = work()
        except Misfit as misfit:
            known = misfit
        _kept[whole] = known
    if isinstance(known, Misfit):
        raise known
    return known


def _like(edge: Edge) -> Hashable:
    """An edge by what it is made of: equal for edges that no line could tell apart."""
    groups: dict[int, int] = {}
    cells = tuple(
        (
            *(cell.kind, cell.form, cell.post, cell.length, cell.chain, cell.stands, cell.under, cell.usual),
            tuple((bunch, groups.setdefault(id(bunch), len(groups))) for bunch in cell.bunches),
            *(
                None if one is None else groups.setdefault(id(one), len(groups))
                for one in (cell.arch, cell.foot)
            ),
        )
        for cell in edge.cells
    )
    return cells, edge.shape, edge.ring, edge.foundation, edge.at_hook, edge.mid_arch
