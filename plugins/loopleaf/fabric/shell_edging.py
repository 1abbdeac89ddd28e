"""A last row of shells around or along a piece: it is drawn in to the cloth and doesn't shape it."""

from collections import Counter
from collections.abc import Sequence

from .worked import Made, Place, WorkedRound

FEWEST_IN_SHELL = 3
"""So many stitches in one place make a shell, where places beside them are passed over."""

FEWEST_SHELLS = 2

MOST_ROWS = 2
"""An edging has no more rows than this: its shells and, say, picots over them."""


def edging_rows(rows: Sequence[WorkedRound]) -> int:
    """How many of the last rows are an edging of shells on other cloth; 0 where the cloth is of shells
    itself.
    """
    for many in range(1, MOST_ROWS + 1):
        if len(rows) < many + 2:
            return 0
        two_below, below, row = rows[-many - 2 :][:3]
        if _is_shells(row, below.edge):
            return 0 if _is_shells(below, two_below.edge) else many
    return 0


def _is_shells(row: WorkedRound, below: Sequence[Place]) -> bool:
    """Whether a row has shells, and passes over as many places of the row below."""
    stitches = [one for one in row.made if isinstance(one, Made) and one.number and len(one.into) == 1]
    shells = [
        many for many in Counter(id(one.into[0]) for one in stitches).values() if many >= FEWEST_IN_SHELL
    ]
    used = {id(place) for one in row.made if isinstance(one, Made) for place in one.into}
    passed = sum(isinstance(one, Made) and one.role == "stitch" and id(one) not in used for one in below)
    return len(shells) >= FEWEST_SHELLS and passed >= len(shells)
