"""Rows worked as another one with the shaping at the other end (`reversed: true`)."""

from collections.abc import Mapping

from ..notation.mirror import CannotMirrorError, mirrored
from ..notation.problem import Problem
from ..notation.tree import Chain, Line, Span, Stitch
from ..pattern import RoundPlan
from .survey import first_kind


def from_other_end(
    line: Line, plan: RoundPlan, conventions: Mapping[str, bool]
) -> tuple[Line | None, tuple[Problem, ...]]:
    """The line with its shaping at the other end; None, and what to say, where that isn't settled."""
    try:
        return mirrored(line, _stands(line, conventions)), ()
    except CannotMirrorError as error:
        span = (error.step.span if error.step is not None else None) or Span(0, len(plan.work))
        said = plan.work[span.start : span.end]
        message = f"“{said}” doesn't say how {plan.word} {plan.label} goes with its shaping at the other end."
        working = "What leans on stitches passed over, or leaves stitches unworked, can't just change ends."
        mending = (f"Write {plan.word} {plan.label} out, without `reversed`.", None, "fill-in")
        return None, (Problem("unknown-instruction", "error", span, message, working, mending),)


def _stands(line: Line, conventions: Mapping[str, bool]) -> Stitch | None:
    """What an unsaid beginning chain stands for by the pattern's convention, else by what is usual."""
    chain = next((step for step in line.steps[:2] if isinstance(step, Chain)), None)
    kind = first_kind(line.steps, {})
    if chain is None or not kind or (chain.length.of(0) or 0) < 2:
        return None
    counts = conventions.get(kind, kind not in ("single", "half"))
    return Stitch(kind) if counts else None
