"""Gaps: where one group on an edge ends and the next begins, with a chain there or without."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from loopleaf.notation.tree import Target

from .cells import Cell


def is_gap(cells: Sequence[Cell], target: Target) -> bool:
    """Whether a place is a gap: by its name, or a bare `sp` where no chain makes one on the whole edge."""
    if target.kind == "gap":
        return True
    spaces = any((cell.arch or cell).kind == "space" for cell in cells)
    return target.kind == "space" and not target.length and bool(cells) and not spaces


def gaps(cells: Sequence[Cell], around: bool, lone: bool = False) -> Iterator[int]:
    """Each gap by the place behind the group before it. lone: a stitch by itself is as good as a group, as it
    is where there are no groups.
    """
    groups: list[list[int]] = []
    for at, cell in enumerate(cells):
        beside = at and groups and groups[-1][-1] == at - 1 and _in_a_ring(cells[at - 1], cell)
        if cell.top and groups and (beside or together(cells[groups[-1][-1]], cell)):
            groups[-1].append(at)
        elif cell.top:
            groups.append([at])
    each = lone
    if sum(len(group) > 1 for group in groups) < 2:  # all in one ring are single stitches
        groups, each = [[at] for group in groups for at in group], True
    pairs = list(pairwise(groups))
    if around and len(groups) > 1 and (each or not together(cells[groups[-1][0]], cells[groups[0][0]])):
        pairs.append((groups[-1], groups[0]))
    yield from (before[-1] + 1 for before, after in pairs if each or (len(before) > 1 and len(after) > 1))


def _in_a_ring(one: Cell, other: Cell) -> bool:
    """Whether one of two neighbors is a turning chain out of a ring: it belongs to the group beside it."""
    return any(cell.chain and cell.foot is None for cell in (one, other))


def together(one: Cell, other: Cell) -> bool:
    """Whether both were worked into one place."""
    if one.foot is not None and one.foot is other.foot:
        return True
    return any(bunch in other.bunches for bunch in one.bunches)
