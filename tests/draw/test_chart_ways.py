"""A chart's text alternative says how it runs, as it is drawn."""

import pytest

from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_ways import Passage, ways
from loopleaf.draw.chart_words import remarks
from tests.measure.worked_patterns import worked

from .pieces import rounds, rows, subject

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
AROUND = (
    "ch 1, 3 sc in first st, sc in each st to last st, 3 sc in last st, sc in end of each row, working along "
    "other side of foundation ch, 3 sc in first ch, sc in each ch to last ch, 3 sc in last ch, sc in end of "
    "each row, join"
)
BORDERED = rows(FIRST, *[PLAIN] * 3) + (
    "border:\n  worked: joined rounds\n  start: {edge: cloth, around: true}\n  rounds:\n"
    '    - {round: 1, work: "ch 1, 36 sc evenly along edge, join"}\n'
)
BALL = rounds(
    "6 sc in ring",
    "inc x 6",
    "(sc, inc) x 6",
    *["sc in each st around"] * 2,
    "(sc, dec) x 6",
    "dec x 6",
    worked_in="spiral rounds",
)
TUBE = rounds("ch 1, 8 sc in ring, join", *["ch 1, sc in each st around, join"] * 6)


def _ways(text: str, piece: str = "") -> list[Passage]:
    found = subject(worked(text), piece)
    return ways(found, lay_out(found))


@pytest.mark.parametrize(
    ("text", "piece", "said"),
    [
        (rows(FIRST, PLAIN, PLAIN), "", [Passage("row", "1", "3", "upwards")]),
        (
            rows(FIRST, *[PLAIN] * 3, AROUND),
            "",
            [Passage("row", "1", "4", "upwards"), Passage("row", "5", "5", "around")],
        ),
        (BORDERED, "border", [Passage("round", "1", "1", "around")]),
        (BALL, "", [Passage("round", "1", "5", "outwards"), Passage("round", "6", "7", "inwards")]),
        (TUBE, "", [Passage("round", "1", "1", "outwards"), Passage("round", "2", "7", "unrolled")]),
    ],
    ids=["rows", "rows and around them", "a border", "a ball", "a tube"],
)
def test_each_stretch_of_a_chart_says_where_it_goes(text: str, piece: str, said: list[Passage]) -> None:
    assert _ways(text, piece) == said


def _remarks(text: str) -> str:
    found = subject(worked(text))
    return " ".join(line.words["US"] for line in remarks(found, lay_out(found), False, False))


def test_turned_rounds_are_called_rounds() -> None:
    """Rounds have no left end to begin at."""
    turned = rounds("ch 1, 8 dc in ring, join, turn", "ch 1, 2 FPdc around each st around, join, turn")
    assert "On rounds worked from the wrong side, front is worked as back" in _remarks(turned)
    post = "ch 2 (does not count), FPhdc around each st across, turn"
    assert "On rows that begin at the left, front is worked as back" in _remarks(rows(FIRST, post))
