"""A count that ends the line itself, as much of print has it: `… join (24)`, `… — 13 sts`."""

from ..notation.once_a_line import once_a_line
from ..notation.tree import Line, Tally


@once_a_line
def own_count(line: Line | None) -> tuple[Line | None, Tally | None]:
    """The line without its count, and that count (None where it has none), which is told behind the round."""
    if line is None:
        return None, None
    counts = [step for step in line.steps if isinstance(step, Tally)]
    if not counts:
        return line, None
    return Line(tuple(step for step in line.steps if not isinstance(step, Tally))), counts[-1]
