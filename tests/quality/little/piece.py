"""A pattern worked in every size: what each round uses and makes, and the first thing that contradicts."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from loopleaf import notation, pattern, trade
from loopleaf.notation.tree import (
    ONE,
    FastenOff,
    Line,
    Next,
    Step,
    Stitch,
    Tally,
    Turn,
    Work,
)

from .again import once
from .beginning import said_of_chain
from .cells import Cell, Edge, Misfit, chains, kind_of
from .counts import Key, makes
from .hand import Hand
from .looking_ahead import free_loops, in_blocks, in_one_place, named_in, named_spaces
from .others_edge import FreeLoopsOf, all_around, by_number, row_end
from .rounds import After, RoundDone, ToWork, work_round
from .setting import Setting, Undecided
from .sides import Sides
from .slip_stitches import behind_the_join
from .stitching import work
from .travelling import check_moves


@dataclass
class Wrong:
    """What contradicts the file: where, and of which sort (see `Misfit.what`)."""

    piece: str
    round: str
    what: str
    why: str


@dataclass
class PieceDone:
    """A piece in all sizes: for each size its rounds as far as they could be worked."""

    name: str
    sizes: list[list[RoundDone]] = field(default_factory=list)


class Bench:
    """All that is needed to work the pieces of one pattern."""

    def __init__(self, of: pattern.Pattern) -> None:
        self.pattern = of
        specials = {
            name: notation.SpecialStitch(name, one.short, one.work, one.text, one.yarn_overs)
            for name, one in of.special_stitches.items()
        }
        self.vocabulary = notation.Vocabulary(
            of.terms,
            specials,
            frozenset(of.materials.yarns) | {yarn.name for yarn in of.materials.yarns.values() if yarn.name},
            frozenset(of.pieces),
        )
        self.specials: dict[str, tuple[Step, ...]] = {}
        for name, one in of.special_stitches.items():
            if one.work:
                steps = self.read(one.work).steps
                if any(isinstance(step, Turn | FastenOff) for step in steps):
                    raise Misfit("turn", f"a stitch of one's own doesn't turn or end: {name}")
                self.specials[name] = in_one_place(steps)
        for name in self.specials:
            self._not_of_itself(name, ())
        self.counts = {self._kind(name): says for name, says in of.turning_chains.items()}
        self.own_chains = {row.key: row.turning_chain for row in trade.stitches() if row.turning_chain}
        for name, one in of.special_stitches.items():
            if one.yarn_overs is not None and not one.work:
                self.own_chains[name] = one.yarn_overs + 2
        self.opened = {name: self._opened(name) for name in self.specials}
        self.done: dict[str, PieceDone] = {}
        self.key = repr((self.vocabulary, sorted(self.counts.items()), of.chain_spaces, of.size_count))

    def _not_of_itself(self, name: str, within: tuple[str, ...]) -> None:
        """A stitch can't be made of itself, at whatever remove."""
        if name in within:
            raise Misfit("unclear", f"{name} is made of itself")
        for stitch in named_in(self.specials.get(name, ())):
            self._not_of_itself(stitch, (*within, name))

    def read(self, text: str, n: int | tuple[int | None, ...] | None = None) -> Line:
        """A line as a tree; what can't be read is a misfit of its own sort."""
        parsed = notation.parse(text, self.vocabulary, n)
        errors = [one for one in parsed.problems if one.severity == "error"]
        if parsed.line is None or errors:
            raise Misfit("reading", errors[0].message if errors else "unreadable")
        return parsed.line

    def stated(self, text: str | None) -> Tally | None:
        if text is None:
            return None
        tally, problems = notation.parse_count(text, self.vocabulary)
        errors = [one for one in problems if one.severity == "error"]
        if tally is None or errors:
            raise Misfit("reading", f"count {text!r}")
        numbers = [tally.total] if tally.total else [amount for amount, _ in tally.entries]
        for amount in numbers:
            self.one_a_size(len(amount.sizes))
        return tally

    def one_a_size(self, numbers: int) -> None:
        if numbers not in (1, self.pattern.size_count):
            raise Misfit("numbers", f"{numbers} numbers for {self.pattern.size_count} sizes")

    def _kind(self, name: str) -> str:
        if not name:
            return ""
        line = self.read(f"{name} in next st")
        step = line.steps[0]
        stitch = getattr(step, "stitch", None)
        return kind_of(stitch) if stitch is not None else name

    def _opened(self, name: str) -> Counter[Key]:
        """What one of an author's stitches is made of."""
        hand = Hand(self.setting(0, "", {}), Edge([Cell("single") for _ in range(24)]), [])
        try:
            work(hand, Work(Stitch("special", name=name), ONE, (Next(),)))
        except Misfit:
            return Counter()
        return makes(hand.made)

    def setting(self, size: int, worked: str, edges: Mapping[str, Sequence[Cell]]) -> Setting:
        return Setting(
            size,
            worked.startswith("rows"),
            worked == "rows",
            worked == "spiral rounds",
            self.pattern.chain_spaces == "counted",
            self.own_chains,
            self.counts,
            self.specials,
            edges,
            {},
        )


def begin(bench: Bench, piece: pattern.Piece, size: int) -> Edge:
    """The first edge of a piece."""
    start = piece.start
    if start is None:
        return Edge([], "ring", ring=False)
    if start.kind in ("magic ring", "ring"):
        return Edge([], "ring", ring=True)
    if start.kind == "edge":
        return _edge_of(bench, piece, size)
    assert start.chain is not None
    bench.one_a_size(len(start.chain.sizes))
    number = start.chain.of(size) or 0
    if start.multiple and (number - start.plus) % start.multiple:
        raise Misfit("numbers", f"{number} is no multiple of {start.multiple} plus {start.plus}")
    cells = chains(number)
    if start.kind == "chain ring":
        return Edge(cells, "circle", ring=True, foundation=True)
    if start.kind == "both sides":
        return Edge(cells, "sides", foundation=True)
    return Edge(cells, "line", foundation=True)


def _edge_of(bench: Bench, piece: pattern.Piece, size: int) -> Edge:
    start = piece.start
    assert start is not None
    other = bench.done.get(start.edge or "")
    if other is None or size >= len(other.sizes) or not other.sizes[size]:
        raise Misfit("place", f"there is no piece {start.edge} to begin on")
    rounds = other.sizes[size]
    if start.row_ends:
        return Edge([row_end(one) for one in rounds])
    if start.around and bench.pattern.pieces[start.edge or ""].worked.startswith("rows"):
        return all_around(rounds)
    wanted = start.round or start.row
    chosen = rounds[-1]
    if wanted is not None:
        found = [one for one in rounds if one.label == str(wanted)]
        if not found:
            raise Misfit("place", f"{start.edge} has no round {wanted}")
        chosen = found[-1]
    if start.stitches == "unworked":
        later = rounds[rounds.index(chosen) + 1 :]
        cells = later[0].passed_under if later else chosen.made
        if not cells:
            raise Misfit("place", f"nothing of {start.edge} was left unworked")
        return Edge(list(cells))
    cells = by_number(chosen, start.stitches) if start.stitches else list(chosen.made)
    return Edge(cells, "line" if piece.worked.startswith("rows") else "circle")


def _named_later(
    bench: Bench, line: Line, later: Sequence[pattern.RoundPlan], foundation: bool
) -> frozenset[int]:
    """Lengths of the spaces that only the next row speaks of."""
    try:
        steps = bench.read(later[0].work, later[0].n).steps if later else ()
    except Misfit:
        return frozenset()  # said where that row is worked
    return named_spaces(steps, line.steps, foundation)


def work_piece(bench: Bench, name: str, wrong: list[Wrong]) -> PieceDone:
    """Works a piece in all sizes; stops a size at its first contradiction."""
    piece = bench.pattern.pieces[name]
    done = PieceDone(name)
    bench.done[name] = done
    plans, problems = pattern.set_out(bench.pattern, name)
    for problem in problems:
        if problem.severity == "error":
            wrong.append(Wrong(name, problem.round, "numbers", problem.message))
    for size in range(bench.pattern.size_count):
        rounds: list[RoundDone] = []
        done.sizes.append(rounds)
        label = plans[0].label if plans else ""
        try:
            edge = begin(bench, piece, size)
            edges = {
                other: one.sizes[size][-1].made
                for other, one in bench.done.items()
                if size < len(one.sizes) and one.sizes[size]
            }
            setting = bench.setting(size, piece.worked, edges)
            marks: list[Cell] = []
            unworked: list[Cell] = []
            carried = None
            moved: tuple[Step, ...] = ()
            free = FreeLoopsOf()
            before = ""
            asides: dict[str, int] = {}
            facing = Sides()
            worked_here = [plan for plan in plans if plan.sizes is None or size in plan.sizes]
            for index, plan in enumerate(worked_here):
                label = plan.label
                line = bench.read(plan.work, plan.n)
                later = worked_here[index + 1 : index + 2]
                named = _named_later(bench, line, later, edge.foundation) if setting.rows else frozenset()
                here = replace(
                    setting,
                    named_later=named,
                    blocks=setting.rows and in_blocks(line.steps),
                    said=dict(asides),
                    rounds=len(rounds),
                )
                if setting.turned and facing.begins_at_the_other_end(line, plan.side):
                    edge = replace(edge, cells=edge.cells[::-1])
                loops = free_loops(line.steps)
                if loops is not None:
                    edge, carried = free.edge(*loops, setting.rows), None
                own, moving = behind_the_join(line.steps)
                given = ToWork(label, (*moved, *own), bench.stated(plan.stated), plan.reversed)
                work_it = partial(work_round, given, here, edge, marks, carried, bench.opened, unworked)
                elsewhere = any(other in plan.work for other in edges)
                alone = not (elsewhere or marks or unworked or edge.shape == "sides" or loops)
                said = (plan.work, plan.n, plan.stated, plan.reversed)
                before_it = (carried, moved, tuple(asides.items()), len(rounds))
                key = (bench.key, piece.worked, size, said, named, before_it)
                after: After = once(key, edge, work_it) if alone else work_it()
                rounds.append(replace(after.done, label=plan.label))  # it may have been worked as another
                free.add(after.done, before)
                edge, marks, carried, unworked = after.edge, after.marks, after.carried, after.unworked
                before, moved = plan.label, moving
                check_moves(here, edge, moving)
                asides |= [aside] if (aside := said_of_chain(line.steps)) else []
        except Misfit as misfit:
            wrong.append(Wrong(name, label, misfit.what, misfit.why))
        except Undecided as undecided:
            wrong.append(Wrong(name, label, "unclear", undecided.key))
    return done
