"""An oval made longer or shorter: its chain, and the straight runs along both of its sides.

Every round keeps its ends; its two longest plain runs (or the one in a bracket that is worked twice) get as
many stitches more as the chain. Behind the base they hold what its ends have grown by, too.
"""

import re
from collections.abc import Iterator

from ..fabric import PieceWork
from ..notation.tree import Next, Repeat, Span, Step, Work
from ..pattern import Path, Piece
from .draft import Draft

_SIDES = 2


def chains_of(model: Piece) -> int | None:
    """The chains that an oval is worked around; None where a piece isn't one."""
    start = model.start
    if start is None or start.kind != "both sides" or start.chain is None:
        return None
    return start.chain.of(0)


def lengthen(draft: Draft, piece: PieceWork, more: int, base: int | None, behind: int) -> None:
    """So many stitches more (or, below 0, fewer) along either side of every round that says how many.

    base: number of its last round, None where it has none. behind: stitches more along either side of the
    rounds behind that.
    """
    paths: set[Path] = set()
    for round in piece.rounds:
        by = more if base is None or round.plan.number <= base else behind
        if round.line is None or round.plan.work_path in paths or not by:
            continue
        paths.add(round.plan.work_path)
        for count, span in _sides(round.line.steps):
            text = round.plan.work[span.start : span.end]
            found = list(re.finditer(rf"\b{count}\b", text))
            if found and count + by > 0:
                at = span.start + found[-1].start()
                draft.part(round.plan.work_path, at, at + len(str(count)), str(count + by))


def _sides(steps: tuple[Step, ...]) -> list[tuple[int, Span]]:
    """The two longest plain runs of a line, or the one that a bracket works twice."""
    once = sorted(_runs(steps), key=lambda one: -one[0])[:_SIDES]
    twice = [
        max(runs, key=lambda one: one[0])
        for step in steps
        if isinstance(step, Repeat) and step.times is not None and step.times.of(0) == _SIDES
        if (runs := list(_runs(step.steps)))
    ]
    longest = max(twice, key=lambda one: one[0], default=None)
    if longest is not None and (len(once) < _SIDES or longest[0] > once[1][0]):
        return [longest]
    return once if len(once) == _SIDES else []


def _runs(steps: tuple[Step, ...]) -> Iterator[tuple[int, Span]]:
    """Plain stitches in so many places each, by number."""
    for step in steps:
        if not isinstance(step, Work) or step.span is None or step.each.of(0) != 1 or len(step.places) != 1:
            continue
        (place,) = step.places
        if not isinstance(place, Next) or step.stitch.kind in ("inc", "dec") or step.stitch.form:
            continue
        count = place.count.of(0)
        if count and not place.count.variable:
            yield count, step.span
