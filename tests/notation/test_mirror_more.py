"""More rows with their shaping at the other end: what a chain takes over, what leaves a row open."""

import pytest

from loopleaf.notation import write
from loopleaf.notation.mirror import CannotMirrorError, mirrored

from .trees import US, tree_of

ROWS = {
    "ch 3 (counts as dc), sc in next 3 sts, ch 2, sk next st, dc in next st, ch 3, turn": (
        "ch 3 (counts as dc), sk next st, ch 2, sc in next 3 sts, dc in next st, ch 3, turn"
    ),
    "ch 1, sc in next st, hdc in next 2 sts, ch 1, turn": (
        "ch 1, hdc in next 2 sts, sc in next st, ch 1, turn"
    ),
    "ch 3 (counts as dc), hdc in next 2 sts, (dc in next 2 sts) x 3, turn": (
        "ch 3 (counts as dc), dc in next st, (dc in next 2 sts) × 2, hdc in next 2 sts, dc in next st, turn"
    ),
    "ch 3 (counts as dc), hdc in next 2 sts, (dc in next 2 sts) x 1, turn": (
        "ch 3 (counts as dc), dc in next st, hdc in next 2 sts, dc in next st, turn"
    ),
    "ch 3 (counts as dc), hdc in next 2 sts, *dc in next 2 sts; rep from * across, turn": (
        "ch 3 (counts as dc), dc in next st, *dc in next 2 sts; rep from * to last 3 sts, hdc in next 2 sts, "
        "dc in next st, turn"
    ),
    "ch 3 (counts as dc), hdc in next st, dc in next 3 sts, ch 1, dc in last st, turn": (
        "ch 4 (counts as dc, ch 1), dc in next 3 sts, hdc in next st, dc in next st, turn"
    ),
    "ch 1, sc in next 2 sts, dc in next st and in next ch-2 sp, turn": (
        "ch 1, dc in next ch-2 sp, dc in next st, sc in next 2 sts, turn"
    ),
    "ch 1, sc in next 2 sts, dc in top of tch, turn": "ch 1, dc in first st, sc in next 2 sts, turn",
    "ch 1, *sc, ch 1, sk next st; rep from * across, omitting last sk next st, turn": (
        "ch 1, *ch 1, sc in next st, **sk next st; rep from * across, ending last rep at **, turn"
    ),
    "ch 1, *sc in next st, ch 1, sk next st; rep from * across, omitting last ch 1, turn": (
        "ch 1, *sc in next st, **sk next st, ch 1; rep from * across, ending last rep at **, turn"
    ),
    "ch 3 (counts as dc), dc2tog over next 2 sts, 2 dc in last st, turn": (
        "ch 3 (counts as dc), dc in same st, dc2tog, dc in next st, turn"
    ),
    "ch 1, sc in first 2 sts, hdc in last st, turn": "ch 1, hdc in first st, sc in last 2 sts, turn",
    "ch 1, sc in next 3 sts, ch 2, sk last 2 sts, turn": "ch 1, sk first 2 sts, ch 2, sc in next 3 sts, turn",
}


@pytest.mark.parametrize("row", ROWS)
def test_a_row_from_its_other_end(row: str) -> None:
    assert write(mirrored(tree_of(row, US), None), "US", vocabulary=US) == ROWS[row]


@pytest.mark.parametrize(
    ("row", "open_step"),
    [
        ("ch 5 (counts as ch-5 sp), sc in next 3 sts, turn", "ch 5 (counts as ch-5 sp)"),
        ("ch 3 (counts as dc), sk next st, (dc in next st, ch 1, sk next st) x 3, turn", "sk next st"),
        ("ch 1, sc in next 2 sts, dc in 3rd ch of tch, turn", "dc in 3rd ch of tch"),
        ("ch 1, sc in every other st across, hdc in last st, turn", "sc in every other st across"),
        ("ch 1, sc in next st of leg, hdc in next st, turn", "sc in next st of leg"),
        (
            "ch 3 (counts as dc), 2 dc in first st, dc in next 3 sts, hdc in last 2 sts, turn",
            "hdc in last 2 sts",
        ),
    ],
)
def test_the_step_that_leaves_it_open_is_named(row: str, open_step: str) -> None:
    with pytest.raises(CannotMirrorError) as raised:
        mirrored(tree_of(row, US), None)
    step = raised.value.step
    assert step is not None
    assert step.span is not None
    assert row[step.span.start : step.span.end] == open_step
