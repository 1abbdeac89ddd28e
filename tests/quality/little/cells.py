"""What lies on an edge: a list of cells, each a stitch's top, a chain space, a picot, a chain, a row end."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from loopleaf.notation.tree import Stitch, Target

NOT_TOPS = frozenset({"space", "picot", "ring", "row-end", "arch-chain"})
ANY_SHELL = Stitch("", "shell")
"""A shell that nothing defines: then any three or more in one place are one."""
GATHERED = frozenset({"cluster", "bobble", "puff", "popcorn", "tog"})


class Misfit(Exception):
    """The first thing in a round that contradicts the file.

    what: `fit`, `place`, `join`, `turn`, `yarn`, `count`, `unclear`, `numbers` or `reading`.
    """

    def __init__(self, what: str, why: str) -> None:
        super().__init__(f"{what}: {why}")
        self.what = what
        self.why = why


class CannotSay(Exception):
    """A construct that this model doesn't hold; whoever asks must count these, and not pass over them."""


@dataclass(frozen=True, eq=False)
class Bunch:
    """What was worked into one place, or a special stitch: a shell, a fan, a corner. tops: stitches in it."""

    name: str = ""
    kind: str = ""
    number: int = 0
    tops: int = 0


@dataclass(frozen=True, eq=False)
class Cell:
    """One thing on an edge. Two cells are the same only when they are one object.

    length: chains of a space. chain, stands: of a turning chain that counts, all its chains and those that
    stand for the stitch. under: those of a foundation before them, below the first space. arch: the space
    whose single chain this is, where chains are counted. corner: of a piece in rows that is gone around.
    foot: the place that it was worked into. usual: of skipped chains of a foundation, as many as are usually
    made for the stitch that they stand for.
    """

    kind: str
    form: str = ""
    post: str = ""
    length: int = 0
    chain: int = 0
    stands: int = 0
    under: int = 0
    usual: int = 0
    bunches: tuple[Bunch, ...] = ()
    arch: "Cell | None" = None
    corner: bool = False
    foot: "Cell | None" = field(default=None, repr=False)

    @property
    def top(self) -> bool:
        """Whether `in next st` can go into it."""
        return self.kind not in NOT_TOPS

    @property
    def clustered(self) -> bool:
        """Whether it is a cluster, by whatever name it is told: tall stitches joined at their tops."""
        return self.form == "cluster" or (self.form == "tog" and self.kind != "single")


@dataclass
class Edge:
    """The cells that the next round goes into, in working order.

    shape: `circle`, `line` (rows), `ring` (nothing but a ring), `sides` (a chain that must be worked along
    both its sides). ring: `in ring` can be worked. at_hook: a slip stitch joined to the first cell, so the
    hook already stands over it. loops: the loops that a round's stitches left free, of which a line may take
    as many as it likes. sided: all around a piece in rows, where `across` goes to the end of one side.
    """

    cells: list[Cell]
    shape: Literal["circle", "line", "ring", "sides"] = "line"
    ring: bool = False
    foundation: bool = False
    at_hook: bool = False
    mid_arch: bool = False
    loops: bool = False
    sided: bool = False


def chains(number: int) -> list[Cell]:
    return [Cell("chain") for _ in range(number)]


def corners_of(cells: Sequence[Cell]) -> list[int]:
    """Where the corners are: see `Below.corners`."""
    named = [at for at, cell in enumerate(cells) if cell.corner]
    if named:
        return named
    longest = max((cell.length for cell in cells if cell.kind == "space"), default=0)
    if longest:
        return [at for at, cell in enumerate(cells) if cell.length == longest]
    found = []
    for at, cell in enumerate(cells):
        for bunch in cell.bunches[-1:]:
            whole = [i for i, other in enumerate(cells) if bunch in other.bunches]
            if len(whole) >= 3 and len(whole) % 2 and at == whole[len(whole) // 2]:
                found.append(at)
    return found


def with_single_chains(cells: Sequence[Cell], kind: str = "chain") -> list[Cell]:
    """The edge as it is where chains between stitches are counted: each chain of a space is a place.

    kind: `arch-chain` where they aren't counted, but a line names them; nobody misses those that are left.
    """
    edge: list[Cell] = []
    for cell in cells:
        if cell.kind == "space":
            edge += [replace(cell, kind=kind, length=0, arch=cell) for _ in range(cell.length)]
        else:
            edge.append(cell)
    return edge


def is_group(stitch: Stitch) -> bool:
    """Whether a name stands for several stitches made together: a shell, a V-stitch, an author's own."""
    own = stitch.kind == "special" and not stitch.form and not stitch.post
    return own or stitch.form in ("shell", "v-stitch")


def kind_of(stitch: Stitch) -> str:
    """The kind that a cell has: the author's own stitches are kinds by their names."""
    return stitch.name if stitch.kind == "special" else stitch.kind


def bunch_of(cell: Cell, stitch: Stitch | None) -> Bunch | None:
    """The bunch of a cell that a name means; without a name the outermost one."""
    for bunch in cell.bunches:
        if stitch is None:
            return bunch
        if stitch.kind == "special" and bunch.name == stitch.name:
            return bunch
        if stitch.kind != "special" and bunch.name == stitch.form:
            same_kind = stitch.kind in ("", bunch.kind)
            if same_kind and stitch.number in (0, bunch.number):
                return bunch
        if stitch == ANY_SHELL and not bunch.name and bunch.tops > 2:
            return bunch
    return None


def matches(target: Target, cell: Cell) -> bool:
    """Whether a cell is a place of the kind that print names (corners need the whole edge)."""
    if target.kind == "free-loop":
        return cell.top
    if target.kind in ("space", "loop"):
        space = cell.arch or cell
        return space.kind == "space" and target.length in (0, space.length)
    if target.kind == "picot":
        return cell.kind == "picot"
    if target.kind == "row-end":
        return cell.kind == "row-end"
    if target.kind == "group":
        return bunch_of(cell, None) is not None
    if target.kind == "chain":
        return cell.kind in ("chain", "arch-chain") or cell.chain > 0
    named = target.stitch
    if named is None:
        return cell.top
    if is_group(named):
        return bunch_of(cell, named) is not None or (cell.top and cell.kind == named.name != "")
    if not cell.top:
        return False
    if named.form == "picot":
        return cell.kind == "picot"
    if named.form == "cluster" and not named.kind:
        return cell.clustered
    if named.form in GATHERED and named.form != "tog" and cell.form != named.form:
        return False
    if named.post and cell.post != named.post:
        return False
    return kind_of(named) in ("", cell.kind)
