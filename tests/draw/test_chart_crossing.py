"""Legs that cross in a chart: those behind are broken where others lie across them. Which lies in front is
common practice, no source: what is worked over others later is nearer to the maker, around the back of posts
further off.
"""

import re

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_crossing import broken, broken_way
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.signs import Sign, lines
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import rows, subject

FIRST = "dc in 4th ch from hook and in each ch across, turn"
PLAIN = "ch 3 (counts as dc), dc in each st across, turn"
CABLE = (
    "ch 3 (counts as dc), sk next 3 sts, {0}tr around next 3 sts, {0}tr around each skipped st, "
    "dc in each st across"
)
X = "ch 3 (counts as dc), (sk next st, dc in next st, dc in skipped st) x 4, dc in next st"


def gaps_of(*more: str) -> dict[int, int]:
    """How many gaps the legs that cross have in the last row, by their numbers in it."""
    found = subject(worked(rows(FIRST, *more, chain=12)))
    line, work = lay_out(found).lines[-1], found.piece.rounds[-1]
    numbers = {id(thing): thing.number for thing in line.things if isinstance(thing, Made)}
    return {numbers[key]: len(gaps) for key, gaps in broken(line, work.side == "WS").items()}


@pytest.mark.parametrize(
    ("plain_rows", "post", "front"),
    [(1, "FP", "later"), (1, "BP", "earlier"), (0, "FP", "earlier"), (0, "BP", "later")],
)
def test_the_legs_in_front_are_whole(plain_rows, post, front) -> None:
    """On a wrong-side row front posts lie at the back of the cloth as it is drawn."""
    found = gaps_of(*[PLAIN] * plain_rows, CABLE.format(post))
    earlier, later = (2, 3, 4), (5, 6, 7)
    whole, crossed = (later, earlier) if front == "later" else (earlier, later)
    assert [found[number] for number in whole] == [0, 0, 0]
    assert [found[number] for number in crossed] == [3, 3, 3]
    assert set(found) == {2, 3, 4, 5, 6, 7}


def test_each_pair_that_crosses_has_one_gap() -> None:
    assert sorted(gaps_of(PLAIN, X).values()) == [0] * 4 + [1] * 4


@pytest.mark.parametrize(
    "row",
    [
        PLAIN,
        "ch 3 (counts as dc), (sk next st, 3 dc in next st, sk next st) x 3",
        "ch 3 (counts as dc), (dc2tog over next 2 sts) x 4, dc in next st",
    ],
)
def test_legs_that_only_lean_are_whole(row) -> None:
    assert gaps_of(row) == {}


@pytest.mark.parametrize("kind", ["half", "double", "treble", "double-treble"])
def test_a_broken_leg_keeps_its_bars_and_its_mark_clear_of_the_gap(kind) -> None:
    sign = Sign(kind, post="front")
    way = broken_way(sign, 26.0, [(8.0, 12.0), (19.0, 22.0)])
    assert way.count("l4.8 -2.2") == lines(sign).count("l4.8 -2.2")
    assert way.endswith("c0 3 3.6 3 3.6 0")
    assert [tuple(map(float, run)) for run in re.findall(r"M0 (\S+?)V(-[\d.]+)", way)] == [
        (-0.6, -8.0), (-12.0, -19.0), (-22.0, -25.4),
    ]  # fmt: skip
    bars = [1.1 - float(up) for up in re.findall(r"M-2.4 (\S+?)l4.8", way)]
    assert all(not low < bar < high for bar in bars for low, high in ((8.0, 12.0), (19.0, 22.0)))
    assert bars == sorted(bars, reverse=True)


def test_a_chart_counts_its_crossed_stitches_as_before() -> None:
    drawn = diagram(worked(rows(FIRST, PLAIN, CABLE.format("FP"), chain=12)))
    assert drawn.count('data-kind="tr"') == 6
