"""`{rows: 4-9, repeat: 2-3, count: 14}`: one count behind rows that grow is what the last of them makes."""

from collections.abc import Sequence
from dataclasses import replace

from ..pattern import Path
from .borne_out import ReadRound
from .worked import RoundWork


def counted_at_the_end(
    lines: Sequence[ReadRound], rounds: Sequence[RoundWork]
) -> tuple[list[ReadRound], set[Path]]:
    """The lines with such counts left to the last row of their entry, and where those counts stand.

    Only counts that the rows before the last were found to differ from; none where there is nothing to try.
    """
    differs = {
        one.plan.stated_path
        for one in rounds
        if one.plan.by_rule == "repeat" and any(t.rule == "count-differs" for t in one.troubles)
    }
    last = {one.plan.stated_path: one.plan.number for one in lines}
    return [
        replace(one, stated=None, plan=replace(one.plan, stated=None))
        if one.plan.stated_path in differs and one.plan.number < last[one.plan.stated_path]
        else one
        for one in lines
    ], differs


def borne_out_at_the_end(rounds: Sequence[RoundWork], counts: set[Path]) -> bool:
    """Whether all rows with these counts work out."""
    return not any(one.troubles for one in rounds if one.plan.stated_path in counts)
