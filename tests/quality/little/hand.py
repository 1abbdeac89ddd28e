"""The hook at its place, with what has been made so far."""

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, field, replace
from typing import Any

from loopleaf.notation.tree import Chain, Stitch

from .below import PASSED, Below
from .cells import Cell, Misfit


@dataclass
class Leaf:
    """A chain made inside the round that is worked back on.

    grows: it makes the row longer, for it stands at its beginning. far: its other side is being worked.
    """

    length: int
    at: int = 0
    grows: bool = False
    far: bool = False

    @property
    def left(self) -> int:
        return self.length - self.at


_STAYS = ("setting", "follow")


def _copied(value: Any) -> Any:
    """Lists, sets and dicts change in place, and a leaf does; all else is replaced."""
    if isinstance(value, Leaf):
        return replace(value)
    return copy(value) if isinstance(value, list | set | dict) else value


@dataclass
class Hand(Below):
    """The state of a round in work.

    unworked: what earlier rows left. counted: the line has a count, which bears out what is left or kept, or
    doesn't. skipped_at_once: by the last step that skips. gone_back_to: places skipped and then worked into.
    one_loop: places of which one loop was taken, and which. far_side: the foundation's other side is being
    worked. slipped_over: stitches that a row's slip stitches passed to reach the space that it begins in.
    travelled: how many places a round's slip stitches passed on
    the way to its start. joined_at: the stitch with which the next round begins. fastened_to: lengths of the
    spaces of another piece that the last chain is fastened to. laid: the earlier round whose own stitches the
    line goes along, "" for the one below. all_below: how many rounds further down each stitch of the line
    goes, 0 where one doesn't. stood: stitches just worked further down. onward: the round's last place is the
    stitch that the round before was joined to. shared: the place of the last leg, where the first one stands
    in the place of the stitch before.
    """

    unworked: list[Cell] = field(default_factory=list)
    kinds: frozenset[str] = frozenset()
    counted: bool = False
    moves_marker: bool = False
    here: int | None = None
    made: list[Cell] = field(default_factory=list)
    leaf: Leaf | None = None
    on_leaf: list[str] = field(default_factory=list)
    skipped: list[int] = field(default_factory=list)
    skipped_at_once: int = 0
    gone_back_to: set[int] = field(default_factory=set)
    one_loop: list[tuple[Cell, str]] = field(default_factory=list)
    fastened_to: frozenset[int] = frozenset()
    ring_used: bool = False
    far_side: bool = False
    slipped_over: int = 0
    travelled: int = 0
    leading: bool = True
    beginning: tuple[int, int, bool] | None = None
    begun_in: Cell | None = None
    overrun: int = 0
    turns: bool | None = None
    joined: bool = False
    joined_at: int = 0
    mid_arch: bool = False
    fastened: bool = False
    passed_by: bool = False
    begun_with: int = 0
    group_start: int = 0
    elsewhere: dict[str, int] = field(default_factory=dict)
    laid: str = ""
    all_below: int = 0
    stood: int = 0
    onward: bool = False
    shared: int | None = None
    passage: tuple[Any, ...] = ()
    carried: Chain | None = None

    def save(self) -> dict[str, Any]:
        """All of it as it stands, for a repeat to try a pass and come back."""
        return {name: _copied(value) for name, value in vars(self).items() if name not in _STAYS}

    def restore(self, saved: dict[str, Any]) -> None:
        for name, value in saved.items():
            setattr(self, name, _copied(value))

    def add(self, cell: Cell) -> None:
        """Made: onto the new edge."""
        self.made.append(cell)
        self.leading = False

    @property
    def bridging(self) -> bool:
        """Whether chains were made last, which pass what lies below them on the way to the turning chain."""
        return not self.repeating and bool(self.made) and self.made[-1].kind == "space"

    def spend_arch(self, at: int) -> None:
        """The other chains of an arch whose one chain stands for all of it."""
        arch = self.cells[at].arch
        for other, cell in enumerate(self.cells):
            if arch is not None and cell.arch is arch:
                self.mark(other, PASSED)

    @property
    def in_a_space(self) -> bool:
        """Whether the place last worked into is a space."""
        if self.last is None or self.last < 0:
            return False
        cell = self.cells[self.last]
        return (cell.arch or cell).kind == "space"

    def kind_of(self, stitch: Stitch, below: Sequence[Cell]) -> str:
        """`inc`, `dec`, `work even` take the round's only kind, else the kind that they are worked into."""
        if stitch.kind not in ("inc", "dec", ""):
            return stitch.kind
        if len(self.kinds) == 1:
            return next(iter(self.kinds))
        evenly = not stitch.kind  # `work even`: such a stitch as all of the row below is made of
        there = {cell.kind for cell in self.cells if cell.top} if evenly else {cell.kind for cell in below}
        if len(there) == 1 and (kind := next(iter(there))) not in ("chain", "space", "ring", "row-end"):
            return kind
        raise Misfit("unclear", f"{stitch.kind} of which kind")
