"""A chart of 1,000 stitches takes at most 150 kB before it is compressed: a phone may be on a thin line."""

import pytest

from loopleaf.draw import Chart, chart_of
from tests.measure.worked_patterns import worked

from .pieces import DEMO, charted, demo, marked, rounds, rows

MOST = 150_000
"""Bytes, for 1,000 stitches and for fewer."""


def bytes_for_a_thousand(chart: Chart) -> float:
    """Of the larger of its four texts. A chain is a stitch."""
    texts = [chart.svg(terms, left) for terms in ("US", "UK") for left in (False, True)]
    return max(len(text.encode()) for text in texts) / max(len(marked(texts[0])) / 1000, 1.0)


@pytest.mark.parametrize("name", DEMO)
def test_every_demo_chart_keeps_to_its_size(name: str) -> None:
    work, measured = demo(name)
    charts = [charted(name), *(chart_of(work, piece.name, measured) for piece in work.pieces)]
    for chart in charts:
        assert chart is None or bytes_for_a_thousand(chart) <= MOST
        assert chart is None or len(drawn := chart.svg()) < 6_000 + 125 * len(marked(drawn))


def tall_circle() -> str:
    """Nearly every stitch is turned another way."""
    first = "ch 3 (counts as dc), 11 dc in ring, join"
    second = "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join"
    more = [
        f"ch 3 (counts as dc), dc in same st, FPdc around next {n} dc, "
        f"*2 dc in next st, FPdc around next {n} dc; rep from * around, join"
        for n in range(1, 12)
    ]
    return rounds(first, second, *more)


def drawn_together_everywhere() -> str:
    """Each leg of a decrease is drawn to its own place."""
    start = "sc in 2nd ch from hook and in each ch across, turn"
    more = "ch 1, sc in first st, *dc3tog over next 3 sts, 3 dc in next st; rep from * to last 2 sts, sc in each of last 2 sts, turn"  # noqa: E501
    return rows(start, *[more] * 16, chain=64)


@pytest.mark.parametrize("text", [tall_circle(), drawn_together_everywhere()], ids=["circle", "decreases"])
def test_what_never_looks_the_same_keeps_to_its_size(text: str) -> None:
    work = worked(text)
    assert not [t for piece in work.pieces for r in piece.rounds for t in r.troubles]
    chart = chart_of(work)
    assert chart is not None
    assert len(marked(chart.svg())) > 800
    assert bytes_for_a_thousand(chart) <= MOST


def test_many_short_rows_keep_to_their_size() -> None:
    """Each has its number and its arrow. Held to it even where only what is counted is a stitch."""
    more = ["ch 1, sc in each st across, turn"] * 299
    chart = chart_of(worked(rows("sc in 2nd ch from hook and in each ch across, turn", *more, chain=4)))
    assert chart is not None
    drawn = [chart.svg("UK", left) for left in (False, True)]
    assert drawn[0].count("data-stitch") == 904, "four chains to begin with"
    assert max(len(one.encode()) for one in drawn) <= 0.9 * MOST
