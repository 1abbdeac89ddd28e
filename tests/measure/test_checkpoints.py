"""How big the work should be by now, where its shaping ends."""

import math

import pytest

from loopleaf.measure import Checkpoint, Measured

from .worked_patterns import HEAD, measured, rounds, rows

SC = HEAD.replace("stitches: 20, rows: 20", "stitches: 20, rows: 22")
BASE = [
    "ch 1, 6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, inc) x 6, join",
    "ch 1, (inc, sc in next 2 sts) x 6, join",  # not above those of round 3: a circle
]
PLAIN = ["ch 1, sc in each st around, join"] * 3


def only(found: Measured) -> Checkpoint:
    (one,) = found.checkpoints
    return one


def test_a_base_is_told_across() -> None:
    """24 stitches of 5 mm are 120 mm around, and a circle of 120 mm is 120 ÷ π = 38.2 mm across."""
    one = only(measured(rounds(*BASE, *PLAIN), head=SC))
    assert (one.piece, one.label, one.what) == ("disc", "4", "across")
    assert one.length_mm[0] == pytest.approx(120 / math.pi)


def test_the_pouch_of_the_issue() -> None:
    """48 half doubles at 14 over 10 cm: 342.9 mm around, 109 mm across: “about 11 cm”."""
    from tests.alter.patterns import demo

    found = demo("lantern-pouch").measured
    assert found is not None
    one = only(found)
    assert (one.label, one.what) == ("6", "across")
    assert one.length_mm[0] == pytest.approx(48 / 14 * 100 / math.pi)


def test_an_oval_is_told_long_and_wide() -> None:
    """Eleven rounds of 8.7 mm on either side of a chain of eleven gaps of 9.1 mm: 29 by 19 cm, as stated."""
    from tests.alter.patterns import demo

    found = demo("reed-tray").measured
    assert found is not None
    one = only(found)
    assert (one.label, one.what) == ("11", "oval")
    assert one.wide_mm[0] == pytest.approx(2 * 11 * 100 / 11.5)
    assert one.length_mm[0] == pytest.approx(290, abs=5)


def test_work_that_bends_is_told_around() -> None:
    bent = [*BASE, "ch 1, sc in each st around, join", "ch 1, (sc in next 3 sts, inc) x 6, join"]
    one = only(measured(rounds(*bent, *PLAIN), head=SC))
    assert (one.label, one.what) == ("6", "around")
    assert one.length_mm[0] == pytest.approx(150)


def test_rows_are_told_wide() -> None:
    lines = [
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, sc in each st across, turn",
        "ch 1, inc, sc in next 8 sts, inc, turn",
        *["ch 1, sc in each st across, turn"] * 3,
    ]
    one = only(measured(rows(*lines)))
    assert (one.label, one.what) == ("3", "width")
    assert one.length_mm[0] == pytest.approx(60)


def test_what_isnt_shaped_grows_to_its_end_or_is_lace_has_none() -> None:
    lace = [*BASE[:2], "ch 1, (sc in next st, inc, ch 1) x 6, join", *PLAIN]
    for lines in (PLAIN_ONLY, BASE, lace):
        assert measured(rounds(*lines), head=SC).checkpoints == ()


PLAIN_ONLY = ["ch 1, 20 sc in ring, join", *PLAIN]


def test_without_a_gauge_there_is_none() -> None:
    head = HEAD.replace("gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}", "gauge: not critical")
    assert measured(rounds(*BASE, *PLAIN), head=head).checkpoints == ()


def test_sizes_that_end_apart_have_one_each() -> None:
    from tests.alter.patterns import demo

    found = demo("curlew-cap").measured
    assert found is not None
    assert [(one.label, one.what) for one in found.checkpoints] == [
        ("10", "around"),
        ("11", "around"),
        ("12", "around"),
        ("13", "around"),
    ]
    first = found.checkpoints[0]
    assert first.length_mm[0] == pytest.approx(64 / 15 * 100)
    assert first.length_mm[1:] == (None, None, None)
