"""Patterns with all their counts by kind: right as they were, and harder to be wrong in."""

import pytest

from loopleaf.review import check

from .collected import right_patterns
from .faults import try_out
from .stated import in_full, pairs, report

FULL = {name: in_full(name, text) for name, text in right_patterns().items()}


@pytest.mark.parametrize("name", [name for name, text in right_patterns().items() if FULL[name] != text])
def test_a_right_pattern_stays_right_with_its_counts_by_kind(name: str) -> None:
    errors = [one for one in check(FULL[name].encode(), name).findings if one.severity == "error"]
    assert errors == []


def test_a_wrong_stitch_shows_in_a_count_by_kind() -> None:
    name = "lantern-pouch"
    assert 'work: "ch 1, sc in each st and ch-sp around, join", count: 48 sc}' in FULL[name]
    one, other = next(
        pair
        for pair in pairs()
        if pair[0].file == name and pair[0].now == "ch 1, hdc in each st and ch-sp around, join"
    )
    assert try_out(one).sort == "different"
    assert try_out(other).sort == "fault"
    assert try_out(other).found == ("count-differs",)


def test_the_report_counts_them() -> None:
    text = report(20, 3)
    assert text.startswith("20 mistakes in lines whose counts can be stated by kind, drawn with seed 3")
