"""A last row of shells shapes nothing; cloth of shells, and corners, do."""

import pytest

from loopleaf.fabric.shell_edging import edging_rows
from tests.measure.worked_patterns import rows, worked

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
SHELLS = (
    "ch 1, sc in first st, *skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * across, turn"
)
SHELLS_ON_SHELLS = (
    "ch 3 (counts as dc), 2 dc in same st, *skip 2 sts, sc in next st, skip 2 sts, 5 dc in next st; "
    "rep from * to last 6 sts, skip 2 sts, sc in next st, skip 2 sts, 3 dc in last st, turn"
)
FULL = (
    "ch 1, sc in first st, 3 sc in next st, sc in each st to last 2 sts, 3 sc in next st, sc in last st, turn"
)


@pytest.mark.parametrize(
    ("lines", "many"),
    [
        ((FIRST, PLAIN, PLAIN, SHELLS), 1),
        ((FIRST, PLAIN, SHELLS, PLAIN), 2),
        ((FIRST, PLAIN, SHELLS, SHELLS_ON_SHELLS), 0),
        ((FIRST, PLAIN, PLAIN, FULL), 0),
        ((FIRST, PLAIN, PLAIN), 0),
        ((FIRST, SHELLS), 0),
    ],
    ids=["shells", "a row over them", "cloth of shells", "increases", "plain", "too few"],
)
def test_an_edging_of_shells_is_told_from_cloth(lines: tuple[str, ...], many: int) -> None:
    """Shells with as much passed over beside them; common practice, no source."""
    work = worked(rows(*lines, chain=20))
    made = [one for r in work.pieces[0].rounds if (one := r.sizes[0]) is not None]
    assert not [trouble for r in work.pieces[0].rounds for trouble in r.troubles]
    assert edging_rows(made) == many
