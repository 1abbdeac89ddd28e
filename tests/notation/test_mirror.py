"""Rows with their shaping at the other end, as a maker would write them out."""

import pytest

from loopleaf.notation import write
from loopleaf.notation.mirror import CannotMirrorError, mirrored
from loopleaf.notation.tree import Stitch

from .trees import US, tree_of

ROWS = [
    (
        "ch 1, sc2tog, sc in each st to end, turn",
        "ch 1, sc in each st to last 2 sts, sc2tog, turn",
    ),
    (
        "ch 1, 2 sc in first st, sc in each st across, turn",
        "ch 1, sc in each st to last st, 2 sc in last st, turn",
    ),
    (
        "ch 1, sc2tog over first 2 sts, sc in next 14 sts, 3 sc in each of last 2 sts, turn",
        "ch 1, 3 sc in each of next 2 sts, sc in next 14 sts, sc2tog over last 2 sts, turn",
    ),
    (
        "ch 3 (counts as dc), dc2tog, dc in each st to end, turn",
        "ch 3 (counts as dc), dc in each st to last 3 sts, dc2tog, dc in next st, turn",
    ),
    (
        "ch 3 (counts as dc), dc in first st, dc in each st to last st, 3 dc in last st, turn",
        "ch 3 (counts as dc), 2 dc in same st, dc in each st to last st, 2 dc in next st, turn",
    ),
    (
        "ch 4 (counts as dc, ch 1), sk first 2 sts, dc in next 5 sts, turn",
        "ch 3 (counts as dc), dc in next 4 sts, sk next st, ch 1, dc in next st, turn",
    ),
    (
        "ch 1, sc in next 2 sts, (ch 1, sk next st, sc in next 2 sts) × 3, sc in next 4 sts, turn",
        "ch 1, sc in next 4 sts, (sc in next 2 sts, sk next st, ch 1) × 3, sc in next 2 sts, turn",
    ),
    (
        "ch 1, *sc in next st**, ch 1, sk next st; rep from * to last 3 sts, ending last rep at "
        "**, dc in next st, tr in next 2 sts, turn",
        "ch 1, tr in next 2 sts, dc in next st, *sc in next st, **sk next st, ch 1; rep from * to "
        "end, ending last rep at **, turn",
    ),
    (
        "ch 1, (dc, ch 1, 2 dc) in next st, sc in next st, ch 2, hdc in same st, sc in last 3 sts, turn",
        "ch 1, sc in next 3 sts, hdc in next st, ch 2, sc in same st, (2 dc, ch 1, dc) in next st, turn",
    ),
    (
        "ch 1, sc in next 2 (3) sts, sc2tog, sc in each st to end",
        "ch 1, sc in each st to last 4 (5) sts, sc2tog, sc in next 2 (3) sts",
    ),
    (
        "with B, ch 1, hdc in next st, sc in next 3 sts, fasten off",
        "with B, ch 1, sc in next 3 sts, hdc in next st, fasten off",
    ),
    (
        "ch 1, sc in each st across, turn",
        "ch 1, sc in each st across, turn",
    ),
    (
        "sc in 2nd ch from hook and in each ch across, turn",
        "sc in 2nd ch from hook and in each ch across, turn",
    ),
]


@pytest.mark.parametrize(("row", "other"), ROWS)
def test_a_row_from_its_other_end(row, other):
    assert write(mirrored(tree_of(row, US), None), "US", vocabulary=US) == other


def test_an_unsaid_beginning_chain_stands_for_what_the_pattern_says():
    line = tree_of("ch 3, dc2tog, dc in next 4 sts, turn", US)
    counted = write(mirrored(line, Stitch("double")), "US", vocabulary=US)
    assert counted == "ch 3 (counts as dc), dc in next 3 sts, dc2tog, dc in next st, turn"
    lifted = write(mirrored(line, None), "US", vocabulary=US)
    assert lifted == "ch 3, dc in next 4 sts, dc2tog, turn"


@pytest.mark.parametrize(
    "row",
    [
        "ch 1, *sk next st, dc in next st, dc in skipped st; rep from * across, turn",
        "ch 1, sc in each st to last 4 sts, leave last 4 sts unworked, turn",
        "ch 4, sc in 2nd ch from hook, hdc in next 2 chs, sc in next 3 sts",
        "2 sc in 2nd ch from hook, sc in each ch across, turn",
        "ch 3 (counts as dc), dc2tog, sc in each st to end, turn",
        "ch 1, *sc in next st*, hdc in next st, rep from * to *",
    ],
)
def test_what_the_words_do_not_settle(row):
    with pytest.raises(CannotMirrorError):
        mirrored(tree_of(row, US), None)
