"""`sc in next st, ch 3, sl st in same st`: a loop and a slip stitch, or a picot where the count has it so."""

from dataclasses import replace

from ..notation.tree import ONE, Chain, Group, Passage, Repeat, Same, Step, Stitch, Work
from .picots import LONGEST_PICOT


def with_picots_in_same(steps: tuple[Step, ...], before: Step | None = None) -> tuple[Step, ...]:
    """The steps, each short chain that is closed in the stitch before it read as the picot on it; the same
    steps where none is. before: the step that comes before them.
    """
    found: list[Step] = []
    for step in steps:
        picot = _picot([*([before] if before else []), *found][-2:], step)
        if picot is not None:
            found[-1:] = [picot]
        elif isinstance(step, Repeat | Group | Passage):
            inner = with_picots_in_same(step.steps, found[-1] if found else before)
            found.append(step if inner is step.steps else _opened(step, inner))
        else:
            found.append(step)
    same = len(found) == len(steps) and all(one is was for one, was in zip(found, steps, strict=True))
    return steps if same else tuple(found)


def _opened(step: Repeat | Group | Passage, inner: tuple[Step, ...]) -> Step:
    stops = isinstance(step, Repeat) and step.stop_at is not None  # its place among the steps may have moved
    return step if stops else replace(step, steps=inner)


def _picot(before: list[Step], step: Step) -> Work | None:
    """The picot that the chain just met and this slip stitch are; None for anything else."""
    match before, step:
        case [
            [Work(stitch=Stitch(kind=kind)), Chain(counts=None) as chain],
            Work(stitch=Stitch(kind="slip"), each=each, places=(Same(begun="") as place,)),
        ]:
            chains = chain.length.of(0) or 0
            short = not chain.length.varies and 1 < chains <= LONGEST_PICOT
            if kind != "slip" and each == ONE and short and place.target.kind == "stitch":
                return Work(Stitch("chain", "picot", chains), places=(), span=chain.span)
    return None
