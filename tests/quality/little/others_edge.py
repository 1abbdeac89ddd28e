"""Edges that aren't the last round's: all around a piece in rows, stitches by number, loops left free."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from loopleaf import pattern

from .cells import CannotSay, Cell, Edge, Misfit, chains, corners_of
from .rounds import RoundDone

OTHER_LOOPS = {"back": ("front",), "front": ("back",), "third": ("front", "back")}


def row_end(one: RoundDone) -> Cell:
    kind = next((cell.kind for cell in reversed(one.made) if cell.top), "")
    return Cell("row-end", form=kind)


def all_around(rows: Sequence[RoundDone]) -> Edge:
    """The last row, one side, the beginning, the other side; corners are the ends of first and last row."""
    first, last = rows[0], rows[-1]
    if any(cell.kind == "space" for cell in first.made):
        raise CannotSay("around a piece whose first row has spaces")
    top, beginning = list(last.made), chains(first.count)
    for side in (top, beginning):
        tops = [at for at, cell in enumerate(side) if cell.top]
        for at in {tops[0], tops[-1]} if tops else ():
            side[at] = replace(side[at], corner=True)
    ends = [row_end(one) for one in rows]
    return Edge([*top, *reversed(ends), *beginning, *ends], "circle", sided=True)


def around_joined(cells: Sequence[Cell], across: int, down: int) -> Edge:
    """All around pieces laid out and joined, side upon side: of each piece its own side, and the two corners
    at its ends; the corners of the whole once."""
    at = corners_of(cells)
    if len(at) != 4:
        raise Misfit("place", f"{len(at)} corners, where pieces laid out need four")
    turned = [*cells[at[0] :], *cells[: at[0]]]
    begins = [one - at[0] for one in at]
    edge: list[Cell] = []
    for side, pieces in enumerate((across, down) * 2):
        begin, end = begins[side], (*begins[1:], len(turned))[side]
        last = turned[end % len(turned)]
        for piece in range(pieces):
            edge.append(replace(turned[begin], corner=piece == 0))
            edge += [replace(cell) for cell in turned[begin + 1 : end]]
            edge += [replace(last)] if piece < pieces - 1 else []
    return Edge(edge, "circle")


def by_number(done: RoundDone, runs: Sequence[pattern.Run]) -> list[Cell]:
    """Stitches counted from the round's beginning, with the spaces that lie between them."""
    tops = [at for at, cell in enumerate(done.made) if cell.top]
    cells: list[Cell] = []
    for run in runs:
        last = run.last if run.last is not None else run.first
        if not 1 <= run.first <= last <= len(tops):
            raise Misfit("numbers", f"round {done.label} has {len(tops)} stitches")
        cells += done.made[tops[run.first - 1] : tops[last - 1] + 1]
    return cells


@dataclass
class FreeLoopsOf:
    """The loops that each round's stitches have free, as the rounds above it were worked into one alone."""

    by_round: dict[str, list[tuple[Cell, str]]] = field(default_factory=dict)

    def add(self, done: RoundDone, below: str) -> None:
        """below: the label of the round that `done` went into, "" at the start."""
        if below and done.one_loop:
            self.by_round[below] = done.one_loop

    def edge(self, loop: str, round: int, rows: bool) -> Edge:
        """The loops that a line names; round 0: those that were left last."""
        label = str(round) if round else next(reversed(self.by_round), "")
        there = self.by_round.get(label, [])
        free = [cell for cell, used in there if rows or not loop or loop in OTHER_LOOPS.get(used, ())]
        if not free:
            raise Misfit("place", f"no such loops of round {label} are free")
        return Edge(list(dict.fromkeys(free)), "line" if rows else "circle", loops=True)
