"""A pattern worked in every size: what each round uses and makes, and the first thing that contradicts."""

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise

from loopleaf import pattern
from loopleaf.notation.tree import Line, Step

from .again import once
from .beginning import said_of_chain, throughout
from .bench import Bench, PieceDone, Wrong
from .cells import Cell, Misfit
from .looking_ahead import free_loops, in_blocks, named_spaces
from .others_edge import FreeLoopsOf
from .rounds import After, RoundDone, ToWork, last_made, work_round
from .setting import Undecided
from .sides import Sides
from .slip_stitches import behind_the_join
from .starting import begin, own_name
from .travelling import check_moves


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
                other: last_made(one.sizes[size]).made
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
            settled: dict[str, bool] = {}
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
                    counts={**setting.counts, **settled},
                    earlier={one.label: one.made for one in rounds},
                    skipped={one.label: above.passed_under for one, above in pairwise(rounds)},
                    loops=partial(free.edge, rows=setting.rows),
                    begun_on="" if rounds else own_name(piece, plan.work),
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
                back = re.search(r"\bbelow\b|\bfree\b|\bof (?:round|row|rnd|R) ?\d", plan.work, re.IGNORECASE)
                alone = not (elsewhere or back or marks or unworked or edge.shape == "sides" or loops)
                said = (plan.work, plan.n, plan.stated, plan.reversed)
                before_it = (carried, moved, tuple(asides.items()), tuple(settled.items()), len(rounds))
                key = (bench.key, bench.picot, piece.worked, size, said, named, before_it)
                after: After = once(key, edge, work_it) if alone else work_it()
                rounds.append(replace(after.done, label=plan.label))  # it may have been worked as another
                free.add(after.done, before)
                edge, marks, carried, unworked = after.edge, after.marks, after.carried, after.unworked
                before, moved = plan.label, moving
                check_moves(here, edge, moving)
                settled |= throughout(line.steps)
                asides |= [aside] if (aside := said_of_chain(line.steps)) else []
        except Misfit as misfit:
            wrong.append(Wrong(name, label, misfit.what, misfit.why))
        except Undecided as undecided:
            wrong.append(Wrong(name, label, "unclear", undecided.key))
    return done
