"""Which yarns are cut and which are carried: ends to weave in, and how often one is taken up again."""

import pytest

from loopleaf.measure.threads import Threads
from tests.alter.patterns import demo

from .worked_patterns import measured, rounds, rows

FIRST = "sc in 2nd ch from hook and in each ch across"
ROW = "ch 1, sc in each st across"


def threads(pieces: str) -> Threads:
    return measured(pieces).pieces[0].threads[0]


def striped(*yarns: str, first: str = FIRST, row: str = ROW) -> str:
    """Rows of one letter each, every change at the end of the row before."""
    lines = []
    for at, yarn in enumerate(yarns):
        after = yarns[at + 1] if at + 1 < len(yarns) else yarn
        change = f", changing to {after} on last yo" if after != yarn else ""
        lines.append((row if at else first) + change + ", turn")
    return rows(*lines)


def test_one_yarn_has_two_ends() -> None:
    assert threads(striped(*"AAAA")) == Threads({"A": 2}, 0)


def test_two_rows_each_are_carried_up_the_edge() -> None:
    assert threads(striped(*"AABBAABB")) == Threads({"A": 2, "B": 2}, 2)


def test_a_yarn_that_waits_at_the_other_edge_is_joined_anew() -> None:
    """Near miss: after one row of B the work is at the edge that A doesn't wait at."""
    assert threads(striped(*"AABAA")) == Threads({"A": 4, "B": 2}, 0)


@pytest.mark.parametrize(("waits", "ends", "taken_up"), [(6, 2, 1), (8, 4, 0)])
def test_a_yarn_waits_for_a_few_rows(waits: int, ends: int, taken_up: int) -> None:
    assert threads(striped(*("AA" + "B" * waits + "A"))) == Threads({"A": ends, "B": 2}, taken_up)


def test_a_yarn_that_is_fastened_off_is_joined_anew() -> None:
    lines = (f"{FIRST}, turn", f"{ROW}, fasten off A, turn", f"join B with sl st in first st, {ROW}, turn")
    more = (f"{ROW}, fasten off B, turn", f"join A with sl st in first st, {ROW}, turn", f"{ROW}, fasten off")
    assert threads(rows(*lines, *more)) == Threads({"A": 4, "B": 2}, 0)


def test_colours_that_change_within_a_row_are_taken_up_each_time() -> None:
    """Five stitches of each: A is joined once, and so is B."""
    first = "sc in 2nd ch from hook and in next 4 chs, changing to B on last yo, sc in next 5 chs"
    second = "ch 1, sc in next 5 sts, changing to A on last yo, sc in next 5 sts"
    lines = (f"{first}, turn", f"{second}, turn")
    assert threads(rows(*lines)) == Threads({"A": 2, "B": 2}, 1)


def test_rounds_carry_at_their_join() -> None:
    lines = ["ch 1, 6 sc in ring, join"]
    lines += [f"ch 1, with {yarn}, sc in each st around, join" for yarn in "BABA"]
    assert threads(rounds(*lines)) == Threads({"A": 2, "B": 2}, 3)


def test_rows_from_the_right_side_only_are_each_cut() -> None:
    cloth = rows(FIRST, ROW, ROW)
    assert threads(cloth.replace("worked: rows", "worked: rows, right side only")).ends == {"A": 6}


def test_the_ebb_scarf_takes_an_evening_less() -> None:
    """By hand: 140 rows of 43 double crochets and two edgings of 560 stitches are 8,600 ÷ 0.7 and 1,120, so
    about 13,400 ÷ 25 × 1.1 to ÷ 15 × 1.15 minutes; ten ends, and 51 times another color taken up.
    """
    scarf = demo("ebb-scarf").measured
    assert scarf is not None
    assert scarf.pieces[0].threads[0].ends == {"A": 2, "B": 2, "C": 2}
    assert scarf.pieces[0].threads[0].taken_up == pytest.approx(50, abs=2)
    assert (scarf.hours[0].practised.low, scarf.hours[0].practised.high) == pytest.approx(
        (8.5, 15.5), rel=0.1
    )
