"""The edge below a round: how far the hook has come on it, and what of it is used."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from loopleaf.notation.tree import Next, Step, Target, Until, Work

from .cells import Bunch, Cell, Edge, Misfit, bunch_of, corners_of, is_group, matches
from .gaps import gaps, is_gap
from .setting import Setting

FREE, USED, SKIPPED, PASSED = range(4)

NOWHERE = -1
"""The spot of a stitch on a leaf's own chain, in a ring, on another piece: none of the edge below."""


@dataclass
class Below:
    """The edge and the hook's place on it.

    status: goes with `cells`. limit: where a repeat must stop. last: the place last worked into. gap: the
    place before which a gap was worked into last. end_gap: it was named as the last of the row. in_gap: the
    round begins in the gap before its first place, which doesn't come round again at the end. uneven: a
    repeat left places that nothing has spoken of yet. follow: the next step. behind: places passed by that
    the line may still name: what lies behind the last of `each ch-1 sp across`, the others of a shell that
    one stitch went into. trailing: the former of these; a line that names one of them leaves those after it
    over. repeating: in the passes of a repeat, which are tried out one by one, so that nothing is passed
    there but by a word. kept: what `to last 2 sts` keeps for the steps behind it.
    """

    setting: Setting
    edge: Edge
    marks: list[Cell]
    cells: list[Cell] = field(default_factory=list)
    status: list[int] = field(default_factory=list)
    pos: int = 0
    limit: int = 0
    last: int | None = None
    gap: int | None = None
    end_gap: bool = False
    in_gap: bool = False
    uses: int = 0
    uneven: bool = False
    follow: Step | None = None
    repeating: bool = False
    behind: set[int] = field(default_factory=set)
    trailing: set[int] = field(default_factory=set)
    kept: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.lay(list(self.edge.cells))

    def lay(self, cells: list[Cell]) -> None:
        """The edge below, nothing of it used yet."""
        self.cells = cells
        self.status = [FREE] * len(cells)
        self.pos = 0
        self.limit = len(cells)

    def turn_to(self, index: int) -> None:
        """A round begins anew at this place; what lies before it comes round at the end."""
        self.lay(self.cells[index:] + self.cells[:index])
        self.last = 0

    # ---- looking along it --------------------------------------------------------------------

    def corners(self) -> list[int]:
        """Those of a piece in rows, else the longest spaces, else the middle ones of three (or five) stitches
        in one place.
        """
        return corners_of(self.cells)

    def fits(self, target: Target, cell: Cell) -> bool:
        if target.kind == "corner":
            corners = [self.cells[at] for at in self.corners()]
            return cell in corners and target.length in (0, cell.length)
        return matches(target, cell)

    def free(self, start: int, end: int) -> list[int]:
        """Tops that are still to be worked into, from one place to before another."""
        return [at for at in range(start, end) if self.status[at] == FREE and self.cells[at].top]

    @property
    def exhausted(self) -> bool:
        return not self.free(self.pos, len(self.cells))

    def bound(self, until: Until) -> int:
        """Where `around`, `to last 2 sts`, `to marker`, `to next corner` ends."""
        if until.kind == "end":
            return self.side_end() if self.edge.sided and until.word in ("across", "") else self.limit
        if until.kind == "to-last":
            number = self.setting.number(until.count) or 0
            if number == 1 and self.is_gap(until.target) and (ends := list(self.gaps(lone=True))):
                return ends[-1]
            there = [at for at in range(self.limit) if self.counts_for(until.target, at)]
            if number > len(there) or (number and there[-number] < self.pos):
                raise Misfit("fit", f"there are no {number} left for the end")
            self.kept = there[-number:] if number else []
            return there[-number] if number else self.limit
        if until.kind == "tch":
            return self.before_the_chain()
        if until.kind == "next":
            ahead = [at for at in range(self.pos, self.limit) if self.counts_for(until.target, at)]
            if not ahead:
                raise Misfit("place", f"no {until.target} ahead")
            return ahead[0]
        if until.kind == "centre":
            there = [at for at in range(len(self.cells)) if self.counts_for(until.target, at)]
            if len(there) % 2 == 0 or there[len(there) // 2] < self.pos:
                raise Misfit("place", f"{len(there)} have no one in the middle ahead")
            return there[len(there) // 2]
        corners = self.corners() if until.kind == "corner" else []
        for at in range(self.pos, self.limit):
            if until.kind == "marker" and self.cells[at] in self.marks:
                return at
            if at in corners and self.status[at] == FREE:
                return at
        if until.kind == "corner":
            return self.limit
        raise Misfit("place", "no marker ahead")

    def side_end(self) -> int:
        """Around a piece in rows: before the next corner where the next step names that, else over it."""
        corner = next((at for at in self.corners() if at >= self.pos and self.status[at] == FREE), None)
        if corner is None:
            return self.limit
        place = self.follow.places[0] if isinstance(self.follow, Work) and self.follow.places else None
        names_it = isinstance(place, Next) and place.target.kind == "corner"
        return corner if names_it else corner + 1

    def before_the_chain(self) -> int:
        """Where the row's last place stands if that is a turning chain that counts; else the limit."""
        last = self.limit - 1
        return last if last >= self.pos and self.cells[last].chain else self.limit

    def counts_for(self, target: Target, at: int) -> bool:
        """Whether the cell begins a place of that kind (a group is counted at its first cell)."""
        cell = self.cells[at]
        if not self.fits(target, cell):
            return False
        if at and cell.arch and target.kind in ("space", "loop") and self.cells[at - 1].arch is cell.arch:
            return False
        group = self.group_at(target, at)
        return group is None or at == 0 or group not in self.cells[at - 1].bunches

    def is_gap(self, target: Target) -> bool:
        return is_gap(self.cells, target)

    def gaps(self, lone: bool = False) -> Iterator[int]:
        there = gaps(self.cells, self.edge.shape == "circle", lone)
        if not self.in_gap:
            return there
        return iter(sorted(0 if at == len(self.cells) else at for at in there))

    def group_at(self, target: Target, at: int) -> Bunch | None:
        named = target.stitch
        if target.kind == "group":
            return bunch_of(self.cells[at], None)
        if target.kind == "stitch" and named is not None and is_group(named):
            return bunch_of(self.cells[at], named)
        return None

    def whole(self, target: Target, at: int) -> list[int]:
        """All cells of the place that begins here: one, the single chains of an arch, or a whole group."""
        arch = self.cells[at].arch
        if arch is not None and target.kind in ("space", "loop"):
            return [i for i in range(at, len(self.cells)) if self.cells[i].arch is arch]
        group = self.group_at(target, at)
        if group is not None:
            return [i for i in range(at, len(self.cells)) if group in self.cells[i].bunches]
        return [at]

    # ---- using it up ------------------------------------------------------------------------

    def open(self, at: int) -> bool:
        """Whether a place can still be worked into."""
        return self.status[at] == FREE or (self.status[at] in (PASSED, USED) and at in self.behind)

    def pass_to(self, bound: int) -> None:
        """Goes past what is left up to there, though the line may name it yet."""
        for at in range(self.pos, bound):
            self.mark(at, PASSED)
        self.behind.update(range(self.pos, bound))
        self.trailing = set(range(self.pos, bound))

    def mark(self, at: int, how: int) -> None:
        if how == USED and at in self.trailing:
            for later in self.trailing:
                if later > at and self.status[later] == PASSED:
                    self.status[later] = FREE
            self.trailing = set()
        if self.open(at) and self.status[at] != USED:
            self.status[at] = how
            self.uses += how in (USED, SKIPPED)

    def seek(self, target: Target) -> int:
        """The next place of a kind, from the hook on; what lies between is passed over."""
        if self.uneven:
            raise Misfit("fit", "the repeat doesn't come out even")
        for at in range(self.pos, self.limit):
            if self.open(at) and self.counts_for(target, at):
                for passed in range(self.pos, at):
                    self.mark(passed, PASSED)
                return at
        anywhere = any(self.fits(target, cell) for cell in self.cells)
        raise Misfit("fit" if anywhere else "place", f"no {target} left")

    def take(self, target: Target, how: int = USED) -> int:
        """Uses up the next place of a kind and moves past it."""
        at = self.seek(target)
        whole = self.use_up(target, at, how)
        self.pos = whole[-1] + 1
        self.last = at
        return at

    def use_up(self, target: Target, at: int, how: int = USED) -> list[int]:
        """All cells of the place that begins here, used; a group or an arch is one place."""
        whole = self.whole(target, at)
        uses = self.uses
        for cell in whole:
            self.mark(cell, how)
        if len(whole) > 1:
            self.uses = uses + 1
        return whole
