"""How a round stands on those before it: on which one, whether as petals, and in how many solid corners.

A layer is measured from the round that it is worked into; a round of arches behind petals, from the round
that those stand on. Petals rise and fall in one place each, or are what nothing stands on in a piece of
layers: each is an edge of its own, so their number bends nothing. A group of three and more in one place is a
corner where such groups stand in one another (a square of single crochet, a hexagon); once alone it may be a
shell.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from ..fabric import Made, WorkedRound
from ..fabric.edge import solid_corners
from ..fabric.layers import root_of
from .gauge import height_ratio
from .made import Contents
from .stacked import stacked_corners

_BEHIND = 0.5
"""Arches that go into so few of the stitches below, at most, pass behind its petals (chosen here)."""


@dataclass(frozen=True, slots=True)
class Standing:
    """root: the index of the earlier round that a layer stands on, None for a round on the one before it.

    behind: it goes into the short stitches between the petals that stand there. petals: it ends in petals, or
    in points worked back on chains. corners: solid ones. stacked: those that pairs of increases stack up to.
    """

    root: int | None = None
    behind: bool = False
    petals: bool = False
    corners: int = 0
    stacked: int = 0


_FEWEST_POINTS = 3
"""Fewer points worked back on chains are tabs, no edge (chosen here)."""

PLAINLY = Standing()
_Groups = Sequence[Sequence[Made]]


def standings(
    rounds: Sequence[WorkedRound | None], made: Sequence[Contents | None], in_rounds: bool
) -> list[Standing]:
    """One for each round of one size, in their order. made: the same rounds counted."""
    found = [Standing(root_of(at, rounds)) for at in range(len(rounds))]
    if not in_rounds:
        return found
    groups = [_groups(one, counted) for one, counted in zip(rounds, made, strict=True)]
    for at in _petals(found, groups, made):
        found[at] = replace(found[at], petals=True)
    for (at, one), contents in zip(list(enumerate(found))[2:], made[2:], strict=True):
        root, below = rounds[at - 2], made[at - 1]
        if (
            one.root is not None
            or not found[at - 1].petals
            or not (root and below and contents and contents.gaps)
        ):
            continue
        if contents.counted <= _BEHIND * below.counted:
            found[at] = replace(one, root=at - 2, behind=True)
    for (below_at, lower), (at, upper) in pairwise(enumerate(groups)):
        if lower and len(lower) == len(upper) and _stands_in(upper, lower):
            for index in (below_at, at):
                found[index] = replace(found[index], corners=len(lower))
    if len(found) > 1 and found[1].corners:  # the ring's own stitches lie under the first corners
        found[0] = replace(found[0], corners=found[1].corners)
    return [
        replace(one, stacked=corners) if corners else one
        for one, corners in zip(found, stacked_corners(rounds, made), strict=True)
    ]


def _groups(worked: WorkedRound | None, made: Contents | None) -> _Groups:
    """The groups of three and more stitches in one place, of a round without spaces."""
    return [] if worked is None or made is None or made.gaps else solid_corners(worked.edge)


def _petals(
    found: Sequence[Standing], groups: Sequence[_Groups], made: Sequence[Contents | None]
) -> Iterator[int]:
    layers = [at for at, one in enumerate(found) if one.root is not None]
    free = {*(layer - 1 for layer in layers), len(found) - 1} if layers else set()
    for at, (contents, own) in enumerate(zip(made, groups, strict=True)):
        if contents is None:
            continue
        if at == len(found) - 1 and points(contents):
            yield at
            continue
        several = at in free and len({sort.kind for sort in contents.stitches if sort.counted}) > 1
        if several or (own and sum(map(len, own)) == contents.counted and all(map(_is_petal, own))):
            yield at


def points(made: Contents) -> int:
    """Of points worked back on chains, the chains of the longest; 0 where there are too few for an edge."""
    found = {sort: number for sort, number in made.spaces.items() if sort.leaf}
    return max(sort.chains for sort in found) if sum(found.values()) >= _FEWEST_POINTS else 0


def _is_petal(group: Sequence[Made]) -> bool:
    """Whether its stitches are tallest in the middle."""
    heights = [height_ratio(made.kind, {}).middle for made in group]
    return max(heights) > max(heights[0], heights[-1])


def _stands_in(upper: _Groups, lower: _Groups) -> bool:
    """Whether each group stands in a stitch of another group of the round below."""
    bearing = [
        at
        for group in upper
        for at, below in enumerate(lower)
        if any(made is group[0].into[0] for made in below)
    ]
    return sorted(bearing) == list(range(len(lower)))
